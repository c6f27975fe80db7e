namespace Closemown.Steel.Reckonings;

/// <summary>How much of the standing height one mowing takes.</summary>
/// <remarks>share = (canopy − cut) / canopy (definition). Worked: 6 mm cut to 4 mm give 0.333.</remarks>
public static class ShareRemoved
{
    /// <summary>The share, 0 to 1; 0 where nothing stands above the cut.</summary>
    /// <param name="canopyMm">Standing height, mm; above 0.</param>
    /// <param name="cutMm">Height cut at, mm; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Of(double canopyMm, double cutMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(canopyMm);
        ArgumentOutOfRangeException.ThrowIfNegative(cutMm);
        return Math.Max(0, (canopyMm - cutMm) / canopyMm);
    }
}
