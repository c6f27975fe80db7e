using Closemown.Advice;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>A step told to a person: what to do, how sure, why, cautions, what follows.</summary>
/// <param name="screen">Where it is told.</param>
/// <param name="words">The person's words.</param>
/// <param name="style">The person's way of writing.</param>
/// <param name="unit">The unit, where the book has several and a command must name it; null else.</param>
/// <param name="byId">Whether its reasons are asked for by its id, as those of anything but the plain next step.</param>
internal sealed class StepText(Screen screen, Phrasing words, WritingStyle style, string? unit = null, bool byId = false)
{
    private const int Column = 12;
    private const char Tied = '\u00a0';              // a command to type is not broken over two lines
    private readonly Sections sections = new(screen, Column);

    /// <summary>The whole advice in five lines: what to do, why, with what caution, how to enter it, how sure. What makes it safe to begin has a line of its own.</summary>
    public IEnumerable<string> Lines(StepAdvice advice)
    {
        var step = advice.Step;
        foreach (var line in Now(step)) yield return line;
        if (step.Why.FirstOrDefault(w => !step.Say.Contains(w, StringComparison.Ordinal)) is { } why) foreach (var line in sections.Lines("Why", [words.Say(why)])) yield return line;
        List<string> safe = [.. step.Cautions.Where(c => c is Cautions.Hands or Cautions.Tip)], own = [.. step.Cautions.Except(safe)];
        foreach (var line in sections.Lines("Caution", ((List<string>[])[safe, own]).Where(c => c.Count > 0).Select(c => string.Join(' ', c.Select(words.Say))), Tone.Danger)) yield return line;
        if (Record(step) is { } typed) foreach (var line in sections.Lines("Enter it", [typed])) yield return line;
        if (step.Asks is { } asks) foreach (var line in sections.Lines("Tell me", [$"{words.Say(asks)} {Add($"unit click=\"14 {words.Say("{step}")}s a turn, 1 mm thread\"")}"])) yield return line;
        foreach (var line in sections.Lines("How sure", [$"{Short(advice)} {More(advice).Replace(' ', Tied)}"])) yield return line.Replace(Tied, ' ');
    }

    /// <summary>"Do now: …", the heaviest thing on the screen.</summary>
    public IEnumerable<string> Now(AdviceStep step)
    {
        var takes = Chance.Minutes(step.TakesMinutes, style.DecimalSign);
        foreach (var line in Wrap.Text($"Do now: {words.Say(step.Say)}{(takes.Length > 0 ? $" ({takes})" : "")}", screen.Width)) yield return screen.Ink(Tone.Strong, line);
    }

    /// <summary>How sure, in a word and a number, and of what.</summary>
    private static string Short(StepAdvice advice)
    {
        var step = advice.Step;
        if (step.Expect is { } nip) return $"{Chances.Both(nip.InTolerance)}: in tolerance {After(step)}.";
        if (step.ExpectHeight is { } height)
        {
            var then = step.Do is "screw" or "lock";
            return $"{Chances.Both(then ? height.Within : step.Within ?? height.Within)}: both sides within the tolerance {(then ? "after this step" : "as it stands")}.";
        }
        if (advice.AsItStands is { } stands) return $"{Chances.Both(stands.InTolerance)}: in tolerance as it stands.";
        return step.Do == "fit" ? "nothing else can be trusted before this is known." : "a rule of the trade decides this.";
    }

    private static string After(AdviceStep step) => step.Do == "mow" ? "as it stands" : step.Then.Count > 0 ? "after all steps" : "after this step";

    /// <summary>How sure, in sentences, with all its figures.</summary>
    public IEnumerable<string> Sure(AdviceStep step)
    {
        if (step.Expect is { } nip)
        {
            if (step.ExpectStep is { } alone && step.Then.Count > 0) foreach (var line in Nip(alone, "after this step")) yield return line;
            foreach (var line in Nip(nip, After(step))) yield return line;
        }
        if (step.ExpectHeight is { } height)
        {
            var figures = new HeightFigures(style);
            var known = Math.Max(height.Left.Sd, height.Right.Sd) < 1;
            if (step.Within is { } now) yield return $"{Capital(Chances.InHundred(now))} that both sides are within the tolerance as it stands{(step.Do is "screw" ? $"; {Chances.InHundred(height.Within)} after this step" : "")}.";
            if (known) yield return $"{(step.Do is "screw" or "lock" ? "Expected then" : "The gauge should read")}: {Place(0)} {figures.Whole(height.Left.Mean)} (give or take {figures.Number(height.Left.Sd)}), {Place(2)} {figures.Whole(height.Right.Mean)} (give or take {figures.Number(height.Right.Sd)}).";
        }
        if (step.ExpectRead.Count > 0)
        {
            yield return "Likeliest to be found: " + string.Join(", ", step.ExpectRead.Select(r =>
            {
                var best = Array.IndexOf(r.P, r.P.Max());
                return $"{Place(r.Station)} {r.Words[best]} ({Chances.InHundred(r.P[best])})";
            })) + ".";
        }
        if (step is { Expect: null, ExpectHeight: null, ExpectRead.Count: 0 }) yield return step.Do == "fit" ? "Nothing else can be trusted before this is known." : "A rule decides this, not a reckoning.";
    }

    private IEnumerable<string> Nip(ExpectedNip nip, string after)
    {
        yield return $"{Capital(after)}: {Chances.InHundred(nip.InTolerance)} that it is in tolerance at all three places; {Chances.InHundred(nip.CleanShare)} leaves cut clean at the next mowing.";
        yield return $"The {Words.For(style, WordKey.Clearance)} {after}: {string.Join(", ", nip.ClearanceUm.Select((e, s) => $"{Place(s)} {LengthPrinting.SaidGap(e.Mean, style)} (give or take {LengthPrinting.SaidSpread(e.Sd, style)})"))}.";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What to type when it is done; null where nothing is.</summary>
    internal string? Record(AdviceStep step) => step.Do switch
    {
        "paper-cut" => Checked(step, "cuts, nicks or folds"),
        "paper-drag" => Checked(step, "tight, slight or loose"),
        "contact" when step.Blade is { } blade => Add($"contact {string.Join(' ', step.Stations.Select(s => $"{Stations.All[s]}=…"))} blade={blade}", "none, light or heavy"),
        "contact" => Checked(step, "none, light, heavy, once-a-turn"),
        "torch" => Checked(step, "none, thin or wide"),
        "feeler" => Add($"feeler {string.Join(' ', step.Stations.Select(s => $"{Stations.All[s]}=30..50um"))}", "what goes .. what does not"),
        "fit" => Add("fit none none tight free straight", "as found: play left, play right, screws, adjusters, blades"),
        "clicks" => Add($"clicks left={step.Left ?? 0} right={step.Right ?? 0}"),
        "lap" => Add($"lap {Number(step.LapMinutes ?? 0, "0.##")}{(step.Grit is { } g ? $" grit={Number(g, "0")}" : "")}"),
        "square-up" => Add("square-up"),
        "stone" => Add($"stone {step.What}"),
        "grind" => Add($"grind {step.What}"),
        "repair" => Add("rebuild \"what was done\""),
        "wait" => Add("contact LEFT RIGHT", "when it has cooled; each none, light or heavy"),
        "straightedge" => Add("measure straightedge centre=0.03mm", "the hollow found there; 0mm for none"),
        "knife-screws" => Add("service knife-screws"),
        "strip" => Add("strip 80um", "its thickness"),
        "gauge" => Add("gauge LEFT RIGHT"),
        "screw" => Add($"screw {Turned("left", step.LeftTurns)}{Turned("right", step.RightTurns)}".TrimEnd()),
        "lock" => Add("locked"),
        "mow" when step.ExpectHeight is not null => null,
        "mow" => $"{Add("mow 1h")}, then {Add($"swath {Three}", "clean, ragged or uncut")}",
        _ => null,
    };

    private string Three => $"LEFT {Place(1).ToUpperInvariant()} RIGHT";

    /// <summary>How to hear all that stands behind it: of an advice that is no plain next step by its id.</summary>
    private string More(StepAdvice advice) => $"More: closemown why{(byId ? $" {advice.Id}" : unit is null ? "" : $" --unit {CommandWord.Of(unit)}")}";

    private string Add(string typed, string? remark = null) =>
        $"closemown add {typed}{(unit is null ? "" : $" --unit {CommandWord.Of(unit)}")}{(remark is null ? "" : $"   ({remark})")}";

    private string Checked(AdviceStep step, string words) => step.Stations switch
    {
        { Count: 3 } => Add($"{step.Do} {Three}", words),
        [0, 2] => Add($"{step.Do} LEFT RIGHT", words),
        _ => Add($"{step.Do} {string.Join(' ', step.Stations.Select(s => $"{Stations.All[s]}=…"))}", words),
    };

    private string Turned(string side, double? turns) => turns is { } n && n != 0 ? $"{side}={Number(n, "+0.##;-0.##")} " : "";

    private string Number(double value, string format) => value.ToString(format, System.Globalization.CultureInfo.InvariantCulture).Replace('.', style.DecimalSign);

    private string Place(int station) => Words.For(style, station switch { 0 => WordKey.Left, 1 => WordKey.Centre, _ => WordKey.Right });
}
