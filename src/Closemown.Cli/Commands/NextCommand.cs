using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>The next step at the bench.</summary>
internal sealed class NextCommand : CliCommand
{
    private static readonly Option<bool> Ahead = new("--ahead") { Description = "also what is expected to come after it" };
    private static readonly Option<bool> AtBench = new("--at-bench") { Description = "the unit is on the bench already: opening it up costs nothing" };

    public static Option<string> Price { get; } = new("--price") { Description = "what a minute of yours is worth this once, 1 is usual: more saves minutes, less saves the cut", HelpName = "P" };

    public NextCommand() : base("next", "the one next step at the bench, how sure that is, and why")
    {
        Examples = [("closemown next", "what to do now"), ("closemown next --at-bench --ahead", "the unit is on the bench: the whole sequence"), ("closemown next --json", "the same for a program")];
        foreach (var option in (Option[])[CommonOptions.Unit, Ahead, AtBench, Price, CommonOptions.At]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var unit = call.UnitOf(open.Talk);
        if (call.Json)
        {
            var question = new JsonObject { ["ask"] = "next", ["unit"] = unit, ["ahead"] = call.Parsed.GetValue(Ahead), ["atBench"] = call.Parsed.GetValue(AtBench) };
            call.Screen.Line(Conversation.Text(open.Ask(question)));
            return ExitCodes.Done;
        }
        var asked = new NextQuestion(unit, open.Talk.AskedAt, call.Parsed.GetValue(AtBench), call.Preferences.PriceOfMinute);
        var sequence = call.Parsed.GetValue(Ahead) ? Planner.Ahead(open.Desk, asked, call.Worth) : [Planner.Next(open.Desk, asked, call.Worth)];
        var words = open.Words(unit, call.Style);
        var text = new StepText(call.Screen, words, call.Style);
        foreach (var line in text.Lines(sequence[0]).Concat(text.ToType(sequence[0]))) call.Screen.Line(line);
        if (sequence.Count > 1)
        {
            call.Screen.Line();
            call.Screen.Line(call.Screen.Ink(Tone.Strong, "Expected after that, if each check shows what is likeliest"));
            foreach (var (step, i) in sequence.Skip(1).Select((s, i) => (s.Step, i)))
                foreach (var line in Wrap.Beside($"  {i + 1}.", words.Say(step.Say), call.Screen.Width, 6)) call.Screen.Line(line);
        }
        return ExitCodes.Done;
    }
}
