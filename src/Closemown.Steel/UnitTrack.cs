using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What an entry's reading was worth: how odd it was, before it was seen.</summary>
/// <param name="At">Probability of a reading at least this odd, by station.</param>
/// <param name="All">The same over all stations read.</param>
public sealed record ReadingSurprise(IReadOnlyList<(int Station, double P)> At, double All);

/// <summary>A unit's entries walked through in order: the chain they make, a running belief, and the bench memory.</summary>
/// <remarks>
/// The running belief (one pass of moment matching) serves what must be known at once: how odd a reading is, how much the person's
/// readings scatter, what may lie behind readings that do not fit, and how close the pair stood when it was lapped or mown.
/// What people see comes from the whole chain (<see cref="SteelBelief"/>). Entries must be added in order of (at, id).
/// </remarks>
public sealed class UnitTrack
{
    /// <summary>A reading less probable than this is unusual.</summary>
    public const double UnusualBelow = 0.01;

    /// <summary>Nothing is called unusual among the first readings.</summary>
    public const int FirstReadings = 10;

    /// <summary>Up to so many steps little is known and one pass weighs contradictions badly: there the whole record is solved for each rival.</summary>
    private const int ExactBelow = 60;

    private readonly ChainModel chain = new(Layout.StateNames, Layout.ConstantNames);
    private readonly RunningBelief running;
    private readonly List<Moment> moments = [];
    private readonly List<RunningBelief> before = [];    // the running belief before each moment
    private readonly Stack<RunningBelief> spare = [];
    private readonly List<UnusualReading> unusual = [];
    private readonly LearningOptions options;
    private readonly RivalWorld world;
    private readonly Workspace space = new();
    private readonly Stack<ForwardPass> sparePasses = [];
    private List<Rival> rivals = [];
    private List<Explanation> explanations = [];
    private UnusualReading? explained;                   // the last one whose explanation was taken as what happened
    private readonly HeightDisturbance height;
    private readonly HashSet<string> blades = new(StringComparer.Ordinal);
    private bool taken;
    private readonly RepeatedChecks repeats;
    private readonly RepeatShare repeatShare;
    private double sand = 1;
    private int step;

    /// <summary>Starts a unit with nothing but its description.</summary>
    public UnitTrack(UnitDescription unit, LearningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(unit);
        this.options = options ?? LearningOptions.All;
        Unit = unit;
        Strip = PaperStrip.Unknown(unit);
        step = chain.AddStep();
        StartingBelief.AddTo(chain, unit, Strip);
        running = new RunningBelief(Solver.Solve(chain).LastState(), this.options.Scatter ? Scatter.Factors : Scatter.Fixed);
        height = new HeightDisturbance(unit.Priors.TryGetValue("heightShiftUm", out var told) && told.Mean > 0 ? told.Mean : SteelDefaults.HeightShiftUm);
        world = new RivalWorld(unit, running.Current);
        repeatShare = new RepeatShare(unit.Priors.TryGetValue("repeatShare", out var share) ? share.Mean : null);
        repeats = new RepeatedChecks(repeatShare);
    }

    public UnitDescription Unit { get; }

    /// <summary>The strip in use.</summary>
    public PaperStrip Strip { get; private set; }

    /// <summary>Whether the strip in use was described, or told with a check.</summary>
    public bool StripKnown { get; private set; }

    public BenchMemory Memory { get; } = new();

    /// <summary>How often what was said came true.</summary>
    public SaidScore Score { get; } = new();

    /// <summary>Readings so far, one a station.</summary>
    public int Readings { get; private set; }

    /// <summary>Entries so far.</summary>
    public int Entries { get; private set; }

    /// <summary>The grit last lapped with, or null.</summary>
    public double? LastGrit { get; private set; }

    /// <summary>What setting or reading the height moves each end of this unit's nip, a spread, µm.</summary>
    public double HeightShiftUm => height.SdUm;

    /// <summary>Whether any look at the fit is in the book.</summary>
    public bool FitSeen { get; private set; }

    /// <summary>Readings that were not like this unit, oldest first.</summary>
    public IReadOnlyList<UnusualReading> Unusual => unusual;

    /// <summary>The share of its variance that a repeat of a check has in common with the first, as far as this unit's repeats told, 0 to 0.95.</summary>
    public double RepeatShare => repeatShare.Mean;

    /// <summary>What is known of each person's scatter.</summary>
    public IReadOnlyList<PersonScatter> People => [.. running.People];

