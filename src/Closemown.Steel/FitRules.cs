using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>When no check can be believed: knocking bearings, loose knife screws, slipping adjusters, a bent blade. Common practice, no source.</summary>
public static class FitRules
{
    /// <summary>What must be repaired first, in words; null where checks can be believed.</summary>
    public static string? Bad(Entry fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (fit.Word("playLeft") == "knocks" || fit.Word("playRight") == "knocks")
            return $"the bearing knocks at the {(fit.Word("playLeft") == "knocks" ? (fit.Word("playRight") == "knocks" ? "left and the right" : "left") : "right")}";
        if (fit.Word("knifeScrews") == "loose") return "the screws of the bedknife are loose";
        if (fit.Word("blades") == "bent") return "a blade is bent";
        return fit.Word("adjusters") == "slipping" ? "an adjuster slips" : null;
    }
}
