namespace Closemown.Turf;

/// <summary>The way down after overgrowth: above the kept cut, back to it by thirds, some days between. Common practice, no source.</summary>
/// <remarks>The limits of lowering are about the cut that is kept; the cuts on this way are passed through, not kept, so they do not count as such.</remarks>
internal sealed class ComingDown(int? daysSince)
{
    private int since = daysSince ?? PlanLimits.ComingDownApart;
    private bool on = daysSince is not null;

    /// <summary>Days until the next mowing on the way.</summary>
    public int Waits => Math.Max(0, PlanLimits.ComingDownApart - since);

    /// <summary>Whether the turf is on the way down, given the share that the kept cut would take now.</summary>
    public bool Goes(double keptShare)
    {
        if (keptShare > PlanLimits.MostShare) on = true;
        return on;
    }

    /// <summary>The cut of a mowing on the way, mm: the kept one as soon as that takes a third at most.</summary>
    public static double CutMm(double canopyMm, double keptMm) =>
        canopyMm <= ThirdRule.CanopyMm(keptMm) ? keptMm : Math.Max(keptMm, canopyMm * (1 - PlanLimits.ComingDownShare));

    /// <summary>A mowing on the way was made.</summary>
    public void Mown(bool atKept) => (since, on) = (0, !atKept);

    public void NextDay() => since++;
}
