using Closemown.Advice;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Today on one screen: the one thing to do now, what comes next, what is unusual, and how things stand as far as there is room.</summary>
internal sealed class TodayText(Call call, OpenBook open)
{
    private const int Rows = 24, Column = 10;
    private readonly Screen screen = call.Screen;
    private readonly WritingStyle style = call.Style;
    private readonly Sections sections = new(call.Screen, Column);

    /// <summary>The lines. What to do now, its cautions and what is unusual are never cut; what comes next and how things stand are told as far as there is room.</summary>
    public IReadOnlyList<string> Lines(TodayAnswer today)
    {
        List<string> now = [.. Now(today.Tasks[0])];
        List<string> unusual = [.. sections.Lines("Unusual", today.Odd.Count == 0 ? ["Nothing: no reading that is not like this mower or this turf."] : today.Odd.Select(o => Named(o.Unit, o.Area, today) + Words(o.Unit).Say(o.Say)))];
        // The last row stays free for what is typed next.
        var room = Rows - 1 - now.Count - unusual.Count;
        List<string> next = [.. sections.Lines("Next", Fitting(today.Tasks.Skip(1).Select(t => Next(t, today)), room, "closemown next, closemown plan"))];
        room -= next.Count;
        return [.. now, .. next, .. unusual, .. sections.Lines("As it is", Fitting(Standing(today), room, ""))];
    }

    private IEnumerable<string> Now(TodayTask task)
    {
        var takes = Chance.Minutes(task.TakesMinutes, style.DecimalSign);
        var words = Words(task.Unit);
        foreach (var line in Wrap.Text($"Do now: {(task.Area is { } area ? area + ": " : "")}{words.Say(task.Say)}{(takes.Length > 0 ? $" ({takes})" : "")}", screen.Width)) yield return screen.Ink(Tone.Strong, line);
        if (task.Because.Length > 0) foreach (var line in sections.Lines("Because", [words.Say(task.Because)])) yield return line;
        foreach (var line in sections.Lines("Caution", task.Cautions.Select(words.Say), Tone.Danger)) yield return line;
    }

    private string Next(TodayTask task, TodayAnswer today) => Named(task.Unit, task.Area, today) + Words(task.Unit).Say($"{task.Say} {task.Because}".TrimEnd());

    /// <summary>Whose it is, where there are several or it is an area's.</summary>
    private static string Named(string? unit, string? area, TodayAnswer today) => area is not null ? $"{area}: " : today.Steps.Count > 1 && unit is not null ? $"{unit}: " : "";

    /// <summary>How things stand, a line or two each.</summary>
    private IEnumerable<string> Standing(TodayAnswer today)
    {
        foreach (var plan in today.Plans)
        {
            var words = new Phrasing(style);
            yield return $"{plan.Today.AreaName}: {string.Join(' ', TurfSpeech.Standing(plan.Today).Select(words.Say))}";
            if (PlanSpeech.Wish(plan) is { } wish) yield return words.Say(wish);
            if (TurfSpeech.Frost(plan.Today) is { } frost) yield return words.Say(frost);
        }
        foreach (var (unit, advice) in today.Steps)
        {
            var name = today.Steps.Count > 1 ? unit + ": " : "";
            if (open.Desk.HeightTrack(unit).Readings > 0)
            {
                var (height, figures) = (open.Desk.Height(unit, open.Talk.AskedAt), new HeightFigures(style));
                var cut = height.CutMm();
                yield return $"{name}The height: bench {Word(WordKey.Left)} {figures.Near(height.BenchMm(0).Mean)}, {Word(WordKey.Right)} {figures.NearWhole(height.BenchMm(1).Mean)}; it cuts {figures.NearWhole(cut.Mean)}, nearly always {figures.Near(cut.P05)} to {figures.NearWhole(cut.P95)}.";
            }
            var belief = open.Desk.Belief(unit);
            var gaps = Enumerable.Range(0, 3).Select(s => $"{Word(s switch { 0 => WordKey.Left, 1 => WordKey.Centre, _ => WordKey.Right })} {LengthPrinting.SaidGap(belief.ClearanceUm(s).Mean, style)} (± {LengthPrinting.SaidSpread(belief.ClearanceUm(s).Sd, style)})");
            yield return $"{name}The {Word(WordKey.Clearance)}: {string.Join(", ", gaps)}.{(advice.Step.BenchInDays is { } days ? $" Bench check {PlanSpeech.InDays(days)}." : "")}";
        }
    }

    /// <summary>As many of the items, in order, as have room; the rest is pointed to.</summary>
    private List<string> Fitting(IEnumerable<string> items, int room, string rest)
    {
        var (taken, used) = (new List<string>(), 0);
        foreach (var item in items)
        {
            var lines = Wrap.Beside("", item, screen.Width, Column).Count();
            if (used + lines > room)
            {
                if (rest.Length > 0) taken.Add($"and more: {rest}");
                break;
            }
            taken.Add(item);
            used += lines;
        }
        return taken;
    }

    private string Word(WordKey key) => Quantities.Words.For(style, key);

    private Phrasing Words(string? unit) => unit is not null && open.Desk.Units.Contains(unit) ? open.Words(unit, style) : new Phrasing(style);
}
