using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Pipe;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>The one thing to do now over all units, in short.</summary>
internal sealed class TodayCommand : CliCommand
{
    public TodayCommand() : base("today", "the one thing to do now, what comes next, what is unusual: units and turf in short")
    {
        Examples = [("closemown today", "in short"), ("closemown today --json", "for a program")];
        Options.Add(CommonOptions.At);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        if (call.Json)
        {
            call.Screen.Line(Conversation.Text(open.Ask(new JsonObject { ["ask"] = "today" })));
            return ExitCodes.Done;
        }
        var units = open.Desk.Units;
        var turf = TurfToday.All(open.Desk, open.Talk.AskedAt).ToList();
        if (units.Count == 0 && turf.Count == 0) throw CliFault.Refused("The book names no mower yet.", "Start with closemown new --unit mower --blades 10.");
        var now = open.Talk.AskedAt;
        foreach (var (unit, advice) in units.Select(u => (u, Planner.Next(open.Desk, new NextQuestion(u, now, PriceOfMinute: call.Preferences.PriceOfMinute), call.Worth))).OrderBy(p => p.Item2.Step.Do == "mow" ? 1 : 0))
            Tell(call, open, unit, advice, units.Count > 1);
        foreach (var plan in turf) TellTurf(call, plan);
        return ExitCodes.Done;
    }

    /// <summary>An area in short: what it stands at, whether to mow, what is unusual.</summary>
    private static void TellTurf(Call call, AreaPlan plan)
    {
        var (screen, words) = (call.Screen, new Phrasing(call.Style));
        screen.Line();
        screen.Line(screen.Ink(Tone.Strong, plan.Today.AreaName));
        var mow = plan.Plan.Days[0].Mow ? PlanSpeech.StandOnIt.Append(PlanSpeech.Why(plan.Plan.Days[0])) : [];
        foreach (var line in PlanSpeech.Summary(plan).Concat(mow).Concat(TurfSpeech.Of(plan.Today)).Concat(TurfSpeech.Unusual(plan.Today)).SelectMany(s => Wrap.Text(words.Say(s), screen.Width))) screen.Line(line);
    }

    private static void Tell(Call call, OpenBook open, string unit, StepAdvice advice, bool several)
    {
        var (screen, style) = (call.Screen, call.Style);
        var words = open.Words(unit, style);
        var step = new StepText(screen, words, style);
        if (several) screen.Line(screen.Ink(Tone.Strong, unit));
        foreach (var line in step.Now(advice.Step)) screen.Line(line);
        foreach (var line in step.Sure(advice.Step).Take(1).Concat(advice.Step.Cautions.Select(words.Say)).SelectMany(s => Wrap.Text(s, screen.Width))) screen.Line(line);
        var belief = open.Desk.Belief(unit);
        var gaps = Enumerable.Range(0, 3).Select(s => $"{Words.For(style, s switch { 0 => WordKey.Left, 1 => WordKey.Centre, _ => WordKey.Right })} {LengthPrinting.Gap(belief.ClearanceUm(s).Mean, style)} (give or take {LengthPrinting.Gap(belief.ClearanceUm(s).Sd, style)})");
        foreach (var line in Wrap.Text($"The {Words.For(style, WordKey.Clearance)}: {string.Join(", ", gaps)}.", screen.Width)) screen.Line(line);
        if (open.Desk.HeightTrack(unit).Readings > 0)
        {
            var (height, figures) = (open.Desk.Height(unit), new HeightFigures(style));
            var cut = height.CutMm();
            foreach (var line in Wrap.Text($"The height: bench {Words.For(style, WordKey.Left)} {figures.Number(height.BenchMm(0).Mean)}, {Words.For(style, WordKey.Right)} {figures.Whole(height.BenchMm(1).Mean)}; it cuts {figures.Whole(cut.Mean)}, 90 times in 100 {figures.Range(cut)}.", screen.Width)) screen.Line(line);
        }
        foreach (var line in SteelText.Unusual(belief, style, screen.Width)) screen.Line(line);
        if (several) screen.Line();
    }
}
