using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>A step of an area's chain, for drawing: when, and whether a mowing made it.</summary>
/// <param name="At">When.</param>
/// <param name="Mowing">The mowing whose cut the step is, or null.</param>
public readonly record struct CanopyMoment(DateTimeOffset At, Entry? Mowing);

/// <summary>An area's entries walked through in order: the chain of canopy and stress they make, and a running belief.</summary>
/// <remarks>Entries must be added in order of (at, id). The running belief serves what must be known at once; what people see comes from the whole chain (<see cref="AreaBelief"/>).</remarks>
public sealed class AreaTrack
{
    /// <summary>Below this probability a reading is out of the pattern.</summary>
    public const double OddBelow = 0.01;

    /// <summary>Readings from which on one can be out of the pattern.</summary>
    public const int OddFrom = 10;

    /// <summary>What is said of a mowing within so many hours of it is said of that mowing.</summary>
    public const double OfMowingHours = 12;

    /// <summary>Height at which the full rate is told, mm.</summary>
    internal const double RateAtMm = 5;

    private const double BeforeHours = 3, OddFactor = 3, DoubtCanopyMm = 0.5, DoubtSpellShare = 0.3;
    private const double ScalpStress = 0.04, MostScalpStress = 1.5;
    private const int UsualOf = 6;
    private const double UsualShare = 0.2, UsualWeight = 3;
    private static readonly Term[] Standing = [Term.State(0, CanopyLayout.Canopy, 1)];
    private static readonly Term[] StoodBefore = [Term.State(0, CanopyLayout.Before, 1)];

    private readonly ChainModel chain = new(CanopyLayout.StateNames, CanopyLayout.ConstantNames);
    private readonly List<CanopyMoment> moments = [];
    private readonly List<OddTurf> unusual = [];
    private readonly Queue<double> taken = [];
    private readonly ForwardPass pass;
    private string? lastUnit;
    private int step;

    /// <summary>Starts an area.</summary>
    /// <param name="area">Its description.</param>
    /// <param name="days">Its days.</param>
    public AreaTrack(TurfArea area, TurfDays days)
    {
        ArgumentNullException.ThrowIfNull(area);
        (Area, Days) = (area, days);
        step = chain.AddStep();
        CanopyStart.AddTo(chain, area);
        pass = new(Solver.Solve(chain).LastState());
    }

    public TurfArea Area { get; }

    public TurfDays Days { get; }

    /// <summary>The green base.</summary>
    public GreenBase Base { get; } = new();

    /// <summary>Readings of height so far, and mowings.</summary>
    public int HeightReadings { get; private set; }

    public int Mowings { get; private set; }

    /// <summary>When the turf was last said anything of; null before.</summary>
    public DateTimeOffset? Last { get; private set; }

    /// <summary>The last mowing, or null.</summary>
    public Entry? LastMowing { get; private set; }

    /// <summary>Mowings entered, with what they were to cut, mm.</summary>
    public IReadOnlyList<(Entry Mowing, double CutMm)> Cuts => cuts;

    private readonly List<(Entry Mowing, double CutMm)> cuts = [];

    /// <summary>Readings out of the pattern, oldest first.</summary>
    public IReadOnlyList<OddTurf> Unusual => unusual;

    /// <summary>The steps' times, one for each step of the chain; the first has none.</summary>
    public IReadOnlyList<CanopyMoment> Moments => moments;

    /// <summary>How often what was said of the next height came true.</summary>
    public HitCount Score { get; } = new();

    internal ChainModel Chain => chain;

    /// <summary>The running belief.</summary>
    public GaussianState Running => pass.Current;

