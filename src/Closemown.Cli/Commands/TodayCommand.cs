using System.Text.Json.Nodes;
using Closemown.Advice;

namespace Closemown.Cli;

/// <summary>The one thing to do now over units and turf, what comes next, what is unusual: on one screen.</summary>
internal sealed class TodayCommand : CliCommand
{
    public TodayCommand() : base("today", "the one thing to do now, what comes next, what is unusual: units and turf in short")
    {
        Examples = [("closemown today", "on one screen"), ("closemown today --json", "for a program")];
        Options.Add(CommonOptions.At);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        if (call.Json)
        {
            call.Answer(open.Ask(new JsonObject { ["ask"] = "today" }));
            return ExitCodes.Done;
        }
        var today = TodayAnswer.Of(open.Desk, call.Worth, open.Talk.AskedAt);
        if (today.Tasks.Count == 0) throw CliFault.Refused("The book names no mower yet.", "Start with closemown new --unit mower --blades 10.");
        foreach (var line in new TodayText(call, open).Lines(today)) call.Screen.Line(line);
        return ExitCodes.Done;
    }
}
