namespace Closemown.Pages;

/// <summary>What days off change in a plan, in sentences.</summary>
public static class PlanChange
{
    private const double SameMm = 0.04, SameChance = 0.015;

    /// <summary>The changes, in order of days; none where both plans are alike.</summary>
    /// <param name="before">The plan without the days off.</param>
    /// <param name="after">The plan with them.</param>
    /// <param name="figures">The reader's units.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<PlannedDay> before, IReadOnlyList<PlannedDay> after, Figures figures)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(figures);
        var (was, now) = (before.Where(d => d.Mow).ToList(), after.Where(d => d.Mow).ToList());
        var gone = was.Where(d => now.All(n => n.Date != d.Date)).ToList();
        var come = now.Where(d => was.All(w => w.Date != d.Date)).ToList();
        var said = new List<(DateOnly Day, string Say)>();
        foreach (var day in gone)
        {
            var to = come.OrderBy(c => Math.Abs(c.Date.DayNumber - day.Date.DayNumber)).ThenBy(c => c.Date).FirstOrDefault();
            if (to is null) said.Add((day.Date, $"The mowing of {DayWords.Of(day.Date)} falls away."));
            else
            {
                come.Remove(to);
                said.Add((day.Date, $"The mowing of {DayWords.Of(day.Date)} moves to {DayWords.Of(to.Date)}{Height(day, to, figures)}."));
            }
        }
        said.AddRange(come.Select(c => (c.Date, $"A mowing more: {DayWords.Of(c.Date)}, cut at {figures.Height(c.CutMm)}.")));
        foreach (var day in now)
        {
            if (was.Find(w => w.Date == day.Date) is { } same && Math.Abs(same.CutMm - day.CutMm) > SameMm)
                said.Add((day.Date, $"{DayWords.Of(day.Date)}: cut at {figures.Height(day.CutMm)} in place of {figures.Height(same.CutMm)}."));
        }
        return [.. said.OrderBy(s => s.Day).Select(s => s.Say), .. Third(was, now)];
    }

    private static string Height(PlannedDay from, PlannedDay to, Figures figures) =>
        Math.Abs(from.CutMm - to.CutMm) > SameMm ? $", cut at {figures.Height(to.CutMm)} in place of {figures.Height(from.CutMm)}" : "";

    /// <summary>The worst day's chance that more than a third comes off, before and after.</summary>
    private static IEnumerable<string> Third(List<PlannedDay> was, List<PlannedDay> now)
    {
        var (then, at) = (was.MaxBy(d => d.OverThird), now.MaxBy(d => d.OverThird));
        if (at is null || Math.Abs(at.OverThird - (then?.OverThird ?? 0)) < SameChance) yield break;
        yield return $"More than a third of the leaf coming off at once: {Figures.InHundred(at.OverThird)} at the worst mowing ({DayWords.Of(at.Date)}), {(then is null ? "not at all" : Figures.InHundred(then.OverThird))} before.";
    }
}
