using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>The next step in setting the height as a book calls for it.</summary>
public static class HeightPlanner
{
    private const int MostEntries = 8;
    private static readonly HashSet<string> Setting = ["gauge", "screw", "locked"];

    /// <summary>Whether the screws reach what is wanted, as far as the unit's range was told: what is wrong where they do not.</summary>
    public static EntryFault? OutOfReach(Desk desk, AimQuestion question)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(question);
        var belief = desk.Height(question.Unit, question.Now);
        if (belief.Track.Unit.RangeMm is not { } range) return null;
        var wanted = question.Aim(belief).Bench.LeftMm;
        if (wanted >= range.Low && wanted <= range.High) return null;
        var asked = question.BenchMm is not null ? "" : $" (for a cut of {N(question.CutMm!.Value)})";
        return new(FaultCodes.Conflict, question.BenchMm is not null ? "aim.benchMm" : "aim.cutMm",
            $"The screws of {question.Unit} reach {N(range.Low)} to {N(range.High)} mm on the bench, but {N(wanted)}{asked} is wanted.",
            "Ask for a height within their reach, change the rollers, or describe the unit again with its benchRangeMm.");
    }

    /// <summary>The next step, with its id.</summary>
    public static StepAdvice Next(Desk desk, AimQuestion question)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(question);
        var belief = desk.Height(question.Unit, question.Now);
        var aim = question.Aim(belief);
        var step = HeightPlan.Next(belief, aim);
        var latest = Latest(desk, question.Unit).ToList();
        var declined = Declined(desk, latest).Contains(Name(step.Do));
        var advice = declined ? Leave(step, belief, question, aim) : Of(step, belief, question, aim);
        if (FirstMowing.Of(desk, question) is { } first) advice = advice with { Step = First(advice.Step, first.Say(belief), advice.Step.Do != "lock"), Rules = [TurfRules.Third, .. advice.Rules] };
        var memory = desk.Track(question.Unit).Memory;
        var sitting = new SittingNow(memory, question.Now);
        return advice with
        {
            Step = advice.Step with { Cautions = HeightCautions.For(advice.Step.Do, memory, sitting) },
            Id = AdviceId.Of(question, advice.Step, desk.State),
            Entries = [.. latest.Where(e => Setting.Contains(e.Kind.Name)).TakeLast(MostEntries).Select(e => e.Id)],
        };
    }

    private static StepAdvice Of(HeightAdvice h, HeightBelief belief, AimQuestion question, HeightAim aim)
    {
        var flats = belief.Track.Unit.ScrewFlats;
        // Said, shown and answered alike, to a thousandth of a turn.
        var turns = new ScrewTurns(Math.Round(h.Turns.Left, 3), Math.Round(h.Turns.Right, 3));
        var then = h.Then.Select((what, i) => new AdviceStep(Name(what))
        {
            Say = what == HeightDo.Screw ? "Then up to the height; how far is said when the first turn is in the book." : HeightSpeech.Do(what, default, false, flats),
            TakesMinutes = what == HeightDo.Gauge ? 1 : 0.5,
        });
        var step = new AdviceStep(Name(h.Do))
        {
            LeftTurns = h.Do == HeightDo.Screw ? turns.Left : null,
            RightTurns = h.Do == HeightDo.Screw ? turns.Right : null,
            Say = HeightSpeech.Do(h.Do, turns, h.Why == HeightWhy.DownToComeUp, flats, belief.Track.Loose),
            TakesMinutes = h.TakesMinutes,
            ExpectHeight = new(h.Left, h.Right, h.WithinAfter),
            Within = h.Within,
            Why = [HeightSpeech.Why(h.Why, aim, h.Within, belief.Track.ReadSinceTurn), .. HeightSpeech.Known(belief, question, aim), .. h.Do == HeightDo.Done && belief.Track.Readings > 0 ? (string[])[HeightSpeech.FeelNext] : []],
            Then = [.. then],
        };
        if (NutSpeech.Shift(belief, h) is { } shift) step = step with { Why = [step.Why[0], shift, .. step.Why.Skip(1)] };
        foreach (var lags in belief.Track.Lagging)
        {
            step = First(step, LaggingSide.Say(lags, belief.Track.Unit), false);
            if (h.Do is HeightDo.Screw or HeightDo.Gauge) step = step with { Say = $"{LaggingSide.First(lags)} {step.Say}" };
        }
        return new StepAdvice(step)
        {
            Rules = [.. belief.Track.Lagging.Count > 0 ? (Rule[])[HeightRules.Follows] : [], .. HeightSpeech.Rules(h.Why), .. h.Do == HeightDo.Done ? (Rule[])[HeightRules.Nip] : []],
            Alternatives = h.Do is HeightDo.Gauge or HeightDo.Screw && h.Within > 0
                ? [new Alternative(new AdviceStep("mow"), $"leave it as it stands: that both sides are within {HeightSpeech.Mm(aim.TolMm)} is {StepSpeech.Chance(h.Within)}", null, null)]
                : [],
        };
    }

    /// <summary>The step with something said before all else.</summary>
    private static AdviceStep First(AdviceStep step, string said, bool aloud) => step with { Why = [said, .. step.Why], Say = aloud ? $"{said} {step.Say}" : step.Say };

    /// <summary>A step that was declined since anything was last read or turned is not asked for again: it is left as it stands.</summary>
    private static StepAdvice Leave(HeightAdvice h, HeightBelief belief, AimQuestion question, HeightAim aim)
    {
        var within = h.Within;
        return new StepAdvice(new AdviceStep("mow")
        {
            Say = "Leave the height as it stands.",
            ExpectHeight = new(belief.BenchMm(0), belief.BenchMm(1), within),
            Within = within,
            Why = [$"The step before was declined. That both sides are within {HeightSpeech.Mm(aim.TolMm)} as it stands is {StepSpeech.Chance(within)}.", .. HeightSpeech.Known(belief, question, aim)],
        })
        {
            Rules = [HeightRules.Nip],
        };
    }

    /// <summary>Entries of the unit since it was last mown with.</summary>
    private static IEnumerable<Entry> Latest(Desk desk, string unit) =>
        desk.Standing.Reverse().Where(e => e.Unit == unit || e.Is(DeclineEntry.Kind)).TakeWhile(e => !e.Is(MowEntry.Kind)).Reverse();

    /// <summary>What was declined since the last reading or turn.</summary>
    private static HashSet<string> Declined(Desk desk, List<Entry> latest)
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        for (var i = latest.Count - 1; i >= 0 && !Setting.Contains(latest[i].Kind.Name); i--)
        {
            if (latest[i][DeclineEntry.Advice] is not { } id || AdviceId.Read(id) is not { Setting: { } asked } name) continue;
            if (name.Step is { } step) found.Add(step.Do);
            else if (EarlierBook.Of(desk, name) is { } then) found.Add(Next(then, asked).Step.Do);
        }
        return found;
    }

    private static string Name(HeightDo what) => what switch { HeightDo.Gauge => "gauge", HeightDo.Screw => "screw", HeightDo.Lock => "lock", _ => "mow" };

    private static string N(double x) => x.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}
