using System.Globalization;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>A plan in sentences.</summary>
public static class PlanSpeech
{
    private const double Dusting = 0.15, Usual = 0.28, ReadFirstShare = 0.25;

    /// <summary>Asked before every planned mowing: any yes beats the forecast. Common practice, no source.</summary>
    public static IReadOnlyList<string> StandOnIt { get; } =
    [
        "Stand on it first. Frost on it? Frozen soil, or thawed over frozen? Wet underfoot? Do footprints stay? Does sand show? Any yes: not today.",
    ];

    /// <summary>The rules a plan rests on.</summary>
    public static IReadOnlyList<Rule> Rules { get; } = [TurfRules.Plan, TurfRules.Third, TurfRules.Lower, TurfRules.Frost, TurfRules.Fixture, TurfRules.StandOnIt, TurfRules.Scalp];

    /// <summary>What the day should look like after mowing.</summary>
    public static string Looks(PlanDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        return day.Share.Mean < Dusting ? "a dusting in the box; the stripes just show"
            : day.Share.Mean < Usual ? "an even cut; the box as usual; green all over" : "a full box; look for scalped spots on the high places";
    }

    /// <summary>Why a day is, or is not, a day to mow, and why at that height.</summary>
    public static string Why(PlanDay d)
    {
        ArgumentNullException.ThrowIfNull(d);
        var share = $"{Percent(d.Share.Mean)} % of the leaf";
        var why = d.Why.Reason switch
        {
            PlanReason.WaitingCostsMore => $"It stands at about {HeightSpeech.Near(d.CanopyMm.Mean)}; {share} come off at {HeightSpeech.Near(d.CutMm)}, and waiting is expected to cost more.",
            PlanReason.OverThirdByNextFreeDay => $"It stands at about {HeightSpeech.Near(d.CanopyMm.Mean)}; {share} come off at {HeightSpeech.Near(d.CutMm)}. Left to the next free day it is {StepSpeech.Chance(d.Why.Value)} to be more than a third.",
            PlanReason.TowardsWish => $"On the way to the wished height: {share} come off at {HeightSpeech.Near(d.CutMm)}, {HeightSpeech.Near(d.Why.Value)} are still to go.",
            PlanReason.ComingDown => $"It stands at about {HeightSpeech.Near(d.CanopyMm.Mean)}: too tall for one mowing, so it is coming down by thirds. {share} come off at {HeightSpeech.Near(d.CutMm)}; one cut back to {HeightSpeech.Near(d.WhyHeight.Value)} would take {Percent(d.Why.Value)} %. If this mower does not go so high, use one that does.",
            PlanReason.ComingDownWaits => "It is coming down by thirds: some days lie between two of these mowings.",
            PlanReason.TooTall => $"Too tall for one mowing ({Percent(d.Why.Value)} % of the leaf at the usual cut), and the height is not changed that day: a match is near, the minutes do not suffice, or it may wilt.",
            PlanReason.KeepOff => $"Keep off: frost, frozen or flooded ground ({StepSpeech.Chance(d.Why.Value)}).",
            PlanReason.NotFree when d.FreeProbability == 0 => "A day off: nobody is there to mow.",
            PlanReason.NotFree when d.LossMown < d.LossNotMown => "Not one of the usual days; if you are there all the same, mowing pays.",
            PlanReason.NotFree => "Not one of the usual days.",
            PlanReason.NoMinutes => "The minutes of the day do not suffice.",
            PlanReason.LittleGrown => $"Little has grown: {Percent(d.Why.Value)} % of the leaf would come off.",
            PlanReason.Stressed => "The turf is stressed: better left alone.",
            _ => $"{share} would come off, and a later day is expected to cost less.",
        };
        var height = d.WhyHeight.Reason switch
        {
            HeightReason.LoweredTowardsWish => $" Lowered by {HeightSpeech.Near(d.WhyHeight.Value)}, a step toward the wish: roll or double-cut first.",
            HeightReason.RaisedForShare => $" Raised, or kept up: the last cut would take {Percent(d.WhyHeight.Value)} % at once; it comes down again in steps.",
            HeightReason.RaisedForStress => " Raised, or kept up: the turf is stressed, so a light trim only.",
            HeightReason.RaisedForScalp => $" Raised, or kept up: lower would scalp ({StepSpeech.Chance(d.WhyHeight.Value)}).",
            HeightReason.RaisedTowardsWish => $" Raised by {HeightSpeech.Near(d.WhyHeight.Value)} toward the wish.",
            HeightReason.RaisedForStep => " Raised: the mower is set more than a step under the last cut.",
            HeightReason.HeldWilting => " Not lowered: never on wilting turf.",
            HeightReason.HeldStressed => " Not lowered: none under stress.",
            HeightReason.HeldThreeMowings => " Not lowered: three mowings lie between two steps down.",
            HeightReason.HeldFixture => " No change of height: a match is near.",
            HeightReason.HeldCostsMore => " Not lowered yet: it would cost more than it gains.",
            _ => "",
        };
        if (d.Mow || d.WhyHeight.Reason is HeightReason.HeldWilting or HeightReason.HeldStressed or HeightReason.HeldFixture or HeightReason.RaisedForStress) why += height;
        if (d.Mow && d.AskFirst) why += " More than a third at once: only if you say so.";
        return why;
    }

