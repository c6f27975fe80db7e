using System.Text.Json.Nodes;
using Closemown.Height;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>A plan in the shape of the contract: a list of days, and beside it what it says of the wish.</summary>
public static class PlanAnswer
{
    /// <summary>The answer.</summary>
    public static JsonObject Of(Desk desk, AreaPlan plan, Phrasing phrasing)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(phrasing);
        var unit = plan.Today.CutMm?.Unit ?? plan.Today.Ledger.Unit;
        var height = unit is null ? null : desk.Height(unit);
        return new()
        {
            ["ok"] = true,
            ["plan"] = new JsonArray([.. (plan.Today.HeightKnown ? plan.Plan.Days : []).Select(d => (JsonNode)Day(plan, d, unit, height, phrasing))]),
            ["area"] = plan.Today.Ledger.Name,
            ["wish"] = Wish(plan),
            ["waters"] = Waters(plan),
            ["says"] = new JsonArray([.. PlanSpeech.Summary(plan).Select(s => (JsonNode)phrasing.Say(s))]),
            ["before"] = new JsonArray([.. PlanSpeech.StandOnIt.Select(s => (JsonNode)s)]),
            ["notes"] = new JsonArray([.. PlanNotes.Of(plan, desk, unit).Select(n => (JsonNode)new JsonObject { ["date"] = n.Date is { } d ? TurfAnswer.Date(d) : null, ["say"] = phrasing.Say(n.Say) })]),
            ["rules"] = new JsonArray([.. PlanSpeech.Rules.Select(r => (JsonNode)new JsonObject { ["id"] = r.Id, ["rule"] = r.Text, ["source"] = r.Source })]),
        };
    }

    private static JsonObject? Waters(AreaPlan plan) => plan.Today.Waters is not { } habit ? null
        : new() { ["everyDays"] = Math.Round(habit.EveryDays, 1), ["mm"] = Math.Round(habit.Mm, 1) };

    private static JsonObject Wish(AreaPlan plan)
    {
        var (wish, outlook) = (plan.Today.Ledger.Wish, plan.Plan.Wish);
        return new()
        {
            ["cutMm"] = wish.CutMm,
            ["byDate"] = wish.ByDate is { } by ? TurfAnswer.Date(by) : null,
            ["reached"] = plan.Reached is { } on ? TurfAnswer.Date(on) : null,
            ["reachedByDate"] = outlook.ByDateProbability,
            ["canMeetDate"] = outlook.CanMeetDate,
            ["weekdays"] = new JsonArray([.. wish.Weekdays.Select(d => (JsonNode)d.ToString()[..3].ToLowerInvariant())]),
            ["minutesADay"] = wish.MinutesADay,
            ["fixtures"] = new JsonArray([.. wish.Fixtures.Select(f => (JsonNode)TurfAnswer.Date(f)!)]),
            ["noHeightChangeDays"] = wish.NoHeightChangeDays,
        };
    }

    private static JsonObject Day(AreaPlan plan, PlanDay d, string? unit, HeightBelief? height, Phrasing phrasing)
    {
        var day = new JsonObject
        {
            ["date"] = TurfAnswer.Date(d.Date),
            ["mow"] = d.Mow,
            ["cutMm"] = Math.Round(d.CutMm, 3),
            ["benchMm"] = height is null ? null : Math.Round(height.SetBenchMm(d.CutMm, plan.Today.Ledger.Name).Mean, 3),
            ["unit"] = unit,
            ["minutes"] = d.Minutes,
            ["canopyMm"] = Q(d.CanopyMm),
            ["shareRemoved"] = Q(d.Share),
            ["why"] = phrasing.Say(PlanSpeech.Why(d)),
            ["reason"] = Word(d.Why.Reason.ToString()),
            ["heightReason"] = Word(d.WhyHeight.Reason.ToString()),
            ["mowProbability"] = d.MowProbability,
            ["overThird"] = d.OverThirdProbability,
            ["scalp"] = d.ScalpProbability,
            ["keepOff"] = d.KeepOffProbability,
            ["free"] = d.FreeProbability,
            ["wilting"] = d.WiltingProbability,
            ["stress"] = d.Stress,
            ["askFirst"] = d.AskFirst,
        };
        if (double.IsFinite(d.LossMown)) day["mowLoss"] = Math.Round(d.LossMown, 3);
        if (double.IsFinite(d.LossNotMown)) day["waitLoss"] = Math.Round(d.LossNotMown, 3);
        if (d.Mow) day["looks"] = PlanSpeech.Looks(d);
        return day;
    }

    /// <summary>A name in the contract's form: <c>LittleGrown</c> is <c>little-grown</c>.</summary>
    private static string Word(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));

    private static JsonObject Q(Spread n) => new() { ["mean"] = n.Mean, ["sd"] = n.Sd, ["p05"] = n.P05, ["p50"] = n.P50, ["p95"] = n.P95 };
}
