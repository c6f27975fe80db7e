using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;

namespace Closemown.Cli;

/// <summary>The next step at the bench.</summary>
internal sealed class NextCommand : CliCommand
{
    private static readonly Option<bool> Ahead = new("--ahead") { Description = "also what is expected to come after it" };
    private static readonly Option<bool> AtBench = new("--at-bench") { Description = "the unit is on the bench already: opening it up costs nothing" };

    private static readonly Option<string> Tolerance = new("--tol") { Description = "setting the height: how far off either side may be; 0.05 mm where left out", HelpName = "LENGTH" };
    private static readonly Option<string> Sure = new("--sure") { Description = "setting the height: how sure it must be, in 100; 85 where left out", HelpName = "N" };

    public static Option<string> Price { get; } = new("--price") { Description = "what a minute of yours is worth this once, 1 is usual: more saves minutes, less saves the cut", HelpName = "P" };

    public NextCommand() : base("next", "the one next step at the bench, how sure that is, and why")
    {
        Examples = [("closemown next", "what to do now"), ("closemown next --at-bench --ahead", "the unit is on the bench: the whole sequence"), ("closemown next --bench 6mm", "setting the height: the next reading or turn on the way to 6 mm on the bench"), ("closemown next --cut 4mm --area green", "the same, to the bench height that cuts 4 mm there"), ("closemown next --json", "the same for a program")];
        foreach (var option in (Option[])[CommonOptions.Unit, Ahead, AtBench, Price, HeightCommand.Bench, HeightCommand.Cut, CommonOptions.Area, Tolerance, Sure, CommonOptions.At]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        var aim = Aim(call);
        using var open = call.Read();
        var unit = call.UnitOf(open.Talk);
        if (aim is not null) return SetHeight(call, open, unit, aim);
        if (call.Json)
        {
            var question = new JsonObject { ["ask"] = "next", ["unit"] = unit, ["ahead"] = call.Parsed.GetValue(Ahead), ["atBench"] = call.Parsed.GetValue(AtBench) };
            call.Answer(open.Ask(question));
            return ExitCodes.Done;
        }
        var asked = new NextQuestion(unit, open.Talk.AskedAt, call.Parsed.GetValue(AtBench), call.Preferences.PriceOfMinute);
        var sequence = call.Parsed.GetValue(Ahead) ? Planner.Ahead(open.Desk, asked, call.Worth) : [Planner.Next(open.Desk, asked, call.Worth)];
        var words = open.Words(unit, call.Style);
        var text = new StepText(call.Screen, words, call.Style, Named(open, unit), call.Parsed.GetValue(AtBench));
        foreach (var line in text.Lines(sequence[0])) call.Screen.Line(line);
        if (sequence.Count > 1)
        {
            call.Screen.Line();
            call.Screen.Line(call.Screen.Ink(Tone.Strong, "Expected after that, if each check shows what is likeliest"));
            foreach (var (step, i) in sequence.Skip(1).Select((s, i) => (s.Step, i)))
                foreach (var line in Wrap.Beside($"  {i + 1}.", words.Say(step.Say), call.Screen.Width, 6)) call.Screen.Line(line);
        }
        return ExitCodes.Done;
    }

    private static string? Named(OpenBook open, string unit) => open.Desk.Units.Count > 1 ? unit : null;

    private static JsonObject? Aim(Call call)
    {
        double? bench = LengthTyped.Mm(call, HeightCommand.Bench), cut = LengthTyped.Mm(call, HeightCommand.Cut), tol = LengthTyped.Mm(call, Tolerance);
        var (area, sure) = (call.Parsed.GetValue(CommonOptions.Area), call.Parsed.GetValue(Sure));
        if (bench is null && cut is null)
        {
            if (tol is not null || sure is not null || area is not null) throw CliFault.Usage("--area, --tol and --sure belong to setting a height.", "Add --bench 6mm or --cut 4mm, or leave them out.");
            return null;
        }
        var aim = new JsonObject();
        if (bench is not null) aim["benchMm"] = bench;
        if (cut is not null) aim["cutMm"] = cut;
        if (area is not null) aim["area"] = area;
        if (tol is not null) aim["tolMm"] = tol;
        if (sure is not null)
        {
            if (!Quantities.Number.TryParse(sure.TrimEnd('%'), call.Style, Quantities.NumberUnit.One, out var n, out _)) throw CliFault.Refused($"--sure: \"{sure}\" is no number.", "Write how sure it must be in 100, from 50 to 99: --sure 85.");
            aim["probability"] = n.Value / 100;
        }
        return aim;
    }

    private static int SetHeight(Call call, OpenBook open, string unit, JsonObject aim)
    {
        AreaTyped.Check(open.Desk, (string?)aim["area"]);
        var answer = open.Ask(new JsonObject { ["ask"] = "next", ["unit"] = unit, ["aim"] = aim });
        if (call.Json)
        {
            call.Answer(answer);
            return ExitCodes.Done;
        }
        var advice = open.Talk.Questions.Recall((string)answer["next"]!["advice"]!, out _)!;
        var text = new StepText(call.Screen, open.Words(unit, call.Style), call.Style, Named(open, unit), byId: true);
        foreach (var line in text.Lines(advice)) call.Screen.Line(line);
        return ExitCodes.Done;
    }
}