    /// <summary>Adds the next entry.</summary>
    /// <param name="e">The entry; those that say nothing of the turf only pass.</param>
    /// <param name="cut">For a mowing: what it is expected to have left; null where nothing tells.</param>
    /// <returns>How odd its reading was; null for what is no reading.</returns>
    public double? Add(Entry e, CutHeight? cut = null)
    {
        ArgumentNullException.ThrowIfNull(e);
        switch (e.Kind.Name)
        {
            case MowEntry.Name:
                Mown(e, cut);
                return null;
            case CanopyEntry.Name:
                return Canopy(e);
            case ClippingsEntry.Name:
                return Clippings(e);
            case LookEntry.Name:
                return Look(e);
            case WorkEntry.Name:
                Advance(e.At);
                Move(CanopySteps.Hurt(e[WorkEntry.What] switch { "verticut" or "aerate" => 0.7, "topdress" or "overseed" => 0.4, "groom" => 0.2, _ => 0.1 }), e.At, null);
                return null;
            case WaterEntry.Name or FeedEntry.Name or TreatEntry.Name:
                Days.Add(e);
                return null;
            default:
                return null;
        }
    }

    /// <summary>A belief moved on to a later time.</summary>
    internal void MoveOn(ForwardPass belief, DateTimeOffset from, DateTimeOffset to, TurfDays days)
    {
        if (to > from && Grown(from, to, belief.Current, days) is { } grown) grown.MoveForward(belief);
    }

    private void Mown(Entry e, CutHeight? told)
    {
        Advance(e.At);
        Last ??= e.At;
        var cut = told ?? new(Math.Max(1, Running.Mean[CanopyLayout.Canopy] * 0.75), 1.5);
        // A first mowing, or by another unit than the last: how far its cut is off is not known yet.
        var known = AreaDefaults.ToldCutSdMm;
        if (Mowings == 0 ? cut.SdMm > known : e.Unit != lastUnit && e.Unit is not null && lastUnit is not null)
            Move(CanopySteps.NewOffset(Mowings == 0 ? Math.Sqrt((cut.SdMm * cut.SdMm) - (known * known)) : Math.Max(known, cut.SdMm)), e.At, null);
        var (mean, sd) = Of(CanopyLayout.Canopy);
        var left = cut.Mm + Running.Mean[CanopyLayout.Offset];
        Move(mean + sd < left ? CanopySteps.PassOver() : CanopySteps.Mow(cut.Mm), e.At, e);
        taken.Enqueue(Math.Max(0, mean - Running.Mean[CanopyLayout.Canopy]));
        if (taken.Count > UsualOf) taken.Dequeue();
        Base.Mown(e.At, mean, Running.Mean[CanopyLayout.Canopy]);
        cuts.Add((e, cut.Mm));
        (LastMowing, lastUnit) = (e, e.Unit ?? lastUnit);
        Mowings++;
    }

    private double? Canopy(Entry e)
    {
        var before = e[CanopyEntry.When] == "before" && LastMowing is { } m && (e.At - m.At).TotalHours <= BeforeHours;
        if (!before) Advance(e.At);
        Last ??= e.At;
        var terms = before ? StoodBefore : Standing;
        var reads = SpotHeights.Of(e).Select(r => new LinearReading(terms, r.LowMm, r.HighMm, r.SdMm)).ToList();
        if (reads.Count == 0) return null;
        var p = Surprise.OfSeveral([.. reads.Select(r => r.Surprise(Running))]);
        if (HeightReadings > 0) Score.Add(p);
        var odd = p < OddBelow && HeightReadings >= OddFrom;
        if (odd)
        {
            var (mean, _) = Running.Predict(terms);
            var under = reads.Average(r => double.IsInfinity(r.Low) ? r.High : double.IsInfinity(r.High) ? r.Low : (r.Low + r.High) / 2) < mean;
            unusual.Add(new(e, p, under, GrowthCauses.Of(SinceMowing(e.At), under)));
            if (!before) Move(CanopySteps.Doubt(DoubtCanopyMm, DoubtSpellShare * Area.FullRateMm), e.At, null);
        }
        foreach (var r in reads) Observe(odd ? r with { Sd = r.Sd * OddFactor } : r);
        HeightReadings++;
        return p;
    }

    private double? Clippings(Entry e)
    {
        if (OfMowing(e) is null || e[ClippingsEntry.Litres] is not { } litres || (e[ClippingsEntry.AreaM2] ?? LastMowing![MowEntry.AreaM2] ?? Area.M2) is not > 0.1) return null;
        var m2 = (e[ClippingsEntry.AreaM2] ?? LastMowing![MowEntry.AreaM2] ?? Area.M2)!.Value;
        return Read(MowingLook.Box(litres / m2, taken.LastOrDefault()));
    }

