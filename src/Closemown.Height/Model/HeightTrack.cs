using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>What an entry's reading was worth: how odd it was, before it was seen.</summary>
/// <param name="At">Probability of a reading at least this odd, by station (<c>left</c>, <c>right</c>); empty for a standing height.</param>
/// <param name="All">The same over all that was read.</param>
public sealed record HeightSurprise(IReadOnlyList<(string Station, double P)> At, double All);

/// <summary>A unit's entries walked through in order: the chain of heights they make and a running belief.</summary>
/// <remarks>The running belief serves what must be known at once: how odd a reading is, how much the gauge scatters, whether slack is gone.
/// What people see comes from the whole chain (<see cref="HeightBelief"/>). Entries must be added in order of (at, id).</remarks>
public sealed class HeightTrack
{
    /// <summary>A sitting at the bench ends with a mowing or after so many hours.</summary>
    public const double SittingHours = 6;

    private const int UnreadMowings = 4;

    private readonly ChainModel chain = new(HeightLayout.StateNames, HeightLayout.ConstantNames);
    private readonly GaugeSpreads spreads = new();
    private readonly List<Entry> study = [];
    private readonly MowingMemory mowings = new();
    private readonly ScrewMoves moves = new();
    private readonly GaugedSides gauged = new();
    private readonly List<Entry> unitEntries = [];
    private RunningHeight running;
    private GaugeDoubt? doubt;
    private (Slack Left, Slack Right) slack = (Slack.Unknown, Slack.Unknown);
    private DateTimeOffset? lastBench;
    private double? lastTold;                             // bench height last told with a mowing, until it is gauged or turned
    private bool knocked, cutRead, told;
    private int step, since;                              // mowings since the season was last moved on

