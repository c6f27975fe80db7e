using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>A rule of the trade that decides alone: where its case is met, its step is the next one.</summary>
/// <param name="Rule">What it says.</param>
/// <param name="Step">The step; null where its case is not met, or the step was declined.</param>
/// <param name="Because">The entry that it rests on; null for none.</param>
internal sealed record TradeRule(Rule Rule, Func<BenchCase, AdviceStep?> Step, Func<BenchCase, Entry?> Because);

/// <summary>The rules of the trade that decide alone, in the order in which they are tried, before any expected loss is looked at.</summary>
/// <remarks>
/// All common practice, no source. What they leave undecided is ranked; three more narrow what the ranking may choose (<see cref="Narrowed"/>), and one
/// stands between it and the mowing (the strip comes last).
/// </remarks>
internal static class TradeRules
{
    private const int UsualBlades = 10;

    public static IReadOnlyList<TradeRule> All { get; } =
    [
        new(Rules.Fit, c => c.Memory.BadFit is { } bad && !(c.WasDeclined("knife-screws") && !FitRepairs.TakesApart(bad)) ? FitRepairs.Of(c, bad) : null, c => c.Memory.BadFit),
        new(Rules.Strike, c => c.Signs.StrikeOpen is not null ? LookOver(c, "It hit something, and nobody has looked since: a bent blade or a loose screw would make every other check worthless.") : null, c => c.Signs.StrikeOpen),
        new(Rules.TwoPeople, BothHands, c => c.Signs.Opposite?.Second),
        new(Rules.HotWaits, Cool, c => c.Signs.Hot),
        new(Rules.Feel, c => c.Signs.BackedOff && !c.Memory.Heavy ? c.Ask("contact", BenchCase.Ends, "A heavy touch was backed off: feel both ends before anything else.") : null, c => c.Memory.Last),
        new(Rules.NotFollowing, c => c.Signs.NotFollowing is { } lost && !c.Memory.Heavy ? Follows(c, lost) : null, c => c.Memory.Last),
        new(Rules.NotFollowing, c => c.Memory.AdjusterFails ? AdjusterFails(c) : null, c => c.Memory.Last),
        new(Rules.FitAsked, c => !c.Memory.Heavy && c.Memory.FitWanted is "rebuild" or "adjuster" or "tightened" ? LookOver(c, WhyLook(c)) : null, c => c.Memory.Upset),
        new(Rules.LookOver, c => !c.Memory.Heavy && c.Memory.FitWanted == "new" ? LookOver(c, "Nothing is in the book yet about its bearings, screws and blades: while one knocks, is loose or bent, no check means anything.") : null, _ => null),
        new(Rules.SmallRepair, c => c.Memory.Fit is { } fit && c.Memory.BadFit is null && !c.Memory.Heavy ? FitRepairs.Small(c, fit) : null, c => c.Memory.Fit),
        new(Rules.Odd, OddReading.Again, c => c.Memory.Unusual?.Entry),
        new(Rules.Sound, c => c.Memory.OddSound is { } sound && !c.Memory.Heavy && !c.WasDeclined("contact")
            ? c.Ask("contact", BenchCase.Ends, $"A sound that was not there before ({sound[SwathEntry.Sound]}) came from the mower: feel both ends before it mows again.") : null, c => c.Memory.OddSound),
        new(Rules.TightestBlade, BladeByBlade, c => c.Memory.Last),
        new(Rules.Hollow, c => c.Memory.Heavy ? null : HollowMiddle.Step(c), c => c.Signs.HollowLast),
        new(Rules.ThickStrip, ThinnerStrip, c => c.Signs.StripTold),
        new(Rules.LapInVain, c => c.Memory.LapsInVain >= AdviceSettings.LapRounds && !c.Memory.PaperSinceLap && !c.Memory.Heavy && c.Sitting.Open && c.OwnsStrip && !c.WasDeclined("paper-cut")
            ? c.Ask("paper-cut", BenchCase.All, "Three rounds were lapped: does the strip cut better now?") : null, _ => null),
    ];

    /// <summary>The rule that narrows what the ranking may choose now, and what it leaves; null where nothing is narrowed.</summary>
    public static Narrowed? Narrow(BenchCase c)
    {
        if (c.Memory.Heavy) return Narrowed.HeavyOut(c);
        if (Narrowed.Far(c)) return Narrowed.InFromFar;
        return Narrowed.Cuts(c) ? Narrowed.CutsSoMow(c) : null;
    }

    private static AdviceStep? LookOver(BenchCase c, string why) =>
        c.WasDeclined("fit") ? null : c.Step("fit", StepSpeech.Check("fit", []), c.Settings.FitMinutes, why);