    private double? Look(Entry e)
    {
        double? p = null;
        if (OfMowing(e) is not null)
        {
            if (MowingLook.Eye(e, Usual()) is { } eye) p = Read(eye);
        }
        Advance(e.At);
        Last ??= e.At;
        Base.Look(e);
        foreach (var r in StressLook.Of(e)) p = Math.Min(p ?? 1, Read(r, doubtful: false));
        if (e[LookEntry.ScalpPct] is > 0 and var pct) Move(CanopySteps.Hurt(Math.Min(MostScalpStress, ScalpStress * pct)), e.At, null);
        return p;
    }

    /// <summary>What usually comes off, mm: a fifth or so of the leaf until this person's own mowings say.</summary>
    private double Usual()
    {
        var own = taken.Count > 1 ? taken.SkipLast(1).ToList() : [];
        return ((UsualShare * UsualWeight * Running.Mean[CanopyLayout.Before]) + own.Sum()) / (UsualWeight + own.Count);
    }

    private Entry? OfMowing(Entry e) => LastMowing is { } m && (e.At - m.At).TotalHours <= OfMowingHours ? m : null;

    private double Read(LinearReading r, bool doubtful = true)
    {
        var p = r.Surprise(Running);
        // What the eye calls usual, or a box half emptied, may be far off: an odd one counts for less.
        Observe(doubtful && p < OddBelow ? r with { Sd = r.Sd * OddFactor } : r);
        return p;
    }

    private void Observe(LinearReading r)
    {
        r.AddTo(chain, step);
        r.Observe(pass);
    }

    private (double Mean, double Sd) Of(int state) => (Running.Mean[state], Math.Sqrt(Running.Covariance[state * (Running.Size + 1)]));

    private List<TurfDay> SinceMowing(DateTimeOffset to)
    {
        var from = Area.LocalDate(LastMowing?.At ?? to.AddDays(-7));
        var days = new List<TurfDay>();
        for (var d = from; d <= Area.LocalDate(to); d = d.AddDays(1)) days.Add(Days.On(d));
        return days;
    }

    private void Advance(DateTimeOffset to)
    {
        if (Last is { } last && to > last && Grown(last, to, Running, Days) is { } grown) Move(grown, to, null);
        if (Last is null || to > Last) Last = to;
    }

    private CanopyStep? Grown(DateTimeOffset from, DateTimeOffset to, GaussianState belief, TurfDays turfDays)
    {
        var passed = DayShares.Between(Area.LocalTime(from), Area.LocalTime(to));
        if (passed.Count == 0) return null;
        var over = belief.Mean[CanopyLayout.Canopy] - RateAtMm;
        var rate = Math.Max(0.1 * Area.FullRateMm, Constant(CanopyLayout.Rate));
        return CanopySteps.Grow([.. passed.Select(p => (turfDays.On(p.Date), p.Share))], Area.FullRateMm, rate, over, Slows);

        double Constant(int j) => belief.Mean[CanopyLayout.StateSize + j];

        // Unmown turf grows up to its ceiling and stays there, however many weeks pass.
        double Slows(GrowthParts days)
        {
            var grown = ((Constant(CanopyLayout.Rate) + (Constant(CanopyLayout.Tall) * over) + belief.Mean[CanopyLayout.Spell]) * days.Growth)
                + (Constant(CanopyLayout.Feed) * days.Fed)
                + (Constant(CanopyLayout.Wide) * days.Wide) + (Constant(CanopyLayout.Dry) * days.Dry);
            var room = Math.Max(0, Area.CeilingMm - belief.Mean[CanopyLayout.Canopy]);
            return grown > room ? room / grown : 1;
        }
    }

    private void Move(CanopyStep s, DateTimeOffset at, Entry? mowing)
    {
        if (moments.Count == 0) moments.Add(new(at, null));
        s.AddTo(chain);
        s.MoveForward(pass);
        step++;
        moments.Add(new(at, mowing));
    }
}
