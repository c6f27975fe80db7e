using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;

namespace Closemown.Cli;

/// <summary>What is known of the steel.</summary>
internal sealed class SteelCommand : CliCommand
{
    private const int Steps = 8;

    public SteelCommand() : base("steel", "the gap along the width, the bluntness, and what this mower has taught: drawn and in numbers")
    {
        Examples = [("closemown steel", "drawing, numbers and the last entries"), ("closemown steel --gap thou", "in thousandths of an inch"), ("closemown steel --json", "for a program")];
        foreach (var option in (Option[])[CommonOptions.Unit, CommonOptions.Draw]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var unit = call.UnitOf(open.Talk);
        if (call.Json)
        {
            call.Answer(open.Ask(new JsonObject { ["ask"] = "steel", ["unit"] = unit }));
            return ExitCodes.Done;
        }
        Tell(call, open, unit, call.Screen.OutIsTerminal || call.Parsed.GetValue(CommonOptions.Draw));
        call.Screen.Line();
        call.Screen.Line(call.Screen.Ink(Tone.Strong, "The last entries"));
        foreach (var line in SteelText.History(open.Desk.Standing, unit, Steps, call.Style, call.Screen.Width)) call.Screen.Line(line);
        return ExitCodes.Done;
    }

    /// <summary>Drawing, table and what is unusual.</summary>
    public static void Tell(Call call, OpenBook open, string unit, bool draw)
    {
        var belief = open.Desk.Belief(unit);
        var screen = call.Screen;
        if (draw)
        {
            foreach (var line in new NipDrawing(screen, call.Style).Lines(belief, open.Desk.Standing)) screen.Line(line);
            screen.Line();
        }
        foreach (var line in SteelText.Table(belief, call.Style, screen.Width)) screen.Line(line);
        if (SteelAnswer.ClickRemark(belief) is { } remark)
        {
            foreach (var line in Wrap.Text(remark, screen.Width)) screen.Line(line);
        }
        var unusual = SteelText.Unusual(belief, call.Style, screen.Width).ToList();
        if (unusual.Count == 0)
        {
            screen.Line();
            screen.Line("Nothing unusual: no reading that is not like this mower.");
            return;
        }
        screen.Line();
        screen.Line(screen.Ink(Tone.Strong, "Unusual"));
        foreach (var line in unusual) screen.Line(line);
    }
}
