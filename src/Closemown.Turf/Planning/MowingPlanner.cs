namespace Closemown.Turf;

/// <summary>When to mow, at which height, over the coming days: the least expected loss in mowings.</summary>
/// <remarks>
/// Solved backward over days on a grid of standing heights, heights the turf is used to, stress and what the last mowings bind; weather and growth are averaged over traces. Shown are then the decisions
/// over the traces. What a plan may never do is in <see cref="PlanLimits"/>; what things cost in <see cref="PlanLosses"/>. docs/plan.md tells it in full.
/// </remarks>
public static class MowingPlanner
{
    /// <summary>Makes the plan. The same problem gives the same plan.</summary>
    /// <param name="problem">What is known.</param>
    /// <param name="workspace">Arrays of an earlier plan to use again, or null.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of the problem is out of its range.</exception>
    public static MowingPlan Plan(PlanProblem problem, PlanWorkspace? workspace = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        problem.Check();
        var solver = new PlanSolver(problem, workspace ?? new());
        solver.Solve();
        var choices = new PlanChoices(problem, solver);
        var lived = new PlanLived(problem, solver, choices);
        var days = new PlanFollowed(problem, solver, choices).Days(lived.MownShare);
        return new(days, Outlook(problem, solver, lived), [.. Notes(problem, days)], lived.Loss);
    }

    private static WishOutlook Outlook(PlanProblem p, PlanSolver solver, PlanLived lived)
    {
        var reached = lived.ReachedShare;
        var (earliest, past) = ((DateOnly?)null, false);
        var at = Array.FindIndex(reached, r => r >= PlanLimits.Reached);
        if (at >= 0) earliest = p.From.AddDays(at);
        else if (lived.Mowings > 0)
        {
            // Steps still to go at the pace of the mowings so far; slower pace than that of a calm week is not guessed at.
            var daysPerMowing = reached.Length / lived.Mowings;
            var steps = Math.Max(1, Math.Abs(lived.MeanUsedMm - p.WishMm) / PlanLimits.LowerMm);
            var more = steps * PlanLimits.LowerApart * daysPerMowing;
            if (more < 400) (earliest, past) = (p.From.AddDays(reached.Length + (int)Math.Ceiling(more)), true);
        }
        if (p.WishBy is not { } by) return new(earliest, past, null, null);
        var day = by.DayNumber - p.From.DayNumber;
        double? probability = day < 0 ? reached[0] : day < reached.Length ? reached[day] : null;
        return new(earliest, past, probability, probability is { } q ? q >= PlanLimits.Reached : earliest <= by);
    }

    private static IEnumerable<PlanNote> Notes(PlanProblem p, List<PlanDay> days)
    {
        var end = p.From.AddDays(p.Days - 1);
        foreach (var f in p.Fixtures.Where(f => f >= p.From).Order())
        {
            foreach (var (kind, before) in ((PlanNoteKind, int)[])[(PlanNoteKind.SandBy, PlanLimits.SandBeforeDays), (PlanNoteKind.HeightHeldFrom, p.NoHeightChangeDays), (PlanNoteKind.LapBy, PlanLimits.LapBeforeDays)])
            {
                if (f.AddDays(-before) is var date && date >= p.From && date <= end) yield return new(kind, date, f);
            }
        }
        if (days.Find(d => d is { Mow: true, Move: CutMove.Lowered }) is { } first) yield return new(PlanNoteKind.RollFirst, first.Date, null);
    }
}
