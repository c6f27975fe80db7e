using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What an area asks for today, and how pressing it is.</summary>
internal static class TodayTurf
{
    private const double ScalpLikely = 0.25;

    /// <summary>Whether an area is to be mown today: planned, nothing keeps off, and one mowing can do it.</summary>
    public static bool MowsToday(AreaPlan plan) => plan.Today is { Off.Count: 0, HeightKnown: true } && plan.Plan.Days[0].Mow && !PlanSpeech.TooTall(plan.Plan.Days[0]);

    /// <summary>The area's things.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="unit">The unit that mows there and its step, where it is known.</param>
    public static IEnumerable<TodayTask> Of(Desk desk, AreaPlan plan, (string Unit, StepAdvice Advice)? unit)
    {
        var (t, day) = (plan.Today, plan.Plan.Days[0]);
        if (t.Off.Count > 0)
        {
            yield return new TodayTask("wait", Urgency.KeepOff, $"Keep off today: {string.Join(", ", t.Off)}.", "Frozen, soaked or wilting turf is neither mown nor walked on.")
            {
                Area = t.AreaName,
                Plan = plan,
                Until = TurfToday.NextMow(plan)?.Date is { } d && d > t.Date ? d : null,
                Why = [PlanSpeech.Why(day)],
            };
        }
        // Frozen or soaked ground is not watered; footprints that stay ask for it.
        if (t.Water.On == t.Date && t.Off.All(o => o == "footprints stay") && TurfSpeech.Water(t) is { } water)
            yield return new TodayTask("water", t.Wilting ? Urgency.Now : t.Ledger.Heard.Any(e => e.Is(WaterEntry.Kind)) ? Urgency.Today : Urgency.CanWait, water, t.Wilting ? "It wilts: water before mowing." : "") { Area = t.AreaName, Plan = plan, WaterMm = t.WateringEvenness is { } even ? t.Water.GrossMm(even) : t.Water.Mm };
        if (t.Off.Count == 0 && TurfSpeech.NotKnown(t) is { } unknown)
        {
            yield return new TodayTask("canopy", Urgency.Today, unknown, "When to mow, and at which height, follows from that.") { Area = t.AreaName, Plan = plan };
        }
        else if (t.Off.Count == 0 && PlanSpeech.TooTall(day))
        {
            // A plan that rests on a height hardly known, or that no single mowing reaches, sends nobody out with the mower.
            yield return PlanSpeech.ReadFirst(plan) is { } read
                ? new TodayTask("canopy", Urgency.Now, read, PlanSpeech.Mowing(plan)) { Area = t.AreaName, Plan = plan }
                : new TodayTask("step-down", Urgency.Now, PlanSpeech.Mowing(plan), PlanSpeech.Why(day)) { Area = t.AreaName, Plan = plan, Cautions = PlanSpeech.StandOnIt };
        }
        else if (MowsToday(plan)) yield return Mow(desk, plan, unit);
        else if (t.Off.Count == 0)
        {
            yield return new TodayTask("wait", Urgency.Nothing, ReadFirst(plan) + PlanSpeech.Mowing(plan), PlanSpeech.Why(day))
            {
                Area = t.AreaName,
                Plan = plan,
                Until = TurfToday.NextMow(plan)?.Date,
                Why = [PlanSpeech.Why(day)],
            };
        }
    }

    /// <summary>The match of today or tomorrow for which an area is mown; null for none.</summary>
    public static DateOnly? Match(AreaPlan plan) =>
        !MowsToday(plan) ? null : plan.Today.Ledger.Wish.Fixtures.Where(f => f == plan.Today.Date || f == plan.Today.Date.AddDays(1)).Order().Select(f => (DateOnly?)f).FirstOrDefault();

    private static string ReadFirst(AreaPlan plan) => PlanSpeech.ReadFirst(plan) is { } first ? first + " " : "";

    private static TodayTask Mow(Desk desk, AreaPlan plan, (string Unit, StepAdvice Advice)? unit)
    {
        var day = plan.Plan.Days[0];
        var (urgency, because) = Match(plan) is { } f ? (Urgency.Match, $"The match is {(f == day.Date ? "today" : "tomorrow")}.")
            : day.Why.Reason == PlanReason.OverThirdByNextFreeDay ? (Urgency.Now, $"Left to the next free day it is {StepSpeech.Chance(day.Why.Value)} that more than a third would come off.")
            : day.ScalpProbability >= ScalpLikely ? (Urgency.Now, $"It is near scalping ({StepSpeech.Chance(day.ScalpProbability)}).")
            : (Urgency.Today, "Waiting is expected to cost more.");
        // What the bench says of a mowing belongs to it only where the bench asks for nothing first.
        var bench = unit is { } u && u.Advice.Step.Do == "mow" ? u.Advice : null;
        var set = plan.Today.CutMm?.Unit is { } name ? $" Set the bench to {HeightSpeech.Near(desk.Height(name).SetBenchMm(day.CutMm, plan.Today.AreaName).Mean)}." : "";
        return new TodayTask("mow", urgency, ReadFirst(plan) + PlanSpeech.Mowing(plan) + set, because)
        {
            Area = plan.Today.AreaName,
            Unit = unit?.Unit ?? plan.Today.CutMm?.Unit,
            Bench = bench,
            Plan = plan,
            TakesMinutes = day.Minutes,
            Why = [.. bench?.Step.Why ?? [], PlanSpeech.Why(day)],
            Cautions = [.. bench?.Step.Cautions ?? [], .. PlanSpeech.StandOnIt],
        };
    }
}
