using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Cli;

/// <summary>Leads through a gauge study: the same setting read several times by one person or two, at a few settings.</summary>
internal sealed class StudyGaugeCommand : CliCommand
{
    private const double FarOffMm = 0.3;                 // a reading so far from the others of its setting is a slip of the pen more likely than scatter (no source)

    private static readonly Argument<string?> Study = new("name") { HelpName = "NAME", Description = "a name for the study; left out: the studies in the book", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Argument<string[]> Reading = new("reading") { HelpName = "LEFT RIGHT", Description = "one reading, as with closemown add gauge; left out: nothing is entered, or at a terminal it asks", Arity = ArgumentArity.ZeroOrMore };
    private static readonly Option<string> Setting = new("--setting") { Description = "the setting it belongs to; left out: the one that comes next", HelpName = "NAME" };
    private static readonly Option<string> By = new("--by") { Description = "who reads", HelpName = "NAME" };
    private static readonly Option<string> Settings = new("--settings") { Description = "how many settings the study has, 1 to 10; 3 where left out", HelpName = "N" };
    private static readonly Option<string> Trials = new("--trials") { Description = "how often each person reads each setting, 2 to 20; 3 where left out", HelpName = "N" };

    public StudyGaugeCommand() : base("gauge", "how well the gauge repeats itself in your hands, and how close a setting can honestly be")
    {
        Examples =
        [
            ("closemown study gauge spring", "at a terminal it asks for reading after reading; else it tells the next one"),
            ("closemown study gauge spring 5.02 5.11 --by ann", "enter one reading, left and right"),
            ("closemown study gauge spring --json", "the table for a program"),
            ("closemown study gauge", "the studies in the book"),
        ];
        Details =
        [
            "Two or three settings, each read three times on both sides. Take the gauge off and put it back each time; leave the screws alone until everyone has read. With a second person (--by) it also shows what persons differ in.",
            "EV, AV, GRR, PV and TV are those of AIAG, Measurement Systems Analysis, by analysis of variance; each side of each setting is a part.",
        ];
        Arguments.Add(Study);
        Arguments.Add(Reading);
        foreach (var option in (Option[])[CommonOptions.Unit, Setting, By, Settings, Trials, CommonOptions.At, AddCommand.Confirm]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        int settings = Number(call, Settings, 3, 1, 10), trials = Number(call, Trials, 3, 2, 20);
        if (call.Parsed.GetValue(Study) is not { } name) return List(call);
        if (name.Any(char.IsDigit) && name.All(c => char.IsDigit(c) || c is '.' or ','))
            throw CliFault.Refused($"\"{name}\" looks like a reading, not like the name of a study.", "Write the name first: closemown study gauge spring 5.02 5.11");
        var reading = call.Parsed.GetValue(Reading) ?? [];
        var ask = reading.Length == 0 ? Asking.Of(call) : null;
        var entry = reading.Length == 0 ? null : Typed(call, reading);
        if (entry is not null)
        {
            foreach (var field in call.Parsed.GetValue(AddCommand.Confirm) ?? []) entry.ConfirmNamed(field);
            SlipAsked.Settle(entry, call.Screen, Asking.Of(call), f => f.Name);
        }
        using var open = entry is null && ask is null ? call.Read() : call.Write();
        var unit = call.UnitOf(open.Talk);
        StudyPlan Plan() => new(Rows(open, unit, name), call.Parsed.GetValue(By) is { } by ? [by] : [], settings, trials);
        JsonObject? taken = null;
        if (entry is not null)
        {
            var plan = Plan();
            var person = call.Parsed.GetValue(By) ?? (plan.Persons is [var only] ? only : throw CliFault.Refused("Several persons read in this study.", "Say who read: --by NAME."));
            taken = Enter(call, open, unit, name, entry, plan, person);
        }
        if (call.Json)
        {
            var answer = new JsonObject { ["ok"] = true };
            if (taken is not null) answer["id"] = taken["id"]!.DeepClone();
            answer["study"] = StudyJson.Of(unit, name, Plan(), SmallestMoveMm(open, unit));
            call.Answer(answer);
            return ExitCodes.Done;
        }
        if (ask is not null) Lead(call, open, unit, name, settings, trials, ask);
        Tell(call, open, unit, Plan(), nextAlone: taken is not null);
        return ExitCodes.Done;
    }

    /// <summary>Asks for one reading after the other until the study is complete or nothing more is typed.</summary>
    private static void Lead(Call call, OpenBook open, string unit, string name, int settings, int trials, Func<string, string?> ask)
    {
        var screen = call.Screen;
        var rows = Rows(open, unit, name);
        string[] readers = call.Parsed.GetValue(By) is { } by ? [by] : rows.Count > 0 ? [] : Readers(ask("Who reads? Names with a comma between them; blank for you alone: "));
        screen.Line("Type left and right, like 5.02 5.11. Leave blank to stop; what was entered is kept.");
        while (new StudyPlan(Rows(open, unit, name), readers, settings, trials) is var plan && plan.Next() is { } next)
        {
            screen.Line();
            foreach (var line in Wrap.Text(new StudyText(plan, 0, call.Style).Say(next), screen.Width)) screen.Line(line);
            if (ask("left right: ")?.Trim() is not { Length: > 0 } text) break;
            try
            {
                var entry = Typed(call, text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
                SlipAsked.Settle(entry, screen, ask, f => f.Name);
                Enter(call, open, unit, name, entry, plan, next.Person);
            }
            catch (TypedFault fault)
            {
                screen.Line($"{fault.Message}\n  {fault.Remedy.Replace("\n", "\n  ", StringComparison.Ordinal)}");
            }
        }
        screen.Line();
    }

    private static string[] Readers(string? names) => [.. (names ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    private static TypedEntry Typed(Call call, IReadOnlyList<string> reading)
    {
        var entry = new TypedEntry(GaugeEntry.Kind, call.Style);
        ShortForms.Read(entry, reading);
        foreach (var own in (string[])["study", "setting", "trial"])
        {
            if (entry.Has(own)) throw CliFault.Refused($"{own} is not typed here.", own == "setting" ? "Use --setting NAME." : "The study keeps it.");
        }
        if (!entry.Has("leftMm") || !entry.Has("rightMm")) throw CliFault.Refused("A reading of a study has a left and a right side.", "Write both, like closemown study gauge spring 5.02 5.11.");
        return entry;
    }

    private static JsonObject Enter(Call call, OpenBook open, string unit, string name, TypedEntry entry, StudyPlan plan, string person)
    {
        var next = plan.Next();
        var setting = call.Parsed.GetValue(Setting) ?? next?.Setting
            ?? throw CliFault.Refused($"The study \"{name}\" is complete: {plan.Settings.Count} settings, each read {plan.Trials} times.", "Ask for more with --settings or --trials, or name the setting with --setting NAME.");
        var read = plan.Rows.Where(r => r.Setting == setting).ToList();
        var json = entry.Json();
        (json["unit"], json["study"], json["setting"], json["trial"], json["locked"]) = (unit, name, setting, read.Count(r => r.Person == person) + 1, json["locked"]?.DeepClone() ?? true);
        if (person.Length > 0) json["by"] = person;
        if (call.Parsed.GetValue(CommonOptions.At) is not null) json["at"] = EntryTime.Write(call.Now);
        var answer = AddCommand.Put(open, json, out var taken);
        if (call.Json) return answer;
        call.Screen.Line($"Taken: {EntryWords.Short(taken, call.Style)}.");
        double left = taken[GaugeEntry.LeftMm]!.Value, right = taken[GaugeEntry.RightMm]!.Value;
        if (read.Count > 0 && Math.Max(Math.Abs(left - Median(read.Select(r => r.LeftMm))), Math.Abs(right - Median(read.Select(r => r.RightMm)))) is > FarOffMm and var off)
        {
            foreach (var line in Wrap.Text($"That is up to {new HeightFigures(call.Style).Whole(off)} from the other readings of this setting. If it was mistyped: closemown undo. If the screws were turned, it is a new setting: undo, and enter it with --setting NAME.", call.Screen.Width)) call.Screen.Line(line);
        }
        return answer;
    }

    /// <summary>Table, meaning and next reading; the next reading alone between readings, so that earlier numbers do not sway it.</summary>
    private static void Tell(Call call, OpenBook open, string unit, StudyPlan plan, bool nextAlone)
    {
        var screen = call.Screen;
        var text = new StudyText(plan, SmallestMoveMm(open, unit), call.Style);
        if (!nextAlone || plan.Next() is null)
        {
            foreach (var line in text.Table()) screen.Line(line);
            foreach (var sentence in text.Meaning().Prepend("")) foreach (var line in Wrap.Text(sentence, screen.Width)) screen.Line(line);
            screen.Line();
        }
        foreach (var line in text.Next().SelectMany(s => Wrap.Beside("Next", s, screen.Width, 6))) screen.Line(line);
    }

    private static int List(Call call)
    {
        using var open = call.Read();
        var unit = call.UnitOf(open.Talk);
        var studies = open.Desk.Standing.Where(e => e.Unit == unit && e.Is(GaugeEntry.Kind) && e[GaugeEntry.Study] is not null).GroupBy(e => e[GaugeEntry.Study]!).Select(g => (Name: g.Key, Readings: g.Count())).ToList();
        if (call.Json) call.Answer(new JsonObject { ["ok"] = true, ["studies"] = new JsonArray([.. studies.Select(s => (JsonNode)new JsonObject { ["name"] = s.Name, ["readings"] = s.Readings })]) });
        else if (studies.Count == 0) call.Screen.Line("The book has no gauge study yet. Begin one: closemown study gauge spring");
        else foreach (var (name, readings) in studies) call.Screen.Line($"{name}  {readings.ToString(CultureInfo.InvariantCulture)} reading{(readings == 1 ? "" : "s")}");
        return ExitCodes.Done;
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static IReadOnlyList<StudyRow> Rows(OpenBook open, string unit, string name) => StudyRow.Of(open.Desk.Standing.Where(e => e.Unit == unit), name);

    private static double SmallestMoveMm(OpenBook open, string unit)
    {
        var belief = open.Desk.Height(unit);
        return HeightDefaults.SmallestTurn * (belief.ScrewMmPerTurn(0).Mean + belief.ScrewMmPerTurn(1).Mean) / 2;
    }

    private static int Number(Call call, Option<string> option, int usual, int low, int high)
    {
        if (call.Parsed.GetValue(option) is not { } text) return usual;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= low && n <= high ? n
            : throw CliFault.Refused($"{option.Name}: \"{Spelling.Clip(text)}\" is not a whole number from {low} to {high}.", $"Write {option.Name} {usual}, or leave it out.");
    }
}