    /// <summary>The running belief.</summary>
    public GaussianState Running => running.Current;

    /// <summary>The chain so far, for the solver.</summary>
    public ChainModel Chain => chain;

    /// <summary>All entries of one unit (its own, and what is done to the turf it mows) as a track.</summary>
    /// <param name="name">The unit.</param>
    /// <param name="standing">Standing entries in order; those of other units are passed over.</param>
    /// <param name="options">What is learned; null for everything.</param>
    public static UnitTrack Of(string name, IReadOnlyList<Entry> standing, LearningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(standing);
        var track = new UnitTrack(UnitDescription.Of(name, standing.Where(e => e.Unit == name && UnitDescription.Describes(e))), options);
        foreach (var e in standing) track.Add(e);
        return track;
    }

    /// <summary>Whether an entry matters to this unit's steel.</summary>
    public bool Concerns(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e.Unit == Unit.Name || e.Is(WorkEntry.Kind) || LeafTips.Is(e);
    }

    /// <summary>Adds the next entry.</summary>
    /// <returns>How odd its reading was; null for what is no reading of the steel.</returns>
    public ReadingSurprise? Add(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        if (!Concerns(e)) return null;
        var tips = LeafTips.Is(e);
        if (tips && ReadsOf(e).Count == 0) return null;
        Entries++;
        FitSeen |= e.Is(FitEntry.Kind);
        var hours = e.Is(MowEntry.Kind) ? MowingHours.Of(e, Unit) : 0;
        var newStrip = UseStrip(e);
        if (e.Is(LapEntry.Kind)) LastGrit = e[LapEntry.Grit] ?? LastGrit;
        if (BladeReads.Of(e) is { } named) blades.Add(named);
        var reads = ReadsOf(e);
        var person = reads.Count > 0 ? running.HandOf(e.By ?? "") : 0;
        if (newStrip is not null || e.Is(SquareUpEntry.Kind) || (!tips && !e.Is(SwathEntry.Kind) && !Memory.AtBench(e.At))) repeats.Over();
        reads = repeats.Of(reads, person, BladeReads.Of(e));
        var setsHeight = BenchMemory.SetsHeight(e);
        if (BenchMemory.ChangesNip(e)) height.Close(running.Current);
        var begins = setsHeight && !(height.Waits && Memory.HeightSet is not null);
        if (begins) height.Close(running.Current);
        var moment = new Moment(e, hours, Memory.Direction, sand, newStrip, LastGrit, reads, person, chain.Mark(), step) { HeightSdUm = begins ? height.SdUm : 0 };
        var isReading = (Checks.Words.ContainsKey(e.Kind.Name) || Straightedge.Is(e)) && reads.Count > 0;
        ReadingSurprise? surprise = null;
        var opens = newStrip is not null || reads.Count > 0 || moment.Moves(Unit, running.Current).Length > 0;
        if (opens)
        {
            Remember(moment);
            if (newStrip is not null) Move(Steps.NewStrip(newStrip));
            if (isReading) surprise = Foresee(moment);
            Live(moment, strip: false);
            if (moment.Reads.Count == 0) repeats.Over();
            if (begins) height.Set(running.Current, moment.HeightSdUm);
        }
        Turf(e);
        // Blades differ: a reading of one blade tells of that blade and is no mistake for being unlike the others.
        var blade = BladeReads.Of(e) is not null;
        var odd = surprise is { } s && s.All < UnusualBelow && Readings > FirstReadings && options.Rivals && !blade ? s.All : (double?)null;
        if (surprise is { } seen && options.Rivals && (odd is not null || rivals.Count > 0 || Rivals.Wanted(moments, Readings > FirstReadings))) Weigh();
        if (odd is { } p) unusual.Add(new(e, p));
        if (surprise is not null) Explain();
        if (!tips) Memory.Add(e, hours, odd);
        return surprise;
    }

    private void Explain()
    {
        if (unusual.Count == 0 || explained == unusual[^1] || explanations.Count == 0 || !moments.Exists(m => m.Entry.Id == unusual[^1].Entry.Id)) return;
        unusual[^1].Explanations = explanations;
        if (taken) explained = unusual[^1];
        taken = false;
    }

