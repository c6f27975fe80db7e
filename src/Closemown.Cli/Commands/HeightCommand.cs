using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Height;

namespace Closemown.Cli;

/// <summary>What is known of the height: on the bench, and cut.</summary>
internal sealed class HeightCommand : CliCommand
{
    private static readonly Option<bool> Wet = new("--wet") { Description = "for wet turf: it sinks more" };

    public static Option<string> Bench { get; } = new("--bench") { Description = "a bench height, as your gauge reads it: 6mm, 0.236in", HelpName = "LENGTH" };

    public static Option<string> Cut { get; } = new("--cut") { Description = "the height the turf shall be cut at: 4mm, 5/32in", HelpName = "LENGTH" };

    public HeightCommand() : base("height", "the height on the bench and the height really cut: drawn, in numbers, and what to set for a wished cut")
    {
        Examples =
        [
            ("closemown height", "drawing, numbers, and what the cut rests on"),
            ("closemown height --cut 4mm --area green", "what to set for a cut of 4 mm, and what to expect"),
            ("closemown height --bench 5mm --wet", "what would be cut with the gauge at 5 mm on wet turf"),
            ("closemown height --json", "for a program"),
        ];
        foreach (var option in (Option[])[CommonOptions.Unit, CommonOptions.Area, Cut, Bench, Wet, CommonOptions.Draw]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        double? cut = LengthTyped.Mm(call, Cut), bench = LengthTyped.Mm(call, Bench);
        var (area, wet) = (call.Parsed.GetValue(CommonOptions.Area), call.Parsed.GetValue(Wet));
        using var open = call.Read();
        var unit = call.UnitOf(open.Talk);
        var question = new JsonObject { ["ask"] = "height", ["unit"] = unit, ["area"] = area, ["cutMm"] = cut, ["benchMm"] = bench, ["wet"] = wet };
        var answer = open.Ask(question);                   // also where it is told in words: it says what is wrong with the question
        if (call.Json)
        {
            call.Answer(answer);
            return ExitCodes.Done;
        }
        AreaTyped.Check(open.Desk, area);
        Tell(call, open, unit, area, bench, cut, wet, call.Screen.OutIsTerminal || call.Parsed.GetValue(CommonOptions.Draw));
        return ExitCodes.Done;
    }

    /// <summary>Drawing, table, and sentences.</summary>
    public static void Tell(Call call, OpenBook open, string unit, string? area, double? benchMm, double? cutMm, bool wet, bool draw)
    {
        var (belief, screen, style) = (open.Desk.Height(unit, open.Talk.AskedAt), call.Screen, call.Style);
        var text = new HeightText(belief, area, wet, style, screen.Width);
        void Say(IEnumerable<string> sentences)
        {
            foreach (var line in sentences.SelectMany(s => Wrap.Text(s, screen.Width))) screen.Line(line);
        }
        if (cutMm is { } cut)
        {
            Say(text.Wished(cut, open.Words(unit, style)));
            screen.Line();
        }
        if (draw && belief.Track.Readings > 0)
        {
            foreach (var line in new HeightSideDrawing(screen, style).Lines(belief, area, wet)) screen.Line(line);
            screen.Line();
            foreach (var line in new HeightFrontDrawing(screen, style).Lines(belief, cutMm is { } c ? belief.SetBenchMm(c, area, wet).Mean : benchMm, HeightAim.DefaultTolMm)) screen.Line(line);
            screen.Line();
        }
        foreach (var line in text.Table()) screen.Line(line);
        screen.Line();
        Say(text.Cut(benchMm));
        Say(HeightSpeech.NotFollowing(belief.Track).Select(open.Words(unit, style).Say));
        if (belief.Track.Loose) Say(["The nuts are loose since the last turn: tighten them and read again (closemown add locked, then closemown add gauge LEFT RIGHT)."]);
    }
}
