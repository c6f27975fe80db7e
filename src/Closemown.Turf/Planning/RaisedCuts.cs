namespace Closemown.Turf;

/// <summary>The cuts above the used height that are weighed for a mowing: from the lowest that takes a third at most, a few steps up.</summary>
internal static class RaisedCuts
{
    public const int Most = 6;
    private const double StepMm = 0.25, StepShare = 0.05, LeastOffMm = 0.1, BackShare = 0.15;

    /// <summary>The lowest cut that takes a third at most, mm.</summary>
    public static double LowestMm(double canopyMm) => canopyMm * (1 - ThirdRule.Share);

    /// <summary>Whether turf that was cut above what it is used to is brought back now, whatever it costs: so much of the leaf comes off by the rules that it is worth a mowing.</summary>
    /// <param name="canopyMm">Standing height, mm.</param>
    /// <param name="usedMm">The used height, mm.</param>
    /// <param name="phase">What the last mowings bind, that morning.</param>
    /// <param name="spared">Whether it is stressed, wilts or would scalp, so that it stays up.</param>
    public static bool ComesBack(double canopyMm, double usedMm, int phase, bool spared) =>
        phase == PlanPhase.Raised && !spared && canopyMm - Math.Max(usedMm, LowestMm(canopyMm)) >= BackShare * canopyMm;

    /// <summary>Cut j, mm, 0 to <see cref="Most"/> − 1; NaN where it is none: not above the used height, or nearly nothing comes off.</summary>
    public static double Mm(double canopyMm, double usedMm, int j)
    {
        var least = LowestMm(canopyMm);
        var cut = Math.Max(least, usedMm) + (j * Math.Max(StepMm, StepShare * canopyMm));
        return cut <= usedMm || (j > 0 && cut > canopyMm - LeastOffMm) || cut >= canopyMm ? double.NaN : cut;
    }
}