    /// <summary>The ways to read the record that are still open: scatter of the main person and rival explanations, each with its weight.</summary>
    internal List<Reading> WaysToRead()
    {
        var ways = new List<Reading>();
        var best = running.BestFactors;
        var main = running.Main;
        if (rivals.Count == 0)
        {
            var weights = running.Weights(main);
            for (var g = 0; g < weights.Length; g++) Add(g, weights[g], null);
        }
        foreach (var r in rivals)
        {
            for (var g = 0; g < r.Log.Length; g++) Add(g, r.Weight * r.Log[g], r);
        }
        return Reading.Trimmed(ways);

        void Add(int g, double weight, Rival? r)
        {
            var factors = (double[])best.Clone();
            factors[main] = running.Factor(g);
            var name = $"{string.Join('/', factors)}{(r is null || r.Moment < 0 ? "" : $" {r.Kind} {moments[r.Moment].Entry.Id} {r.Read} {r.Jump?.Offset(0)} {r.Jump?.Offset(1)}")}";
            ways.Add(new(factors, r, weight, name));
        }
    }

    /// <summary>How a way to read the record changes the chain's factors; null where it changes none.</summary>
    internal IReadOnlyDictionary<int, double>? SpreadOf(Reading way) => way.Rival is null ? null : SpreadOf(way.Rival);

    private PaperStrip? UseStrip(Entry e)
    {
        PaperStrip? strip = null;
        if (e.Is(StripEntry.Kind)) strip = PaperStrip.Of(e);
        else if (e[PaperCutEntry.StripUm] is { } um && Math.Abs(um - Strip.Um) > 0.5) strip = PaperStrip.Told(um);
        if (strip is not null) (Strip, StripKnown) = (strip, true);
        return strip;
    }

    private List<CheckRead> ReadsOf(Entry e) => e.Is(SquareUpEntry.Kind)
        ? [.. ((int[])[0, 2]).Select(s => new CheckRead(Checks.Of(PaperDragEntry.Name, s, Unit, Strip), 1, 0, 0))]
        : Straightedge.Is(e) ? [Straightedge.Read(e)]
        : LeafTips.Is(e) ? [.. LeafTips.Read(e, Memory.LastMow, Memory.FeelWanted, Unit)]
        : Checks.Read(e, Unit, Strip, blades.Count > 1);                    // empty for a swath that says only what was heard

    private ReadingSurprise Foresee(Moment m)
    {
        var at = new List<(int Station, double P)>(3);
        for (var r = 0; r < m.Reads.Count; r++)
        {
            var read = m.Reads[r];
            var p = running.Probabilities(read, m.Person, out var seen);
            m.Excess[r] = BladeReads.Of(m.Entry) is not null ? 0 : -Math.Log(Math.Max(p[seen], 1e-300)) + p.Sum(x => x > 0 ? x * Math.Log(x) : 0);
            Score.Add(p, seen);
            if (read.Earlier.Count > 0) repeatShare.Learn(share => running.Repeated(read with { Shared = share }, m.Person));
            at.Add((read.Check.Station, Surprise.OfCategory(p, seen)));
        }
        Readings += m.Reads.Count;
        return new(at, Surprise.OfSeveral([.. at.Select(a => a.P)]));
    }

    /// <summary>Turf work and mowing change how fast the edges dull: topdressing × 8 ± 5, halving each mowing (common practice, no source).</summary>
    private void Turf(Entry e)
    {
        if (e.Is(MowEntry.Kind))
        {
            sand = 1 + ((sand - 1) / 2);
            if (sand < 1.1) sand = 1;
        }
        else if (e.Is(WorkEntry.Kind) && e[WorkEntry.What] == "topdress")
        {
            sand = 8;
        }
    }

    private void Remember(Moment moment)
    {
        if (!options.Rivals) return;                     // only they go back to earlier entries
        if (moments.Count == Rivals.Window)
        {
            Rivals.Forget([moments[0]], sparePasses);
            moments.RemoveAt(0);
            spare.Push(before[0]);
            before.RemoveAt(0);
            rivals = [.. rivals.Select(r => r with { Moment = r.Moment - 1 }).Where(r => r.Kind == RivalKind.Chance || r.Moment >= 0)];
            if (rivals.Count == 1) rivals.Clear();
        }
        moments.Add(moment);
        if (spare.TryPop(out var kept)) kept.CopyFrom(running);
        else kept = running.Copy();
        before.Add(kept);
    }

