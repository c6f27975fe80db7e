namespace Closemown.Advice;

/// <summary>Today's things in their one order: what is urgent first (safety, keep off, a match, a unit that would mow out of tolerance, turf that cannot wait), then what could wait.</summary>
public static class TodayOrder
{
    /// <summary>The things, the one to do now first. Of two that press alike the bench comes first, then water, then the rest.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="steps">The next step at the bench of each unit.</param>
    /// <param name="plans">Plans of the areas.</param>
    /// <param name="now">When it is asked.</param>
    public static IReadOnlyList<TodayTask> Of(Desk desk, IReadOnlyList<(string Unit, StepAdvice Advice)> steps, IReadOnlyList<AreaPlan> plans, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(plans);
        var tasks = new List<TodayTask>();
        foreach (var (unit, advice) in steps)
        {
            if (TodayBench.Of(desk, unit, advice, [.. plans.Where(p => UnitOf(p) == unit)], plans.Count > 0, now) is { } bench) tasks.Add(bench);
        }
        foreach (var plan in plans)
        {
            var own = steps.Where(s => s.Unit == UnitOf(plan)).Select(s => ((string, StepAdvice)?)s).FirstOrDefault();
            tasks.AddRange(TodayTurf.Of(desk, plan, own));
        }
        return [.. tasks.OrderBy(t => t.Urgency).ThenBy(t => t.Area is null ? 0 : t.Do == "water" ? 1 : 2).ThenBy(t => t.Until ?? DateOnly.MaxValue)];
    }

    private static string? UnitOf(AreaPlan plan) => plan.Today.CutMm?.Unit ?? plan.Today.Ledger.Unit;
}
