namespace Closemown.Steel.Reckonings;

/// <summary>What one click of an adjuster moves its end.</summary>
/// <remarks>
/// click = pitch / detents · lever (screw kinematics). Worked: 1 mm pitch, 14 detents, lever 0.25 give 17.857 µm.
/// </remarks>
public static class ClickSize
{
    private const double UmPerMm = 1000;

    /// <summary>One click, µm.</summary>
    /// <param name="pitchMm">Pitch of the thread, mm a turn; above 0, 0.5 to 3 are usual.</param>
    /// <param name="detents">Clicks in a turn; 1 or more.</param>
    /// <param name="lever">Travel of the edge over travel of the screw; above 0, 1 where the screw pushes straight.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Um(double pitchMm, double detents, double lever = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pitchMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(detents, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lever);
        return pitchMm * UmPerMm / detents * lever;
    }
}
