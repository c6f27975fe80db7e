using Closemown.Height;

namespace Closemown.Advice;

/// <summary>Steps and reasons of setting the height, as a person would say them; {mm:…} stands for a height in the person's own units.</summary>
public static class HeightSpeech
{
    /// <param name="what">What to do.</param>
    /// <param name="turns">Turns of the screws.</param>
    /// <param name="comesUpNext">Whether a further turn comes up to the height.</param>
    /// <param name="flats">Flats of the nut; null where they were not told.</param>
    /// <param name="loose">Whether the nuts are loose already.</param>
    public static string Do(HeightDo what, ScrewTurns turns, bool comesUpNext, int? flats, bool loose = false) => what switch
    {
        HeightDo.Gauge => "Read the bench height left and right: nuts tight, rollers clean, bar square and hooked on the cutting edge, the same distance in at both ends.",
        HeightDo.Screw => $"{(loose ? NutSpeech.StillSlack : NutSpeech.Slacken)} " + TurnSpeech.Both(turns.Left, turns.Right, flats) + (comesUpNext ? " That is below on purpose: the next turn comes up to it." : ""),
        HeightDo.Lock => NutSpeech.Tighten,
        HeightDo.Done => "The height is set: tight as it stands, leave it.",
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, "not a step"),
    };

    public static string Why(HeightWhy why, HeightAim aim, double within, bool readSinceTurn) => why switch
    {
        HeightWhy.Unread => "Its height is not known: nothing was read yet, or too much has happened since.",
        HeightWhy.OddReading => "The last reading is not like this mower: another one tells whether it was the reading or a side that moved.",
        HeightWhy.SetEarlier => "It was set in an earlier sitting: knocks and mowing may have moved it since, so it is read once before it is believed.",
        HeightWhy.NutsLoose => "The nuts are loose. Tightening shifts the height a little, so only what is read with tight nuts counts.",
        HeightWhy.Off => $"A side is off by more than is uncertain about it: both within {Mm(aim.TolMm)} are wanted.",
        HeightWhy.DownToComeUp => "A screw that changes direction loses some of its turn, and how much is not well known here: down past the height and up again, the loss drops out.",
        HeightWhy.NotSureYet when !readSinceTurn => "It was turned since it was last read: what that came to has to be read.",
        HeightWhy.NotSureYet => $"It may be right already ({StepSpeech.Chance(within)}), but a reading alone is partly luck: one more decides.",
        HeightWhy.Sure => $"Both sides are within {Mm(aim.TolMm)}, as surely as was asked.",
        HeightWhy.AsNearAsCanBe => "Neither a turn nor a few readings more would make it surer: a steadier gauge or a wider tolerance would.",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "not a reason"),
    };

    /// <summary>What is known, in sentences: where it stands, what this unit's screws do, and what a wished cut rests on.</summary>
    public static IEnumerable<string> Known(HeightBelief belief, AimQuestion question, HeightAim aim)
    {
        HeightEstimate left = belief.BenchMm(0), right = belief.BenchMm(1);
        if (question.CutMm is { } cut)
        {
            var sink = belief.SinkMm(question.Area);
            yield return $"For a cut of {Mm(cut)}{(question.Area is { } area ? $" on {Phrasing.AsTyped(area)}" : "")} the gauge should read {Near(aim.Bench.LeftMm)}: it cuts {Near(Math.Abs(sink.Mean))} {(sink.Mean >= 0 ? "below" : "above")} what the gauge reads, give or take {Near(sink.Sd)}.";
        }
        if (Math.Max(left.Sd, right.Sd) < 1) yield return $"It stands at {Near(left.Mean)} left (give or take {Mm(left.Sd)}) and {Near(right.Mean)} right (give or take {Mm(right.Sd)}); {Near(aim.Bench.LeftMm)} is wanted.";
        if (belief.Track.EverTurned)
        {
            var turn = belief.ScrewMmPerTurn(0);
            yield return $"A turn of the left screw is worth about {Mm(turn.Mean)} on its own side here and pulls the right one by {Math.Round(100 * belief.PullShare(1).Mean):0} % of that, so both screws are reckoned together.";
        }
        if (belief.LowestBenchMm(question.Area) is { } lowest && lowest.Mean > Math.Min(aim.Bench.LeftMm, aim.Bench.RightMm))
            yield return $"At that height the {{bedknife}} would rather drag on the turf than clear it: with this lip and this sink it needs about {Near(lowest.Mean)}.";
    }

    /// <summary>Sides that do not follow their screws, in sentences.</summary>
    public static IEnumerable<string> NotFollowing(HeightTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return track.Lagging.Select(l => LaggingSide.Say(l, track.Unit));
    }

    /// <summary>A part of what is not known of the cut, in words.</summary>
    public static string Driver(string what) => what switch { "bench" => "the bench height", "grain" => "the grain of the day", "sink" => "how far it sinks", "season" => "the season", "gauge zero" => "the gauge's zero", "wetness" => "how wet it is", "softness" => "how soft it is", _ => $"the {what}" };

    public static string Mm(double mm) => $"{{mm:{mm.ToString("R", System.Globalization.CultureInfo.InvariantCulture)}}}";

    /// <summary>A height as it is known or can be set: to 0.05 mm.</summary>
    public static string Near(double mm) => $"{{near:{mm.ToString("R", System.Globalization.CultureInfo.InvariantCulture)}}}";

    /// <summary>What turf stands at: to a tenth of a millimetre.</summary>
    public static string Stands(double mm) => $"{{stands:{mm.ToString("R", System.Globalization.CultureInfo.InvariantCulture)}}}";

    /// <summary>After a height setting the gap is less certain.</summary>
    public const string FeelNext = "Hooking a gauge on the {bedknife} and tightening nuts can move the {gap}: feel both ends before it mows (ask for the next step of the steel).";

    public static IEnumerable<Rule> Rules(HeightWhy why) => why switch
    {
        HeightWhy.Sure or HeightWhy.NotSureYet or HeightWhy.AsNearAsCanBe => [HeightRules.Sure],
        HeightWhy.NutsLoose => [HeightRules.Locked],
        HeightWhy.Off => [HeightRules.Together],
        HeightWhy.DownToComeUp => [HeightRules.FromBelow, HeightRules.Together],
        HeightWhy.OddReading => [Advice.Rules.Odd],
        HeightWhy.SetEarlier => [HeightRules.ReadOnce],
        _ => [HeightRules.Locked],
    };
}
