using System.Text.Json.Nodes;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The turf's part of today: each area in short, and whether mowing is the one thing to do now.</summary>
public static class TurfToday
{
    private const int Ahead = 14;

    /// <summary>Plans of the areas that were mown or read.</summary>
    public static IEnumerable<AreaPlan> All(Desk desk, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(desk);
        foreach (var area in desk.Areas)
        {
            if (desk.Ledger(area).Track is { Mowings: 0, HeightReadings: 0 }) continue;
            yield return AreaPlan.Of(desk, area, now, Ahead, now);
        }
    }

    /// <summary>The next planned mowing, or null.</summary>
    public static PlanDay? NextMow(AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Plan.Days.FirstOrDefault(d => d.Mow);
    }

    /// <summary>An area in short.</summary>
    public static JsonObject Json(Desk desk, AreaPlan plan)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(plan);
        var t = plan.Today;
        var short0 = new JsonObject
        {
            ["area"] = t.AreaName,
            ["canopyMm"] = TurfAnswer.Within(t.CanopyMm, 0, double.MaxValue),
            ["growthMmPerDay"] = TurfAnswer.Within(t.GrowthMm, 0, double.MaxValue),
            ["stress"] = TurfAnswer.Within(t.Stress, 0, StressSources.Severe),
            ["keepOff"] = new JsonArray([.. t.Off.Select(o => (JsonNode)o)]),
        };
        if (t.ShareIfMown is { } share) short0["shareIfMown"] = share.ToJson();
        if (NextMow(plan) is { } next)
        {
            short0["nextMow"] = new JsonObject
            {
                ["date"] = TurfAnswer.Date(next.Date),
                ["cutMm"] = Math.Round(next.CutMm, 3),
                ["benchMm"] = t.CutMm?.Unit is { } unit ? Math.Round(desk.Height(unit).SetBenchMm(next.CutMm, t.AreaName).Mean, 3) : null,
            };
        }
        return short0;
    }

    /// <summary>The one thing to do now: a step at the bench goes first; else what the plan says of today.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="plans">Plans of all areas.</param>
    /// <param name="bench">The step that the steel asks for; null where there is no unit.</param>
    /// <param name="phrasing">The person's words.</param>
    public static JsonObject? Now(Desk desk, IReadOnlyList<AreaPlan> plans, JsonObject? bench, Phrasing phrasing)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(plans);
        ArgumentNullException.ThrowIfNull(phrasing);
        if (plans.Count == 0 || (bench is not null && (string?)bench["do"] != "mow")) return bench;
        if (plans.FirstOrDefault(p => p.Plan.Days[0].Mow) is { } today)
        {
            var unit = today.Today.CutMm?.Unit;
            var step = (unit is null || (string?)bench?["unit"] == unit ? bench : null) ?? new JsonObject { ["do"] = "mow", ["takesMinutes"] = today.Plan.Days[0].Minutes, ["expect"] = new JsonObject(), ["then"] = new JsonArray() };
            step["area"] = today.Today.AreaName;
            if (unit is not null) step["benchMm"] = Math.Round(desk.Height(unit).SetBenchMm(today.Plan.Days[0].CutMm, today.Today.AreaName).Mean, 3);
            step["cutMm"] = Math.Round(today.Plan.Days[0].CutMm, 3);
            step["say"] = phrasing.Say(PlanSpeech.Summary(today).First());
            step["cautions"] = Joined(step["cautions"], PlanSpeech.StandOnIt.Select(phrasing.Say));
            step["why"] = Joined(step["why"], [phrasing.Say(PlanSpeech.Why(today.Plan.Days[0]))]);
            return step;
        }
        var soonest = plans.OrderBy(p => NextMow(p)?.Date ?? DateOnly.MaxValue).First();
        return new JsonObject
        {
            ["do"] = "wait",
            ["area"] = soonest.Today.AreaName,
            ["until"] = NextMow(soonest) is { } next ? TurfAnswer.Date(next.Date) : null,
            ["say"] = phrasing.Say($"Nothing to do today. {PlanSpeech.Summary(soonest).First()}"),
            ["takesMinutes"] = 0,
            ["expect"] = new JsonObject(),
            ["why"] = new JsonArray(phrasing.Say(PlanSpeech.Why(soonest.Plan.Days[0]))),
            ["cautions"] = new JsonArray(),
            ["then"] = new JsonArray(),
        };
    }

    private static JsonArray Joined(JsonNode? before, IEnumerable<string> more) =>
        new([.. (before as JsonArray)?.Select(n => n!.DeepClone()) ?? [], .. more.Select(m => (JsonNode)m)]);
}
