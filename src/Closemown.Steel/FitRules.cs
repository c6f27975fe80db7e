using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>A fault that a look at the fit can show.</summary>
public enum FitFault
{
    BearingLeft,
    BearingRight,
    BentBlade,
    LooseScrews,
    SlippingAdjuster,
    NickedBlade,
    StiffAdjuster,
}

/// <summary>What a look at the fit found, and what it means: most faults make every check worthless until they are seen to. Common practice, no source.</summary>
public static class FitRules
{
    /// <summary>Every fault that was named, the gravest first.</summary>
    public static IReadOnlyList<FitFault> Faults(Entry fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var faults = new List<FitFault>();
        if (fit[FitEntry.PlayLeft] == "knocks") faults.Add(FitFault.BearingLeft);
        if (fit[FitEntry.PlayRight] == "knocks") faults.Add(FitFault.BearingRight);
        if (fit[FitEntry.Blades] == "bent") faults.Add(FitFault.BentBlade);
        if (fit[FitEntry.KnifeScrews] == "loose") faults.Add(FitFault.LooseScrews);
        if (fit[FitEntry.Adjusters] == "slipping") faults.Add(FitFault.SlippingAdjuster);
        if (fit[FitEntry.Blades] == "nicked") faults.Add(FitFault.NickedBlade);
        if (fit[FitEntry.Adjusters] == "stiff") faults.Add(FitFault.StiffAdjuster);
        return faults;
    }

    /// <summary>Whether it must be taken apart: only that is a rebuild. The others are small repairs.</summary>
    public static bool TakesApart(FitFault fault) => fault is FitFault.BearingLeft or FitFault.BearingRight or FitFault.BentBlade or FitFault.SlippingAdjuster;

    /// <summary>What must be repaired first, in words; null where checks can be believed.</summary>
    public static string? Bad(Entry fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var faults = Faults(fit);
        if (faults.Contains(FitFault.BearingLeft) || faults.Contains(FitFault.BearingRight))
            return $"the bearing knocks at the {(faults.Contains(FitFault.BearingLeft) ? (faults.Contains(FitFault.BearingRight) ? "left and the right" : "left") : "right")}";
        if (faults.Contains(FitFault.LooseScrews)) return "the screws of the bedknife are loose";
        if (faults.Contains(FitFault.BentBlade)) return "a blade is bent";
        return faults.Contains(FitFault.SlippingAdjuster) ? "an adjuster slips" : null;
    }
}
