using System.Globalization;
using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>A plan in sentences.</summary>
public static class PlanSpeech
{
    private const double AtWishMm = 0.1, Overgrown = 2.0 / 3, WorkDays = 7, MuchFeed = 2, Dusting = 0.15, Usual = 0.28, ReadFirstShare = 0.25;

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
            PlanReason.WaitingCostsMore => $"It stands at about {HeightSpeech.Stands(d.CanopyMm.Mean)}; {share} come off at {HeightSpeech.Near(d.CutMm)}, and waiting is expected to cost more.",
            PlanReason.OverThirdByNextFreeDay => $"It stands at about {HeightSpeech.Stands(d.CanopyMm.Mean)}; {share} come off at {HeightSpeech.Near(d.CutMm)}. Left to the next free day it is {StepSpeech.Chance(d.Why.Value)} to be more than a third.",
            PlanReason.TowardsWish => $"On the way to the wished height: {share} come off at {HeightSpeech.Near(d.CutMm)}, {HeightSpeech.Near(d.Why.Value)} are still to go.",
            PlanReason.ComingDown => $"It stands at about {HeightSpeech.Stands(d.CanopyMm.Mean)}: {share} come off at {HeightSpeech.Near(d.CutMm)}; at {HeightSpeech.Near(d.WhyHeight.Value)} it would be {Percent(d.Why.Value)} %. It comes back by thirds.{(TooTall(d) ? " If this mower does not go so high, use one that does." : "")}",
            PlanReason.ComingBack => $"It was raised and comes back to {HeightSpeech.Near(d.Why.Value)}: {share} come off at {HeightSpeech.Near(d.CutMm)}.",
            PlanReason.ComingDownWaits => "On the way back by thirds a day lies between two mowings.",
            PlanReason.TooTall => $"More than a third would come off ({Percent(d.Why.Value)} % as the mower is set), and the height is not changed that day: a match is near, or the minutes do not suffice.",
            PlanReason.HeightNotKnown => "What it stands at is not known: read it first.",
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
            HeightReason.RaisedForStep => " Raised: the mower is set more than a step under what the turf is used to.",
            HeightReason.HeldNoGrowth => $" Not lowered: in the coming two weeks it grows hardly {Grown(d.WhyHeight.Value)}.",
            HeightReason.HeldWilting => " Not lowered: never on wilting turf.",
            HeightReason.HeldStressed => " Not lowered: none under stress.",
            HeightReason.HeldThreeMowings => " Not lowered: three mowings lie between two steps down.",
            HeightReason.HeldWork => " Not lowered: it was sanded or opened lately.",
            HeightReason.HeldFixture => " No change of height: a match is near.",
            HeightReason.HeldCostsMore => " Not lowered yet: it would cost more than it gains.",
            _ => "",
        };
        if (d.Mow || d.WhyHeight.Reason is HeightReason.HeldWilting or HeightReason.HeldStressed or HeightReason.HeldFixture or HeightReason.RaisedForStress) why += height;
        if (d.AskFirst)
            why += " Waiting costs more, so it is for you to say yes"
                + $"{Phrasing.Typed($": closemown plan --over-third {TurfAnswer.Date(d.Date)}")}.";
        return why;
    }

    /// <summary>Whether a day's mowing is one of overgrown turf: the height it is used to would take two thirds of the leaf or more.</summary>
    public static bool TooTall(PlanDay d)
    {
        ArgumentNullException.ThrowIfNull(d);
        return d.Mow && d.Why.Reason == PlanReason.ComingDown && d.Why.Value > Overgrown;
    }

    /// <summary>How turf too tall for one mowing comes down. Common practice, no source.</summary>
    private static string ByThirds(PlanDay d) =>
        $"Too tall for one mowing: take a third at most, at about {HeightSpeech.Near(d.CutMm)} or as high as a mower goes, "
        + $"and come down by thirds, some days between{Phrasing.Typed(" (closemown step-down)")}.";

    /// <summary>That the standing height is to be read first; null where it is known well enough.</summary>
    public static string? ReadFirst(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (TurfSpeech.NotKnown(plan.Today) is { } unknown) return unknown;
        return plan.Today.CanopyMm.Sd > ReadFirstShare * plan.Today.CanopyMm.Mean
            ? $"What the turf stands at is hardly known (give or take {HeightSpeech.Stands(plan.Today.CanopyMm.Sd)}): read it first, at five spots; all that follows hangs on it." : null;
    }

    /// <summary>When to mow next, and at which height.</summary>
    public static string Mowing(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!plan.Today.HeightKnown) return "";
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
        foreach (var say in Coming(plan)) yield return say;
        if (!plan.Today.HeightKnown) yield break;
        foreach (var say in (string?[])[TurfSpeech.Heat(plan.Today), TurfSpeech.NoForecast(plan.Today)])
        {
            if (say is not null) yield return say;
        }
    }

    /// <summary>The mowings to come in short, without what stands beside it where it is said of the turf too.</summary>
    public static IEnumerable<string> Coming(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!plan.Today.HeightKnown) yield break;
        foreach (var say in (string?[])[Mowing(plan), WayBack(plan), Wish(plan), MoreDays(plan), AfterWork(plan), TurfSpeech.Watered(plan.Today)])
        {
            if (say is not null) yield return say;
        }
    }

    /// <summary>The dated heights of the way back to what the turf is used to; null where the next mowing is no part of one.</summary>
    public static string? WayBack(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var mown = plan.Plan.Days.Where(d => d.Mow).ToList();
        var way = mown.TakeWhile(d => d.Why.Reason == PlanReason.ComingDown).ToList();
        if (way.Count == 0) return null;
        if (mown.Count > way.Count && mown[way.Count].Move == CutMove.Same) way.Add(mown[way.Count]);
        var back = way.Count > 1 && way[^1].Move == CutMove.Same ? "Back by thirds: " : "By thirds, as far as this plan looks: ";
        return back + string.Join(", ", way.Select(d => $"{TurfSpeech.Day(d.Date)} {HeightSpeech.Near(d.CutMm)}")) + ".";
    }

    /// <summary>When the wished height is reached; null where it is, or none is wished.</summary>
    public static string? Wish(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (wish, outlook) = (plan.Today.Ledger.Wish, plan.Plan.Wish);
        if (!plan.Today.HeightKnown || wish.CutMm is not { } cut || plan.UsedMm is not { } used || used <= cut + AtWishMm) return null;
        var on = plan.Reached is { } day ? TurfSpeech.Day(day) : null;
        var wished = $"The wished {HeightSpeech.Mm(cut)}";
        var soon = on is null ? "cannot be counted on within a year" : $"is reached by about {on}";
        if (wish.ByDate is { } past && past < plan.Today.Date)
            return $"{wished} was due on {TurfSpeech.Day(past)}; it {soon}.";
        if (wish.ByDate is { } by && outlook.CanMeetDate == false)
        {
            var chance = outlook.ByDateProbability is { } p ? $" ({StepSpeech.Chance(p)})" : "";
            var then = on is null ? ", nor within a year" : $"; it can be reached by about {on}";
            return $"{wished} cannot be counted on by {TurfSpeech.Day(by)}{chance} without cutting too much at once{then}.";
        }
        return $"{wished} {soon}, in steps of at most half a millimetre.";
    }

    /// <summary>That two more days a week would do for the wished date; null where they would not, or it is met as it is.</summary>
    private static string? MoreDays(AreaPlan plan)
    {
        if (plan.WithMoreDays is not { } more) return null;
        var all = string.Join(',', more.All.Select(d => d.ToString()[..3].ToLowerInvariant()));
        return $"With two more free days a week ({more.Days[0].ToString()} and {more.Days[1].ToString()}) it would be reached by about "
            + $"{TurfSpeech.Day(more.Reached)}{Phrasing.Typed($": closemown add wish weekdays={all}")}.";
    }

    /// <summary>What work of late means for the coming mowings; null where none does. Common practice, no source.</summary>
    private static string? AfterWork(AreaPlan plan)
    {
        var t = plan.Today;
        var works = t.Ledger.Heard.Where(e => e.At <= t.At && (t.At - e.At).TotalDays <= WorkDays);
        string? say = null;
        foreach (var e in works)
        {
            say = e.Kind.Name switch
            {
                "work" => e[WorkEntry.What] switch
                {
                    "topdress" => "Sand lies in the turf: brush it in, mow with an old mower first, and take no step down for a week.",
                    "verticut" or "aerate" => "The turf was opened: a light trim only, and no step down for a week.",
                    _ => say,
                },
                "treat" when e[TreatEntry.What]?.Contains("regulator", StringComparison.OrdinalIgnoreCase) == true => "A growth regulator is at work: it grows by about a quarter less, so mowings come further apart.",
                "feed" when e[FeedEntry.NGm2] is >= MuchFeed => "It was fed much of late: growth comes with the next warmth, so mowings come closer together.",
                _ => say,
            };
        }
        return say;
    }

    private static string Grown(double mm) => $"{{grown:{mm.ToString("R", CultureInfo.InvariantCulture)}}}";

    /// <summary>"in about 3 weeks".</summary>
    public static string InDays(double days) => StepSpeech.Days(days);

    private static string Percent(double share) => Math.Round(100 * share).ToString(CultureInfo.InvariantCulture);
}
