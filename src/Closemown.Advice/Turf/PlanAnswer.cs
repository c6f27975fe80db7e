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
        var shown = plan.Plan.Days.Take(plan.Told).ToList();
        var answer = new JsonObject
        {
            ["ok"] = true,
            ["plan"] = new JsonArray([.. shown.Select(d => (JsonNode)Day(plan, d, unit, height, phrasing))]),
            ["area"] = plan.Today.Ledger.Name,
            ["wish"] = Wish(plan),
            ["says"] = new JsonArray([.. PlanSpeech.Summary(plan).Select(s => (JsonNode)phrasing.Say(s))]),
            ["before"] = new JsonArray([.. PlanSpeech.StandOnIt.Select(s => (JsonNode)s)]),
            ["notes"] = new JsonArray([.. PlanNotes.Of(plan, desk, unit).Select(n => (JsonNode)new JsonObject { ["date"] = n.Date is { } d ? TurfAnswer.Date(d) : null, ["say"] = phrasing.Say(n.Say) })]),
            ["rules"] = new JsonArray([.. PlanSpeech.Rules.Select(r => (JsonNode)new JsonObject { ["id"] = r.Id, ["rule"] = r.Text, ["source"] = r.Source })]),
        };
        return answer;
    }

    private static JsonObject Wish(AreaPlan plan)
    {
        var wish = plan.Today.Ledger.Wish;
        return new()
        {
            ["cutMm"] = wish.CutMm,
            ["byDate"] = wish.ByDate is { } by ? TurfAnswer.Date(by) : null,
            ["reached"] = plan.Plan.WishReached is { } on ? TurfAnswer.Date(on) : null,
            ["reachedByDate"] = plan.Plan.ReachedByDate,
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
            ["minutes"] = d.Mow ? PlanSpeech.Minutes(plan, d) : 0,
            ["canopyMm"] = Q(d.CanopyMm),
            ["shareRemoved"] = Q(d.ShareRemoved),
            ["why"] = phrasing.Say(PlanSpeech.Why(plan, d)),
            ["reason"] = Word(d.Reason),
            ["changeMm"] = Math.Round(d.ChangeMm, 3),
            ["overThird"] = d.OverThird,
            ["scalp"] = d.Scalp,
            ["keepOff"] = d.KeepOff,
            ["stressed"] = d.Stressed,
            ["askFirst"] = d.AskFirst,
            ["lowerRefused"] = d.LowerRefused,
        };
        if (double.IsFinite(d.MowLoss)) day["mowLoss"] = Math.Round(d.MowLoss, 3);
        day["waitLoss"] = Math.Round(d.WaitLoss, 3);
        if (d.Mow) day["looks"] = PlanSpeech.Looks(d);
        return day;
    }

    private static string Word(DayReason reason) => reason switch
    {
        DayReason.Due => "due",
        DayReason.StepDown => "step-down",
        DayReason.Raise => "raise",
        DayReason.Trim => "trim",
        DayReason.KeepOff => "keep-off",
        DayReason.NotFree => "not-free",
        DayReason.LittleGrown => "little-grown",
        DayReason.Stressed => "stressed",
        _ => "later",
    };

    private static JsonObject Q(PlanNumber n) => new() { ["mean"] = n.Mean, ["sd"] = n.Sd, ["p05"] = n.P05, ["p50"] = n.P50, ["p95"] = n.P95 };
}
