using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Each fault of a look at the fit with its own step and minutes. Common practice, no source; the minutes are an assumption.</summary>
internal static class FitRepairs
{
    /// <summary>Whether any of the faults means taking it apart.</summary>
    public static bool TakesApart(Entry fit) => FitRules.Faults(fit).Any(FitRules.TakesApart);

    /// <summary>The step for the gravest fault, the others after it; the small ones among them are named with their own minutes.</summary>
    public static AdviceStep Of(BenchCase c, Entry fit)
    {
        List<AdviceStep> steps = [.. FitRules.Faults(fit).Select(f => Step(c, f))];
        var all = steps.Count > 1 ? " " + Said(steps) : "";
        return steps[0] with { Then = [.. steps.Skip(1)], Why = [$"The look at the fit said: {FitRules.Bad(fit)}.{all} No check means anything until then."] };
    }

    /// <summary>The step for a fault that does not stop the checks: a nick, a stiff adjuster; null for none, or where it was declined.</summary>
    public static AdviceStep? Small(BenchCase c, Entry fit)
    {
        var steps = FitRules.Faults(fit).Where(f => f is FitFault.NickedBlade).Select(f => Step(c, f)).Where(s => !c.WasDeclined(s.Do)).ToList();
        if (steps.Count == 0) return null;
        var stiff = FitRules.Faults(fit).Contains(FitFault.StiffAdjuster) ? " An adjuster is stiff: a drop of oil, and work it both ways (5 minutes)." : "";
        return steps[0] with { Why = [$"The look at the fit said: a blade is nicked. It leaves a line in the turf for a few weeks; a sharp edge on it would cut into the {{bedknife}}.{stiff}"] };
    }

    private static string Said(List<AdviceStep> steps) => $"In all: {string.Join("; ", steps.Select(s => $"{char.ToLowerInvariant(s.Say[0])}{s.Say[1..].TrimEnd('.')} ({Phrasing.Number(s.TakesMinutes, "0")} min)"))}.";

    private static AdviceStep Step(BenchCase c, FitFault fault) => fault switch
    {
        FitFault.BearingLeft => c.Step("repair", "Repair the left bearing first: take up or renew it; it knocks.", 60),
        FitFault.BearingRight => c.Step("repair", "Repair the right bearing first: take up or renew it; it knocks.", 60),
        FitFault.BentBlade => c.Step("repair", "Repair the bent blade first: straighten it, or have the {reel} renewed.", 60),
        FitFault.SlippingAdjuster => c.Step("repair", "Repair the slipping adjuster first: clean its thread, and look at spring, detent and lock nut.", 30),
        FitFault.LooseScrews => c.Step("knife-screws", "Tighten the screws of the {bedknife}, from the middle outwards, then look again.", 5),
        FitFault.NickedBlade => c.Step("stone", "File the nick flush with the blade, no more than that.", 10) with { What = "nick" },
        _ => c.Step("fit", "Free the stiff adjuster with a drop of oil, work it both ways, then look again.", 5),
    };
}
