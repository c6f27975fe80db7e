using Closemown.Advice;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>A step told to a person: what to do, how sure, why, cautions, what follows.</summary>
/// <param name="screen">Where it is told.</param>
/// <param name="words">The person's words.</param>
/// <param name="style">The person's way of writing.</param>
/// <param name="unit">The unit, where the book has several and a command must name it; null else.</param>
internal sealed class StepText(Screen screen, Phrasing words, WritingStyle style, string? unit = null)
{
    private const int Column = 12;
    private readonly Sections sections = new(screen, Column);

    /// <summary>The whole advice.</summary>
    public IEnumerable<string> Lines(StepAdvice advice)
    {
        var step = advice.Step;
        foreach (var line in Now(step)) yield return line;
        yield return "";
        foreach (var line in sections.Lines("How sure", Sure(step))) yield return line;
        foreach (var line in sections.Lines("Why", step.Why.Where(w => !step.Say.Contains(w, StringComparison.Ordinal)).Select(words.Say))) yield return line;
        foreach (var line in sections.Lines("Caution", step.Cautions.Select(words.Say), Tone.Danger)) yield return line;
        foreach (var line in sections.Lines("Then", step.Then.Select(t => words.Say(t.Say)))) yield return line;
    }

    /// <summary>What to type when it is done, and to hear more.</summary>
    public IEnumerable<string> ToType(StepAdvice advice)
    {
        if (Record(advice.Step) is { } typed) foreach (var line in sections.Lines("Enter it", [typed])) yield return line;
        foreach (var line in sections.Lines("In full", ["closemown why"])) yield return line;
        yield return $"This advice: {advice.Id}";
    }

    /// <summary>"Do now: …", the heaviest thing on the screen.</summary>
    public IEnumerable<string> Now(AdviceStep step)
    {
        var takes = Chance.Minutes(step.TakesMinutes, style.DecimalSign);
        foreach (var line in Wrap.Text($"Do now: {words.Say(step.Say)}{(takes.Length > 0 ? $" ({takes})" : "")}", screen.Width)) yield return screen.Ink(Tone.Strong, line);
    }

    /// <summary>How sure, in sentences.</summary>
    public IEnumerable<string> Sure(AdviceStep step)
    {
        if (step.Expect is { } nip)
        {
            var plan = step.Then.Count > 0;                // what is expected, is so after the whole plan
            var then = step.Do == "mow" ? "it is" : plan ? "at the end of these steps it is" : "it is then";
            yield return $"{Capital(Chance.InHundred(nip.InTolerance))} that {then} in tolerance at all three places; {Chance.InHundred(nip.CleanShare)} leaves cut clean at the next mowing.";
            var at = nip.ClearanceUm.Select((e, s) => $"{Place(s)} {LengthPrinting.Gap(e.Mean, style)} (give or take {LengthPrinting.Gap(e.Sd, style)})");
            yield return $"{(step.Do == "mow" ? "The gap now" : plan ? "The gap at their end" : "The gap then")}: {string.Join(", ", at)}.";
        }
        if (step.ExpectHeight is { } height)
        {
            var figures = new HeightFigures(style);
            var known = Math.Max(height.Left.Sd, height.Right.Sd) < 1;
            if (step.Within is { } now) yield return $"{Capital(Chance.InHundred(now))} that both sides are within the tolerance as it stands{(step.Do is "screw" ? $"; {Chance.InHundred(height.Within)} after this step" : "")}.";
            if (known) yield return $"{(step.Do is "screw" or "lock" ? "Expected then" : "The gauge should read")}: {Place(0)} {figures.Whole(height.Left.Mean)} (give or take {figures.Number(height.Left.Sd)}), {Place(2)} {figures.Whole(height.Right.Mean)} (give or take {figures.Number(height.Right.Sd)}).";
        }
        if (step.ExpectRead.Count > 0)
        {
            yield return "Likeliest to be found: " + string.Join(", ", step.ExpectRead.Select(r =>
            {
                var best = Array.IndexOf(r.P, r.P.Max());
                return $"{Place(r.Station)} {r.Words[best]} ({Chance.InHundred(r.P[best])})";
            })) + ".";
        }
        if (step is { Expect: null, ExpectHeight: null, ExpectRead.Count: 0 }) yield return step.Do == "fit" ? "Nothing else can be trusted before this is known." : "A rule decides this, not a reckoning.";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What to type when it is done; null where nothing is.</summary>
    internal string? Record(AdviceStep step) => step.Do switch
    {
        "paper-cut" => Checked(step, "cuts, nicks or folds"),
        "paper-drag" => Checked(step, "tight, slight or loose"),
        "contact" => Checked(step, "none, light or heavy"),
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
        "mow" => $"{Add("mow 1h")}, then {Add("swath LEFT CENTRE RIGHT", "each clean, ragged or uncut")}",
        _ => null,
    };

    private string Add(string typed, string? remark = null) =>
        $"closemown add {typed}{(unit is null ? "" : $" --unit {CommandWord.Of(unit)}")}{(remark is null ? "" : $"   ({remark})")}";

    private string Checked(AdviceStep step, string words) => step.Stations switch
    {
        { Count: 3 } => Add($"{step.Do} LEFT CENTRE RIGHT", $"each {words}"),
        [0, 2] => Add($"{step.Do} LEFT RIGHT", $"each {words}"),
        _ => Add($"{step.Do} {string.Join(' ', step.Stations.Select(s => $"{Stations.All[s]}=…"))}", words),
    };

    private string Turned(string side, double? turns) => turns is { } n && n != 0 ? $"{side}={Number(n, "+0.##;-0.##")} " : "";

    private string Number(double value, string format) => value.ToString(format, System.Globalization.CultureInfo.InvariantCulture).Replace('.', style.DecimalSign);

    private string Place(int station) => Words.For(style, station switch { 0 => WordKey.Left, 1 => WordKey.Centre, _ => WordKey.Right });
}
