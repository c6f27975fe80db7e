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

    /// <summary>The cut of a mowing on the way, mm: the kept one as soon as that takes a third at most; else a third off, and more, up to half, where so much grows until the next that it would not come down.</summary>
    /// <param name="canopyMm">What it stands at.</param>
    /// <param name="keptMm">The kept cut.</param>
    /// <param name="growthMm">What grows until the next mowing on the way can be.</param>
    /// <param name="greenMm">Down to where it is green, with a margin: overgrowth has lifted it, and it comes down after the turf. Gone under all the same where it would else stand no tenth lower at the next mowing.</param>
    public static double CutMm(double canopyMm, double keptMm, double growthMm, double greenMm)
    {
        if (canopyMm <= ThirdRule.CanopyMm(keptMm)) return keptMm;
        var lower = (canopyMm * PlanLimits.ComingDownTo) - growthMm;
        var gentle = Math.Min(lower, Math.Max(canopyMm * (1 - PlanLimits.ComingDownShare), greenMm));
        return Math.Max(keptMm, Math.Max(canopyMm * (1 - PlanLimits.MostOnTheWay), gentle));
    }

    /// <summary>A mowing on the way was made.</summary>
    public void Mown(bool atKept) => (since, on) = (0, !atKept);

    public void NextDay() => since++;
}
