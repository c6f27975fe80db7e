using System.Text.Json.Nodes;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The turf's part of today: each area's plan, and the area in short.</summary>
public static class TurfToday
{
    /// <summary>Plans of the areas that were mown or read.</summary>
    public static IEnumerable<AreaPlan> All(Desk desk, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(desk);
        foreach (var area in desk.Areas)
        {
            if (desk.Ledger(area).Track is { Mowings: 0, HeightReadings: 0 }) continue;
            yield return AreaPlan.Of(desk, area, TurfTime.Now(desk, now), AreaPlan.UsualDays, now);
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
            ["canopyMm"] = TurfAnswer.Standing(t),
            ["canopyKnown"] = t.HeightKnown,
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
}
