using System.Globalization;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>A plan in sentences.</summary>
public static class PlanSpeech
{
    private const double SettingMinutes = 15, UntoldMinutes = 30;

    /// <summary>Asked before every planned mowing: any yes beats the forecast. Common practice, no source.</summary>
    public static IReadOnlyList<string> StandOnIt { get; } =
    [
        "Stand on it first. Frost on it? Frozen soil, or thawed over frozen? Wet underfoot? Do footprints stay? Does sand show? Any yes: not today.",
    ];

    /// <summary>The rules a plan rests on.</summary>
    public static IReadOnlyList<Rule> Rules { get; } = [TurfRules.Plan, TurfRules.Third, TurfRules.Lower, TurfRules.Frost, TurfRules.Fixture, TurfRules.StandOnIt, TurfRules.Scalp];

    /// <summary>Minutes of a planned mowing, a change of height included.</summary>
    public static double Minutes(AreaPlan plan, PlanDay day)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(day);
        return Math.Round((plan.Minutes ?? UntoldMinutes) + (day.ChangeMm == 0 ? 0 : SettingMinutes));
    }

    /// <summary>What the day should look like after mowing.</summary>
    public static string Looks(PlanDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        return day.Reason == DayReason.Trim || day.ShareRemoved.Mean < 0.15 ? "a dusting in the box; the stripes just show"
            : day.ShareRemoved.Mean < 0.28 ? "an even cut; the box as usual; green all over" : "a full box; look for scalped spots on the high places";
    }

    /// <summary>Why a day is, or is not, a day to mow.</summary>
    public static string Why(AreaPlan plan, PlanDay d)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(d);
        var share = $"{Percent(d.ShareRemoved.Mean)} in 100 of the leaf";
        var why = d.Reason switch
        {
            DayReason.Due => $"It stands at about {HeightSpeech.Mm(d.CanopyMm.Mean)}; {share} come off at {HeightSpeech.Mm(d.CutMm)}; waiting would cost more.",
            DayReason.StepDown => $"A step down by {HeightSpeech.Mm(-d.ChangeMm)} toward the wished height; {share} come off. Roll or double-cut before lowering.",
            DayReason.Raise => d.Stressed >= PlanRules.StressedProbability
                ? $"Raised by {HeightSpeech.Mm(d.ChangeMm)}: the turf is stressed, so a light trim only; {share} come off."
                : $"Raised by {HeightSpeech.Mm(d.ChangeMm)}: as set, too much would come off at once; {share} come off, and it comes down again in steps.",
            DayReason.Trim => $"A light trim: the turf is stressed; {share} come off.",
            DayReason.KeepOff => $"Keep off: frost, frozen or flooded ground with {StepSpeech.InHundred(d.KeepOff)}.",
            DayReason.NotFree => plan.Today.Ledger.Wish.MinutesADay < plan.Minutes ? "The minutes of a day do not suffice for a mowing." : "Not one of the usual days.",
            DayReason.LittleGrown => $"Little has grown: {share} would come off.",
            DayReason.Stressed => "The turf is stressed: better left alone.",
            _ => $"{share} would come off: another day costs less.",
        };
        if (d.LowerRefused) why += " Not lowered: never under stress or on wilting turf.";
        if (d.AskFirst) why += " More than a third at once: only if you say so.";
        return why;
    }

    /// <summary>The plan in short.</summary>
    public static IEnumerable<string> Summary(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var shown = plan.Plan.Days.Take(plan.Told).ToList();
        var next = shown.Find(d => d.Mow);
        yield return next is null ? $"No mowing is planned in these {shown.Count} days."
            : next.Date == plan.Today.Date ? $"Mow today at {HeightSpeech.Mm(next.CutMm)}."
            : $"Next mowing {TurfSpeech.Day(next.Date)} at {HeightSpeech.Mm(next.CutMm)}.";
        var wish = plan.Today.Ledger.Wish;
        if (wish.CutMm is not { } cut || plan.Today.CutMm is not { } now || now.Mean <= cut + 0.1) yield break;
        var when = plan.Plan.WishReached is { } on ? $"by {TurfSpeech.Day(on)}" : $"not within {plan.Plan.Days.Count} days";
        if (wish.ByDate is { } by && plan.Plan.ReachedByDate is { } p && (plan.Plan.WishReached is null || plan.Plan.WishReached > by))
            yield return $"The wished {HeightSpeech.Mm(cut)} cannot be counted on by {TurfSpeech.Day(by)} ({StepSpeech.InHundred(p)}) without cutting too much at once; it can be reached {when}.";
        else yield return $"The wished {HeightSpeech.Mm(cut)} is reached {when}, in steps of at most half a millimetre.";
    }

    private static string Percent(double share) => Math.Round(100 * share).ToString(CultureInfo.InvariantCulture);
}
