using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;

namespace Closemown.Cli;

/// <summary>The reasons behind an advice.</summary>
internal sealed class WhyCommand : CliCommand
{
    private static readonly Argument<string?> Id = new("id") { Description = "the advice, as next shows it; left out: what next says now", Arity = ArgumentArity.ZeroOrOne };

    public WhyCommand() : base("why", "the reasons behind an advice: entries, rules with their source, what else could be done")
    {
        Examples = [("closemown why", "the reasons for what next says now"), ("closemown why next-12-…", "for an advice given earlier, on the book as it was then")];
        Arguments.Add(Id);
        foreach (var option in (Option[])[CommonOptions.Unit, CommonOptions.At]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var id = call.Parsed.GetValue(Id);
        var advice = id is null
            ? Planner.Next(open.Desk, new NextQuestion(call.UnitOf(open.Talk), open.Talk.AskedAt, PriceOfMinute: call.Preferences.PriceOfMinute), call.Worth)
            : open.Talk.Questions.Recall(id, out _);
        if (call.Json || advice is null)
        {
            call.Answer(open.Ask(new JsonObject { ["ask"] = "why", ["id"] = id ?? advice!.Id }));
            return ExitCodes.Done;
        }
        foreach (var line in new WhyText(call.Screen, open.Words(AdviceId.UnitOf(advice.Id)!, call.Style), call.Style).Lines(advice, open.Desk)) call.Screen.Line(line);
        return ExitCodes.Done;
    }
}
