namespace Closemown.Advice;

/// <summary>How pressing a unit's next step at the bench is.</summary>
internal static class TodayBench
{
    private const double Likely = 0.5;

    /// <summary>The step as one of today's things; null where the bench asks for nothing and the unit's mowing belongs to an area.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="advice">Its next step.</param>
    /// <param name="mows">Plans of the areas that it mows.</param>
    /// <param name="anyPlan">Whether any area has a plan.</param>
    /// <param name="now">When it is asked.</param>
    public static TodayTask? Of(Desk desk, string unit, StepAdvice advice, IReadOnlyList<AreaPlan> mows, bool anyPlan, DateTimeOffset now)
    {
        var step = advice.Step;
        if (step.Do == "mow" && mows.Count > 0) return null;
        var (urgency, because) = step.Do == "mow" ? (anyPlan ? Urgency.Nothing : Urgency.Today, "The bench asks for nothing.") : Pressing(desk, unit, advice, mows, now);
        return new TodayTask(step.Do, urgency, step.Say, because) { Unit = unit, Bench = advice, TakesMinutes = step.TakesMinutes, Why = step.Why, Cautions = step.Cautions };
    }

    private static (Urgency, string) Pressing(Desk desk, string unit, StepAdvice advice, IReadOnlyList<AreaPlan> mows, DateTimeOffset now)
    {
        var memory = desk.Track(unit).Memory;
        var next = mows.Select(TurfToday.NextMow).OfType<Closemown.Turf.PlanDay>().OrderBy(d => d.Date).FirstOrDefault();
        // Where no plan tells when it mows next, it may be today.
        var due = mows.Count == 0 || mows.Any(TodayTurf.MowsToday);
        if (advice.Step.Do == "repair") return (Urgency.Safety, "Nothing is mown or turned under power before that.");
        if (memory.FitWanted is "rebuild" or "adjuster" or "tightened") return (Urgency.Safety, "What may be bent or loose is looked at before anything turns under power.");
        if (memory.Heavy || memory.Signs.BackedOff) return (Urgency.Safety, "A heavy touch is backed off and felt before anything turns under power.");
        if (memory.Signs.StrikeOpen is not null) return (Urgency.Safety, "It hit something, and nobody has looked since.");
        if (memory.OddSound is not null) return (Urgency.Safety, "A strange sound is looked into before it mows again.");
        if (memory.FeelWanted && (due || new SittingNow(memory, now).Open)) return (Urgency.Safety, "It was changed and not felt since at both ends: never from the bench straight to mowing.");
        if (Lapping(advice.Step) && mows.SelectMany(p => p.Plan.Notes.Where(n => n.Kind == Closemown.Turf.PlanNoteKind.LapBy && n.Date == p.Today.Date)).Any())
            return (Urgency.Match, "After today it is too late for a {lap} before the match.");
        // A rule of the trade decided alone: it says why.
        if (advice is { AsItStands: null, Step.Why: [var first, ..] } && memory.Unusual is null)
            return (due ? Urgency.OutOfTolerance : Urgency.CanWait, first);
        var stands = advice.AsItStands;
        var badly = stands is null || stands.InTolerance < Likely || stands.CleanShare < Likely;
        // Before a match the bench presses as the mowing does, and comes before it.
        if (due && badly) return (mows.Any(p => TodayTurf.Match(p) is not null) ? Urgency.Match : Urgency.OutOfTolerance, (mows.Count > 0 ? "It mows today, and " : "Before it mows: ") + Stands(stands, memory.Unusual is not null));
        if (due) return (Urgency.CanWait, $"It can wait: {Stands(stands, false)}");
        return (Urgency.CanWait, next is null ? "It can wait: no mowing is planned with it." : $"It can wait until it mows next, {TurfSpeech.Day(next.Date)}: {Stands(stands, memory.Unusual is not null)}");
    }

    private static bool Lapping(AdviceStep step) => step.Do == "lap" || step.Then.Any(t => t.Do == "lap");

    private static string Stands(ExpectedNip? nip, bool odd) => nip is not null
        ? $"it is {Quantities.Chances.ToBe(nip.InTolerance)} in tolerance as it stands."
        : odd ? "its last reading is in doubt." : "nothing tells yet how its {gap} stands.";
}