    /// <summary>Whether a day's mowing is one on the way down by thirds, above the kept cut: no single mowing brings such turf down unhurt.</summary>
    public static bool TooTall(PlanDay d)
    {
        ArgumentNullException.ThrowIfNull(d);
        return d.Mow && d.Why.Reason == PlanReason.ComingDown && d.Move == CutMove.Raised;
    }

    /// <summary>How turf too tall for one mowing comes down. Common practice, no source.</summary>
    private static string ByThirds(PlanDay d) =>
        $"Too tall for one mowing: take a third at most, at about {HeightSpeech.Near(d.CutMm)} or as high as a mower goes, and come down by thirds, some days between (closemown step-down).";

    /// <summary>That the standing height is to be read first; null where it is known well enough.</summary>
    public static string? ReadFirst(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (TurfSpeech.NotKnown(plan.Today) is { } unknown) return unknown;
        return plan.Today.CanopyMm.Sd > ReadFirstShare * plan.Today.CanopyMm.Mean
            ? $"What the turf stands at is hardly known (give or take {HeightSpeech.Near(plan.Today.CanopyMm.Sd)}): read it first, at five spots; all that follows hangs on it." : null;
    }

    /// <summary>When to mow next, and at which height.</summary>
    public static string Mowing(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!plan.Today.HeightKnown) return "When to mow follows from that.";
        var next = plan.Plan.Days.FirstOrDefault(d => d.Mow);
        return next is null ? $"No mowing is planned in these {plan.Plan.Days.Count.ToString(CultureInfo.InvariantCulture)} days."
            : TooTall(next) ? (next.Date == plan.Today.Date ? "" : $"Next mowing {TurfSpeech.Day(next.Date)}. ") + ByThirds(next)
            : next.Date == plan.Today.Date ? $"Mow today at {HeightSpeech.Near(next.CutMm)}."
            : $"Next mowing {TurfSpeech.Day(next.Date)} at {HeightSpeech.Near(next.CutMm)}.";
    }

    /// <summary>The plan in short.</summary>
    public static IEnumerable<string> Summary(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (ReadFirst(plan) is { } first) yield return first;
        yield return Mowing(plan);
        if (Wish(plan) is { } wish) yield return wish;
    }

    /// <summary>When the wished height is reached; null where it is, or none is wished.</summary>
    public static string? Wish(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (wish, outlook) = (plan.Today.Ledger.Wish, plan.Plan.Wish);
        if (wish.CutMm is not { } cut || plan.Today.CutMm is not { } now || now.Mean <= cut + 0.1) return null;
        var when = outlook.Earliest is { } on ? $"by about {TurfSpeech.Day(on)}" : "later than this plan looks";
        if (wish.ByDate is { } past && past < plan.Today.Date) return $"The wished {HeightSpeech.Mm(cut)} was due on {TurfSpeech.Day(past)}; it is reached {when}.";
        return wish.ByDate is { } by && outlook.CanMeetDate == false
            ? $"The wished {HeightSpeech.Mm(cut)} cannot be counted on by {TurfSpeech.Day(by)}{(outlook.ByDateProbability is { } p ? $" ({StepSpeech.Chance(p)})" : "")} without cutting too much at once; it can be reached {when}."
            : $"The wished {HeightSpeech.Mm(cut)} is reached {when}, in steps of at most half a millimetre.";
    }

    /// <summary>"in about 3 weeks".</summary>
    public static string InDays(double days) => StepSpeech.Days(days);

    private static string Percent(double share) => Math.Round(100 * share).ToString(CultureInfo.InvariantCulture);
}
