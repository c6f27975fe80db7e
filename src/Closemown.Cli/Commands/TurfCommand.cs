using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;

namespace Closemown.Cli;

/// <summary>What the turf stands at, how it grows, and what it needs.</summary>
internal sealed class TurfCommand : CliCommand
{
    private const int Back = 28, Ahead = 14;
    private static readonly Option<string> Day = new("--date") { Description = "another day than today: 2026-05-03", HelpName = "DATE" };
    private static readonly Option<bool> Why = new("--why") { Description = "the rules behind it, with their sources" };

    public TurfCommand() : base("turf", "what the turf stands at, how fast it grows, stress, water, coming frost, and what a mowing would take")
    {
        Examples = [("closemown turf", "drawing and sentences"), ("closemown turf --area green --why", "with rules and sources"), ("closemown turf --json", "for a program")];
        foreach (var option in (Option[])[CommonOptions.Area, Day, Why, CommonOptions.At, CommonOptions.Draw]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var area = TurfAreas.Of(call, open.Desk);
        var answer = open.Ask(new JsonObject { ["ask"] = "turf", ["area"] = area, ["date"] = call.Parsed.GetValue(Day) });
        if (call.Json)
        {
            call.Answer(answer);
            return ExitCodes.Done;
        }
        var (screen, words) = (call.Screen, new Phrasing(call.Style));
        var at = TurfAreas.At(call, open, area, Day);
        var plan = AreaPlan.Of(open.Desk, area, at, Ahead, open.Talk.AskedAt);
        if (screen.OutIsTerminal || call.Parsed.GetValue(CommonOptions.Draw))
        {
            foreach (var line in new CanopyDrawing(screen, call.Style).Lines(CanopySeries.Of(open.Desk, plan, Back, Ahead), plan.WishMm)) screen.Line(line);
            screen.Line();
        }
        void Say(IEnumerable<string> sentences)
        {
            foreach (var line in sentences.SelectMany(s => Wrap.Text(words.Say(s), screen.Width))) screen.Line(line);
        }
        Say(TurfSpeech.Of(plan.Today));
        Say(PlanSpeech.Coming(plan));
        Say(CareSpeech.Of(plan.Today));
        Say(LookCauses.Of(plan.Today).Select(c => $"{char.ToUpperInvariant(c.Seen[0])}{c.Seen[1..]}: likely {c.Likely}: {c.Why}."));
        Say(TurfSpeech.Unusual(plan.Today));
        if (call.Parsed.GetValue(Why)) Say(TurfSpeech.Rules(plan.Today).Select(r => $"{r.Text} [{r.Source}]"));
        return ExitCodes.Done;
    }
}