    private void Live(Moment m, bool strip = true)
    {
        if (strip && m.NewStrip is { } s) Move(Steps.NewStrip(s));
        m.MoveFactor = -1;
        var moves = m.Moves(Unit, running.Current);
        if (m.Odd && moves.Length == 0) moves = [new Step()];        // moves nothing: what moved unseen can be laid to it
        foreach (var move in moves)
        {
            m.MoveFactor = chain.FactorCount;
            for (var i = 0; i < m.MoveSdUm.Length; i++) m.MoveSdUm[i] = move.Sd(i);
            Move(move);
        }
        if (m.Jump is { } jump) Move(jump);
        var reads = m.Standing;
        m.ReadFactor = chain.FactorCount;
        foreach (var read in reads) read.AddTo(chain, step, m.Person);
        if (reads.Count > 0) running.Observe(reads, m.Person);
    }

    private void Move(Step s)
    {
        s.AddTo(chain);
        step++;
        running.Move(s);
    }

    /// <summary>Compares the rival explanations; one that is as good as certain is taken, and the latest entries are lived again with it.</summary>
    private void Weigh()
    {
        rivals = Rivals.Of(moments, before, running, world, sparePasses);
        if (step < ExactBelow && rivals.Count > 1) rivals = Rivals.Again(rivals, LogEvidence);
        explanations = [.. rivals.Select(r => new Explanation(r.Kind, r.Moment < 0 ? null : moments[r.Moment].Entry, r.Read < 0 ? -1 : moments[r.Moment].Reads[r.Read].Check.Station, r.Weight))];
        var top = rivals[0];
        if (top.Kind == RivalKind.Chance)
        {
            if (rivals.Count == 1) rivals.Clear();
            return;
        }
        var at = moments[top.Moment];
        if (top.Weight < Rivals.Taken || !Confirmed(top, at)) return;
        if (top.Read == Rivals.All) Array.Fill(at.Mistaken, true);
        else if (top.Read >= 0) at.Mistaken[top.Read] = true;
        else at.Jump = top.Jump;
        taken = true;
        rivals.Clear();
        Rivals.Forget(moments, sparePasses);
        chain.BackTo(at.Mark);
        step = at.Step;
        running.CopyFrom(before[top.Moment]);
        for (var i = top.Moment; i < moments.Count; i++)
        {
            before[i].CopyFrom(running);
            (moments[i].Mark, moments[i].Step) = (chain.Mark(), step);
            Live(moments[i]);
        }
    }

    /// <summary>Evidence of the whole record under a rival with one factor of scatter.</summary>
    private double LogEvidence(Rival r, int factor)
    {
        var factors = running.BestFactors;
        factors[running.Main] = running.Factor(factor);
        return Solver.SolveIn(space, chain, new SolveOptions { SweepTolerance = 1e-3, SpreadByGroup = factors, SpreadOf = SpreadOf(r) }).LogEvidence;
    }

    /// <summary>Whether enough was read since: a mistaken reading by two more of its station, a jump by one more than the first that showed it.</summary>
    private bool Confirmed(Rival r, Moment at)
    {
        var after = moments.Skip(r.Moment + 1).SelectMany(m => m.Standing);
        return r.Read == Rivals.All ? at.Reads.All(a => after.Count(x => x.Check.Station == a.Check.Station) >= 2)
            : r.Read >= 0
            ? after.Count(x => x.Check.Station == at.Reads[r.Read].Check.Station) >= 2
            : moments.Skip(r.Moment + 1).Count(m => m.Reads.Count > 0) >= 2;
    }

    /// <summary>How a rival changes the chain's factors: a mistaken reading says nothing, a jump is more noise on a step.</summary>
    private Dictionary<int, double>? SpreadOf(Rival r)
    {
        if (r.Kind == RivalKind.Chance) return null;
        var m = moments[r.Moment];
        if (r.Read == Rivals.All) return Enumerable.Range(m.ReadFactor, m.Standing.Count).ToDictionary(k => k, _ => double.PositiveInfinity);
        if (r.Read >= 0) return new() { [m.ReadFactor + m.Mistaken.Take(r.Read).Count(x => !x)] = double.PositiveInfinity };
        var spread = new Dictionary<int, double>();
        for (var i = 0; i < Layout.StateSize; i++)
        {
            // A solution can be given other spreads but no other shift, so what the jump shifts is counted as spread.
            var (jump, shift) = (r.Jump!.Sd(i), r.Jump.Offset(i));
            spread[m.MoveFactor + i] = Math.Sqrt((m.MoveSdUm[i] * m.MoveSdUm[i]) + (jump * jump) + (shift * shift));
        }
        return spread;
    }
}
