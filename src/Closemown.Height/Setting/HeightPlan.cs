namespace Closemown.Height;

/// <summary>Chooses the next step in setting the height: read, turn, tighten, or leave it.</summary>
/// <remarks>
/// It stops on the probability that both sides are within tolerance, never on the first reading inside it: with a gauge that scatters about as
/// much as the tolerance that reading is largely luck. It turns when a side is off by about as much as it is uncertain and by more than a hand can
/// set, and reads only with the nuts tight and only where the reading can change what is done. (From simulation; no published source.)
/// </remarks>
public static class HeightPlan
{
    /// <summary>A side less certain than this has in effect not been read, mm.</summary>
    private const double UnreadMm = 0.8;

    /// <summary>Loose nuts: a turn goes on only where it is clearly not there yet, in spreads.</summary>
    private const double ClearlyOff = 1.5;

    /// <summary>Off by so many spreads, a side is turned.</summary>
    private const double OffSpreads = 1;

    /// <summary>Off by so many spreads it is turned whatever it gains at once: another reading would not say otherwise.</summary>
    private const double Patient = 3;

    /// <summary>What a turn must add to the probability of being within tolerance to be worth loosening the nuts for.</summary>
    private const double Gain = 0.1;

    /// <summary>Further readings that may together change the decision.</summary>
    private const int ReadingsAhead = 6;

