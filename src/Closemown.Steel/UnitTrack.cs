using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What an entry's reading was worth: how odd it was, before it was seen.</summary>
/// <param name="At">Probability of a reading at least this odd, by station.</param>
/// <param name="All">The same over all stations read.</param>
public sealed record ReadingSurprise(IReadOnlyList<(int Station, double P)> At, double All);

/// <summary>A unit's entries walked through in order: the chain they make, a running belief, and the bench memory.</summary>
/// <remarks>
/// The running belief (one pass of moment matching) serves what must be known at once: how odd a reading is, and how close the pair
/// stood when it was lapped or mown. What people see comes from the whole chain (<see cref="SteelBelief"/>).
/// Entries must be added in order of (at, id).
/// </remarks>
public sealed class UnitTrack
{
    /// <summary>A reading less probable than this is unusual.</summary>
    public const double UnusualBelow = 0.01;

    /// <summary>Nothing is called unusual among the first readings.</summary>
    public const int FirstReadings = 10;

    private readonly ChainModel chain = new(Layout.StateNames, Layout.ConstantNames);
    private readonly ForwardPass pass;
    private readonly List<(Entry Entry, double Surprise)> unusual = [];
    private double sand = 1;
    private int step;

    /// <summary>Starts a unit with nothing but its description.</summary>
    public UnitTrack(UnitDescription unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Unit = unit;
        Strip = PaperStrip.Unknown(unit);
        step = chain.AddStep();
        StartingBelief.AddTo(chain, unit, Strip);
        pass = new ForwardPass(Solver.Solve(chain).LastState());
    }

    public UnitDescription Unit { get; }

    /// <summary>The strip in use.</summary>
    public PaperStrip Strip { get; private set; }

    /// <summary>Whether the strip in use was described, or told with a check.</summary>
    public bool StripKnown { get; private set; }

    public BenchMemory Memory { get; } = new();

    /// <summary>Readings so far, one a station.</summary>
    public int Readings { get; private set; }

    /// <summary>Entries so far.</summary>
    public int Entries { get; private set; }

    /// <summary>The grit last lapped with, or null.</summary>
    public double? LastGrit { get; private set; }

    /// <summary>Whether any look at the fit is in the book.</summary>
    public bool FitSeen { get; private set; }

    /// <summary>Readings that were not like this unit, oldest first.</summary>
    public IReadOnlyList<(Entry Entry, double Surprise)> Unusual => unusual;

    /// <summary>The running belief.</summary>
    public GaussianState Running => pass.Current;

    /// <summary>The chain so far, for the solver.</summary>
    public ChainModel Chain => chain;

    /// <summary>All entries of one unit (its own, and what is done to the turf it mows) as a track.</summary>
    /// <param name="name">The unit.</param>
    /// <param name="standing">Standing entries in order; those of other units are passed over.</param>
    public static UnitTrack Of(string name, IReadOnlyList<Entry> standing)
    {
        ArgumentNullException.ThrowIfNull(standing);
        var track = new UnitTrack(UnitDescription.Of(name, standing.Where(e => e.Unit == name && e.Is("unit"))));
        foreach (var e in standing) track.Add(e);
        return track;
    }

    /// <summary>Whether an entry matters to this unit's steel.</summary>
    public bool Concerns(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e.Unit == Unit.Name || e.Is("work");
    }

    /// <summary>Adds the next entry.</summary>
    /// <returns>How odd its reading was; null for what is no reading of the steel.</returns>
    public ReadingSurprise? Add(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        if (!Concerns(e)) return null;
        Entries++;
        FitSeen |= e.Is("fit");
        var hours = e.Is("mow") ? MowingHours.Of(e, Unit) : 0;
        UseStrip(e);
        var surprise = Checks.Words.ContainsKey(e.Kind.Name) ? Read(e) : null;
        if (surprise is null) Act(e, hours);
        var odd = surprise is { } s && s.All < UnusualBelow && Readings > FirstReadings ? s.All : (double?)null;
        if (odd is { } p) unusual.Add((e, p));
        Memory.Add(e, hours, odd);
        return surprise;
    }

    private void UseStrip(Entry e)
    {
        if (e.Is("strip")) Change(PaperStrip.Of(e));
        else if (e.Kind.IndexOf("stripUm") >= 0 && e.Number("stripUm") is { } um && Math.Abs(um - Strip.Um) > 0.5) Change(PaperStrip.Told(um));

        void Change(PaperStrip strip)
        {
            Strip = strip;
            StripKnown = true;
            Move(Steps.NewStrip(strip));
        }
    }

    private ReadingSurprise? Read(Entry e)
    {
        var reads = Checks.Read(e, Unit, Strip);
        if (reads.Count == 0) return null;                // a swath that says only what was heard
        var at = new List<(int Station, double P)>(3);
        foreach (var read in reads) at.Add((read.Check.Station, read.Surprise(pass)));
        var all = Surprise.OfSeveral([.. at.Select(a => a.P)]);
        Readings += reads.Count;
        if (all < UnusualBelow && Readings > FirstReadings) Move(Steps.Doubt());
        Observe(reads);
        return new(at, all);
    }

    private void Act(Entry e, double hours)
    {
        switch (e.Kind.Name)
        {
            case "mow":
                Move(Steps.Mow(hours, sand, pass.Current));
                sand = 1 + ((sand - 1) / 2);
                if (sand < 1.1) sand = 1;
                break;
            case "work":
                if (e.Word("what") == "topdress") sand = 8;         // × 8 ± 5, halving each mowing (priors: assumption)
                break;
            case "clicks":
                Move(Steps.Clicks(e.Number("left") ?? 0, e.Number("right") ?? 0, Memory.Direction));
                break;
            case "lap":
                LastGrit = e.Number("grit") ?? LastGrit;
                Move(Steps.Lap(e.Number("minutes")!.Value, e.Number("grit"), Unit, pass.Current));
                break;
            case "square-up":
                Move(Steps.SquareUp());
                Observe([.. ((int[])[0, 2]).Select(s => new CheckRead(Checks.Of("paper-drag", s, Unit, Strip), 1, 0, 0))]);
                break;
            case "stone":
                Move(Steps.Stone(e.Word("what")!));
                break;
            case "grind":
                Move(Steps.Grind(e.Word("what")!));
                break;
            case "rebuild":
                Move(Steps.Rebuild(e.Flag("newKnife") ?? false, e.Flag("groundOnBar") ?? false));
                break;
            case "strike":
                Move(Steps.Strike(Stations.IndexOf(e.Word("where"))));
                break;
        }
    }

    /// <summary>Readings of one entry have no order, but one pass needs one: the mean of left to right and right to left favours neither end.</summary>
    private void Observe(List<CheckRead> reads)
    {
        var back = pass.Copy();
        foreach (var read in reads)
        {
            read.AddTo(chain, step);
            read.Observe(pass);
        }
        if (reads.Count < 2) return;
        foreach (var read in Enumerable.Reverse(reads)) read.Observe(back);
        for (var i = 0; i < pass.Current.Mean.Length; i++) pass.Current.Mean[i] = (pass.Current.Mean[i] + back.Current.Mean[i]) / 2;
        for (var i = 0; i < pass.Current.Covariance.Length; i++) pass.Current.Covariance[i] = (pass.Current.Covariance[i] + back.Current.Covariance[i]) / 2;
    }

    private void Move(params ReadOnlySpan<Step> steps)
    {
        foreach (var s in steps)
        {
            s.AddTo(chain);
            step++;
            s.MoveForward(pass);
        }
    }
}