    /// <summary>Starts a unit with nothing but its description.</summary>
    /// <param name="unit">The description: starting values come from it.</param>
    /// <param name="learnScatter">Whether each person's scatter with the gauge is learned.</param>
    public HeightTrack(HeightUnit unit, bool learnScatter = true)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Unit = unit;
        step = chain.AddStep();
        HeightStart.AddTo(chain, unit);
        running = new RunningHeight(Solver.Solve(chain).LastState(), learnScatter ? GaugeScatter.Factors : GaugeScatter.Fixed,
            unit.Priors.TryGetValue("gaugeSdMm", out var p) && p.Mean > 0 ? p : null);
    }

    public HeightUnit Unit { get; private set; }

    /// <summary>Gauge readings so far, one a side.</summary>
    public int Readings { get; private set; }

    /// <summary>Whether the nuts are loose: a screw was turned since they were tightened.</summary>
    public bool Loose { get; private set; }

    /// <summary>Whether both sides were read since a screw was last turned.</summary>
    public bool ReadSinceTurn => gauged.SinceTurn;

    /// <summary>Whether both sides were read since the sitting at the bench began, and nothing has moved them unseen since.</summary>
    public bool ReadThisSitting => gauged.ThisSitting;

    /// <summary>What was believed when it was read the time before the last, the screws not turned since; null where it was not.</summary>
    internal GaussianState? ReadBefore => gauged.Before;

    /// <summary>Readings of a side since a screw was last turned, in order, mm.</summary>
    public IReadOnlyList<double> ReadingsSinceTurn(int side) => moves.SinceTurn(side);

    /// <summary>The sides that made less than half of what was turned, twice in a row.</summary>
    public IReadOnlyList<SideLags> Lagging => moves.Lagging(Unit);

    /// <summary>Whether screws were ever turned in this record.</summary>
    public bool EverTurned { get; private set; }

    /// <summary>Slack of each screw.</summary>
    public (Slack Left, Slack Right) ScrewSlack => slack;

    /// <summary>Whether the last odd reading still waits for another to say what it was.</summary>
    public bool InDoubt => doubt is not null;

    /// <summary>How often what was said of the next gauge reading came true.</summary>
    public HitCount Score { get; } = new();

    /// <summary>What is known of each person's scatter.</summary>
    public IReadOnlyList<ReaderScatter> People => [.. running.People(Unit.GaugeSdMm)];

    /// <summary>The area last mown by this unit, or null.</summary>
    public string? LastArea => mowings.LastArea;

    /// <summary>Mowings of an area by this unit after which its standing height was read, and spots read in all; null for the area last mown.</summary>
    public (int Mowings, int Spots) CanopyRead(string? area = null) => mowings.Read(area);

    /// <summary>Whether locked and unlocked readings both exist: only then is the shift by locking known.</summary>
    public bool LockShiftLearnt => gauged.LockedAndLoose;

    /// <summary>The chain so far, for the solver.</summary>
    public ChainModel Chain => chain;

    /// <summary>The running belief.</summary>
    public GaussianState Running => running.Current;

    /// <summary>Bench height by the running belief, the middle of both sides, mm.</summary>
    public HeightEstimate BenchNowMm => HeightEstimate.Of(running.Current.Predict([Term.State(0, HeightLayout.Left, 0.5), Term.State(0, HeightLayout.Right, 0.5)]));

    /// <summary>Sink by the running belief, dry, mm.</summary>
    /// <param name="area">The area; null for the one last mown.</param>
    public HeightEstimate SinkNowMm(string? area) => HeightEstimate.Of(running.Current.Predict(SinkOn(area, false, null)));

    /// <summary>All entries of one unit, and what is read on the turf it mows, as a track.</summary>
    /// <param name="name">The unit.</param>
    /// <param name="standing">Standing entries in order; those that do not concern it are passed over.</param>
    /// <param name="learnScatter">As for the constructor.</param>
    public static HeightTrack Of(string name, IReadOnlyList<Entry> standing, bool learnScatter = true)
    {
        ArgumentNullException.ThrowIfNull(standing);
        var track = new HeightTrack(HeightUnit.Of(name, standing.Where(e => e.Unit == name && e.Is(UnitEntry.Kind))), learnScatter);
        foreach (var e in standing) track.Add(e);
        return track;
    }

    /// <summary>Adds the next entry.</summary>
    /// <returns>How odd its reading was; null for what is no reading of this unit's height.</returns>
    public HeightSurprise? Add(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        if (e.Is(CanopyEntry.Kind)) return Canopy(e);
        mowings.Look(e);
        if (e.Is(MowEntry.Kind)) Mown(e);
        if (e.Unit != Unit.Name) return null;
        switch (e.Kind.Name)
        {
            case UnitEntry.Name:
                unitEntries.Add(e);
                Unit = HeightUnit.Of(Unit.Name, unitEntries) with { Priors = Unit.Priors };
                break;
            case ScrewEntry.Name:
                Bench(e);
                Turn(new(e[ScrewEntry.LeftTurns] ?? 0, e[ScrewEntry.RightTurns] ?? 0));
                break;
            case LockedEntry.Name:
                Bench(e);
                Tighten();
                break;
            case GaugeEntry.Name when e[GaugeEntry.Study] is not null && e[GaugeEntry.Setting] is not null:
                study.Add(e);
                Study(e);
                break;
            case GaugeEntry.Name:
                Bench(e);
                return Gauge(e);
            case StrikeEntry.Name:
                Elsewhere(HeightSteps.Strike());
                break;
            case GrindEntry.Name when e[GrindEntry.What] != "reel":
                Elsewhere(HeightSteps.Grind());
                break;
            case RebuildEntry.Name:
                Elsewhere(HeightSteps.Rebuild(), repaired: true);
                slack = (Slack.Unknown, Slack.Unknown);
                break;
        }
        return null;
    }

    /// <summary>The height a mowing is expected to leave, by all entries before it, mm; null where neither a gauge nor the person told how it stands.</summary>
    /// <param name="mow">A mowing by this unit that was not added yet.</param>
    public HeightEstimate? CutAt(Entry mow)
    {
        ArgumentNullException.ThrowIfNull(mow);
        var (area, belief) = (mow.Area ?? "", running.Current);
        var wet = mowings.Wet(area, mow.At);
        if (mow[MowEntry.BenchMm] is { } bench)
        {
            var sink = HeightEstimate.Of(belief.Predict(SinkOn(area, wet, null)));
            return new(bench - sink.Mean, Math.Sqrt((sink.Sd * sink.Sd) + (HeightDefaults.ToldBenchSdMm * HeightDefaults.ToldBenchSdMm)));
        }
        return Readings > 0 || told ? HeightEstimate.Of(belief.Predict(CutOn(area, wet, null))) : null;
    }

    /// <summary>Terms of the height cut on an area, as a sum of the present state and the constants.</summary>
    internal Term[] CutOn(string? area, bool wet, bool? soft, int? grooved = null) => CutTerms.Cut(SinkOn(area, wet, soft, grooved));

    /// <summary>Terms of what the gauge reads more than is cut there, the grain apart.</summary>
    internal Term[] SinkOn(string? area, bool wet, bool? soft, int? grooved = null)
    {
        var on = area ?? mowings.LastArea;
        return CutTerms.Sink(mowings.Slot(on), wet, soft ?? mowings.Soft(on), (grooved ?? (Unit.Grooved ? 1 : 0)) == 1);
    }

    /// <summary>The scatters of the main person that are still open, each with its weight.</summary>
    internal List<(double Weight, Dictionary<int, double> SpreadOf)> WaysToRead() => spreads.Ways(running);

    /// <summary>A copy of the running belief to look ahead with.</summary>
    internal ForwardPass Ahead() => new(running.Current);

    /// <summary>Whether the sitting at the bench has ended by a time without an entry that counted its knocks.</summary>
    internal bool SittingOver(DateTimeOffset at) => lastBench is { } before && !knocked && (at - before).TotalHours > SittingHours;

    private void Bench(Entry e)
    {
        if (SittingOver(e.At)) Unseen(HeightSteps.Knock());
        (lastBench, knocked) = (e.At, false);
    }

    /// <summary>Something moves it that nobody measured: what was read before is of another day.</summary>
    private void Unseen(HeightStep s)
    {
        Move(s);
        gauged.MovedUnseen();
    }

    private void Elsewhere(HeightStep s, bool repaired = false)
    {
        Unseen(s);
        moves.Elsewhere(repaired);
        gauged.Elsewhere();
    }

    private void Turn(ScrewTurns turns)
    {
        if (turns is { Left: 0, Right: 0 }) return;
        moves.Turned(turns, Unit);
        gauged.Turned();
        Move(HeightSteps.Turn(turns, slack, running.Current, out slack));
        (Loose, EverTurned, told, lastTold) = (true, true, false, null);
    }

    private void Tighten()
    {
        if (Loose) Move(HeightSteps.Tighten());
        Loose = false;
    }

    private HeightSurprise? Gauge(Entry e)
    {
        var locked = e[GaugeEntry.Locked] ?? !Loose;
        if (locked) Tighten();
        else Loose = true;                                // read loose: they will be tightened again, which scatters
        var hand = running.HandOf(e.By ?? "");
        var reads = new List<HeightReading>(2);
        for (var side = 0; side < 2; side++)
        {
            if (e[side == 0 ? GaugeEntry.LeftMm : GaugeEntry.RightMm] is not { } mm) continue;
            Term[] terms = locked ? [Term.State(0, side, 1)] : [Term.State(0, side, 1), Term.Constant(HeightLayout.Lock + side, -1)];
            reads.Add(new(terms, mm, mm, Unit.GaugeSdMm, hand, side));
        }
        if (reads.Count == 0) return null;
        var at = reads.Select(r => (Station: r.Station == 0 ? Stations.Left : Stations.Right, P: running.Surprise(r))).ToList();
        foreach (var (_, p) in at) Score.Add(p);
        Observe(reads, [.. at.Select(a => a.P)]);
        gauged.Read(reads.Select(r => r.Station), locked, running.Current.Copy());
        Readings += reads.Count;
        foreach (var r in reads)
        {
            moves.Read(r.Station, r.Low + (locked ? 0 : running.Current.Mean[HeightLayout.StateSize + HeightLayout.Lock + r.Station]), locked);
        }
        (told, lastTold) = (true, null);
        return new(at, Surprise.OfSeveral([.. at.Select(a => a.P)]));
    }

    /// <summary>Readings of the gauge join the chain; an odd one opens a doubt, the next one closes it.</summary>
    private void Observe(List<HeightReading> reads, double[] p)
    {
        var odd = Readings >= 2 ? Enumerable.Range(0, reads.Count).Where(i => p[i] < GaugeDoubt.OddBelow).Select(i => reads[i].Station).ToList() : [];
        var opens = doubt is null && odd.Count > 0;
        var moveFactor = chain.FactorCount;
        if (opens) Move(new HeightStep());                // a place to lay a move to that nobody entered
        var before = opens ? running.Copy() : null;
        var oddFactors = new List<int>();
        foreach (var r in reads)
        {
            var factor = r.AddTo(chain, step);
            spreads.Add(factor, r.Sd, r.Hand);
            if (odd.Contains(r.Station)) oddFactors.Add(factor);
            running.Observe(r);
        }
        if (opens)
        {
            doubt = new GaugeDoubt(before!, reads, odd, moveFactor, [.. oddFactors]);
            return;
        }
        if (doubt is null) return;
        doubt.Observe(reads);
        if (!doubt.Decided(running, reads)) return;
        if (doubt.Taken is { } taken)
        {
            running = taken.Belief;
            foreach (var (factor, sd) in taken.Spread) spreads.Settle(factor, sd);
        }
        doubt = null;
    }

    private void Study(Entry e)
    {
        // Readings of one setting and side by one person: each further one adds one degree of freedom of pure repeats.
        for (var side = 0; side < 2; side++)
        {
            var field = side == 0 ? GaugeEntry.LeftMm : GaugeEntry.RightMm;
            if (e[field] is not { } mm) continue;
            var earlier = study.Where(s => s != e && s[GaugeEntry.Study] == e[GaugeEntry.Study] && s[GaugeEntry.Setting] == e[GaugeEntry.Setting] && s.By == e.By)
                .Select(s => s[field]).OfType<double>().ToList();
            if (earlier.Count == 0) continue;
            var gap = mm - earlier.Average();
            running.ObserveRepeats(running.HandOf(e.By ?? ""), gap * gap * earlier.Count / (earlier.Count + 1), 1, Unit.GaugeSdMm);
        }
    }

    private void Mown(Entry e)
    {
        mowings.Mown(e, e.Unit == Unit.Name);
        if (e.Unit != Unit.Name) return;
        since++;
        if (lastBench is not null && !knocked)
        {
            Unseen(Later(HeightSteps.Knock()));
            knocked = true;
        }
        // So many mowings whose cut nobody read make a step of their own: one for each would only lengthen the chain.
        if (cutRead && since >= UnreadMowings) Move(Later(new HeightStep()));
        if (e[MowEntry.BenchMm] is { } mm) ToldBench(mm);
    }

    /// <summary>What a person says it stood at on the bench.</summary>
    private void ToldBench(double mm)
    {
        if (ToldSetting.IsNew(mm, lastTold, Readings > 0 || lastTold is not null, BenchNowMm))
        {
            // Set to it, whether or not the turns were written down: what was read before is of another setting, and its slack with it.
            Elsewhere(ToldSetting.Step(mm));
            (slack, Loose, doubt) = ((Slack.Unknown, Slack.Unknown), false, null);
            gauged.Turned();
        }
        // Not gauged since the screws were turned: a rough reading of both sides.
        else if (!told) Plain(new([Term.State(0, HeightLayout.Left, 0.5), Term.State(0, HeightLayout.Right, 0.5)], mm, mm, HeightDefaults.ToldBenchSdMm, -1, -1));
        (told, lastTold) = (true, mm);
    }

    /// <summary>A step to which the mowings since the last one are laid.</summary>
    private HeightStep Later(HeightStep s)
    {
        s.Season(since);
        since = 0;
        return s;
    }

    private HeightSurprise? Canopy(Entry e)
    {
        if (e[CanopyEntry.When] != "after" || mowings.MownFor(e) is not { } mowing) return null;
        if (mowing.FirstReading) Move(Later(HeightSteps.NewMowing()));
        var cut = CutOn(mowing.Area, mowing.Wet, mowing.Soft);
        var reads = SpotHeights.Of(e).Select(r => new HeightReading(cut, r.LowMm, r.HighMm, r.SdMm, -1, -1)).ToList();
        if (reads.Count == 0) return null;
        cutRead = true;
        var p = Surprise.OfSeveral([.. reads.Select(running.Surprise)]);
        foreach (var r in reads) Plain(r);
        mowings.Counts(mowing, e[CanopyEntry.Mm]?.Count ?? 1);
        return new([], p);
    }

    private void Plain(HeightReading read)
    {
        read.AddTo(chain, step);
        running.Observe(read);
        doubt?.Observe([read]);
    }

    private void Move(HeightStep s)
    {
        s.AddTo(chain);
        step++;
        running.Move(s);
        doubt?.Move(s);
    }
}