    /// <summary>The next step.</summary>
    /// <param name="belief">What is known.</param>
    /// <param name="aim">What is wanted.</param>
    /// <exception cref="ArgumentOutOfRangeException">A height or tolerance is not positive, or the probability is out of range.</exception>
    public static HeightAdvice Next(HeightBelief belief, HeightAim aim)
    {
        ArgumentNullException.ThrowIfNull(belief);
        ArgumentNullException.ThrowIfNull(aim);
        aim.Check();
        var track = belief.Track;
        HeightEstimate left = belief.BenchMm(0), right = belief.BenchMm(1);
        var within = belief.WithinTolerance(aim.Bench, aim.TolMm);
        var unread = Math.Max(left.Sd, right.Sd) > UnreadMm;
        var offLeft = Off(left, aim.Bench.LeftMm, belief.ScrewMmPerTurn(0).Mean);
        var offRight = Off(right, aim.Bench.RightMm, belief.ScrewMmPerTurn(1).Mean);

        if (track.Loose)
        {
            if (!unread && !track.InDoubt && Math.Max(offLeft, offRight) > ClearlyOff)
            {
                var up = ScrewChoice.Of(belief.Last, track.ScrewSlack, aim, out var round);
                if (!round && up is not { Left: 0, Right: 0 }) return Screw(up, false);
            }
            return Plain(HeightDo.Lock, HeightWhy.NutsLoose);
        }
        if (unread) return Plain(HeightDo.Gauge, HeightWhy.Unread);
        if (track.InDoubt) return Plain(HeightDo.Gauge, HeightWhy.OddReading);
        if (within >= aim.Probability) return Enough(HeightWhy.Sure);
        // Of an earlier sitting, only what is clearly off is turned unread.
        if (Math.Max(offLeft, offRight) > (belief.ReadThisSitting ? OffSpreads : Patient))
        {
            var turns = ScrewChoice.Of(belief.Last, track.ScrewSlack, aim, out var round);
            // A turn for one reading would undo a good setting: another tells first.
            if (turns is not { Left: 0, Right: 0 } && OneOdd()) return Plain(HeightDo.Gauge, HeightWhy.OddReading);
            // A turn too small to gain anything spoils what is known by the hand and the nuts: there a reading tells more.
            if (turns is not { Left: 0, Right: 0 } && (round || Math.Max(offLeft, offRight) > Patient || Screw(turns, false).WithinAfter > within + Gain)) return Screw(turns, round);
        }
        return ReadingMatters() ? Plain(HeightDo.Gauge, belief.Track.ReadSinceTurn && !belief.ReadThisSitting ? HeightWhy.SetEarlier : HeightWhy.NotSureYet) : Enough(HeightWhy.AsNearAsCanBe);

        // Whatever is reckoned of it, a height of an earlier sitting is read once before it is called set (common practice, no source).
        HeightAdvice Enough(HeightWhy why) => belief.ReadThisSitting ? Plain(HeightDo.Done, why) : Plain(HeightDo.Gauge, HeightWhy.SetEarlier);

        // A setting that was called good when it was read before, and a reading that alone says otherwise.
        bool OneOdd() => track.ReadBefore is { } good && BoxProbability.Of(good, aim.Bench, aim.TolMm) >= aim.Probability
            && (Out(0, aim.Bench.LeftMm) || Out(1, aim.Bench.RightMm));

        bool Out(int side, double wanted) => track.ReadingsSinceTurn(side) is { Count: > 0 } reads && Math.Abs(reads[^1] - wanted) > aim.TolMm;

        HeightAdvice Screw(ScrewTurns turns, bool round)
        {
            var landed = ScrewChoice.Landing(belief.Last, track.ScrewSlack, turns);
            return new(HeightDo.Screw, round ? HeightWhy.DownToComeUp : HeightWhy.Off, turns, Minutes(HeightDo.Screw, turns), within, landed.Within(aim), landed.Side(0), landed.Side(1), Drags());
        }

        HeightAdvice Plain(HeightDo what, HeightWhy why)
        {
            if (what != HeightDo.Lock) return new(what, why, default, Minutes(what, default), within, within, left, right, Drags());
            var tight = ScrewChoice.Landing(belief.Last, track.ScrewSlack, default);
            return new(what, why, default, Minutes(what, default), within, tight.Within(aim), tight.Side(0), tight.Side(1), Drags());
        }

        bool? Drags() => belief.LowestBenchMm() is { } lowest ? lowest.Mean > Math.Min(aim.Bench.LeftMm, aim.Bench.RightMm) : null;

        // Whether some number of further readings, falling as well or as badly as two spreads allow, would lead to a stop or to a turn.
        bool ReadingMatters()
        {
            var gauge = belief.GaugeSdMm.Mean;
            for (var k = 1; k <= ReadingsAhead; k++)
            {
                var (l, r) = (Ahead(left, aim.Bench.LeftMm, k, 0), Ahead(right, aim.Bench.RightMm, k, 1));
                if (l.Best * r.Best >= aim.Probability || l.Turns || r.Turns) return true;
            }
            return false;

            (double Best, bool Turns) Ahead(HeightEstimate now, double wanted, int readings, int side)
            {
                var after = 1 / Math.Sqrt((1 / (now.Sd * now.Sd)) + (readings / (gauge * gauge)));
                double moves = 2 * Math.Sqrt(Math.Max(0, (now.Sd * now.Sd) - (after * after))), off = Math.Abs(now.Mean - wanted);
                var near = new HeightEstimate(Math.Max(0, off - moves), after);
                return (near.Below(aim.TolMm) - near.Below(-aim.TolMm),
                    Off(new(off + moves, after), 0, belief.ScrewMmPerTurn(side).Mean) > OffSpreads);
            }
        }
    }

    /// <summary>How far off a side is, in spreads; 0 where a hand could not set it nearer.</summary>
    private static double Off(HeightEstimate side, double wantedMm, double mmPerTurn)
    {
        var off = Math.Abs(side.Mean - wantedMm);
        return off <= HeightDefaults.SmallestTurn * mmPerTurn ? 0 : off / side.Sd;
    }

    // Common practice, no source.
    private static double Minutes(HeightDo what, ScrewTurns turns) => what switch
    {
        HeightDo.Gauge => 1,
        HeightDo.Screw => 0.5 + (turns.Left != 0 ? 0.3 : 0) + (turns.Right != 0 ? 0.3 : 0),
        HeightDo.Lock => 0.5,
        _ => 0,
    };
}