    private static string WhyLook(BenchCase c) => c.Memory.FitWanted switch
    {
        "rebuild" => "It was just put back together: often tight at some place although it was right before.",
        "tightened" => "The screws of the {bedknife} were loose and were tightened: look again before any check is believed.",
        _ => $"An end was turned {c.Memory.TurnedFar:0} steps the same way and the readings have not followed: does the adjuster move it at all?",
    };

    private static AdviceStep? AdjusterFails(BenchCase c) => c.WasDeclined("repair") ? null : c.Step("repair", "Take the adjusters apart and look: they turn, but nothing follows.", 60,
        $"An end was turned {c.Memory.TurnedFar:0} steps the same way on balance, and the readings have not followed.");

    private static AdviceStep? Follows(BenchCase c, (int Side, double Steps) lost)
    {
        var side = lost.Side == 0 ? "left" : "right";
        return c.WasDeclined("fit") ? null : c.Step("fit", $"Look at the {side} adjuster: lock nut, thread, spring and housing. Then look the {{reel}} over as usual.", c.Settings.FitMinutes,
            $"The {side} end does not follow: {Phrasing.Number(lost.Steps, "0.#")} steps in, and the strip reads there as before, while the other end changed.");
    }

    private static AdviceStep? BothHands(BenchCase c)
    {
        if (c.Signs.Opposite is not { } two || !c.Sitting.Open) return null;
        var kind = c.OwnsStrip ? PaperCutEntry.Name : two.First.Kind.Name;
        if (c.WasDeclined(kind)) return null;
        var (first, second) = (two.First[StationFields.Words[two.Station]], two.Second[StationFields.Words[two.Station]]);
        return c.Ask(kind, [two.Station], $"Two people read opposite things {StepSpeech.Place(two.Station)} within minutes, {first} and {second}, with nothing changed between.") with
        {
            Say = kind == "paper-cut" ? $"One strip, both of you: hold the same strip together {StepSpeech.Place(two.Station)}, turn the {{reel}} forward slowly, and agree on whether it cuts, nicks or folds."
                : $"Do it once more together {StepSpeech.Place(two.Station)}, both hands on the {{reel}}, and agree on what it is.",
        };
    }

    private static AdviceStep? BladeByBlade(BenchCase c)
    {
        var blades = c.Signs.Blades;
        var most = c.Track.Unit.Blades ?? UsualBlades;
        int[] at = [.. BenchCase.All.Where(s => blades.TightestWanted(s) && blades.Felt(s).Count < most)];
        if (at.Length == 0 || c.Memory.Heavy || !c.Sitting.Open || c.WasDeclined("contact")) return null;
        var number = Enumerable.Range(1, most + 1).Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture)).First(n => at.Any(s => !blades.Felt(s).Contains(n)));
        return c.Ask("contact", at, "A touch once a turn is a fact of the {reel}: one blade stands out. No adjuster is turned before it is known which; then it is set by the tightest.") with
        {
            Blade = number,
            Say = number == "1" ? $"Feel {StepSpeech.At(at)} blade by blade. Mark one blade, call it 1, count on from it against the turning: does blade 1 touch?"
                : $"Feel blade {number} {StepSpeech.At(at)}, counted from the marked one: nothing, a light touch or heavy?",
        };
    }

    private static AdviceStep? Cool(BenchCase c)
    {
        if (c.Signs.Hot is not { } hot || !c.Sitting.Open) return null;
        var left = NipSigns.CoolingMinutes - (c.Question.Now - hot.At).TotalMinutes;
        if (left > 0.5)
        {
            if (c.WasDeclined("wait")) return null;
            return c.Step("wait", $"Wait about {Phrasing.Number(Math.Ceiling(left / 5) * 5, "0")} minutes: the {{reel}} is warm, and a warm {{reel}} is larger. Then feel again.", left,
                "A reading of a warm {reel} turns no adjuster.") with
            {
                LapMinutes = Math.Round(left),
            };
        }
        return c.WasDeclined("contact") ? null : c.Ask("contact", BenchCase.Ends, "It has cooled since it was last felt.");
    }

    private static AdviceStep? ThinnerStrip(BenchCase c)
    {
        const double thickUm = 120, thinUm = 80;
        if (c.Track.Strip.Um <= thickUm || c.Signs.StripTold is null || c.WasDeclined("strip")) return null;
        return c.Step("strip", $"Find a thinner strip, of about {StepSpeech.Um(thinUm)}: thin office or news paper.", 2,
            $"A strip of {StepSpeech.Um(c.Track.Strip.Um)} tells little where a leaf should be cut.");
    }
}
