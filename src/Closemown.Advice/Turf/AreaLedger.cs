using Closemown.Entries;
using Closemown.Height;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>One area's entries with what its mowers were to cut: the place where the height model meets the turf.</summary>
/// <remarks>
/// Heights come from tracks that hear nothing of the turf: what a standing height says of the cut, the area's own chain learns. Else one reading would count twice.
/// </remarks>
internal sealed class AreaLedger
{
    private const double UsableSdMm = 1.5, WishSdMm = 0.5;
    private readonly Dictionary<string, HeightTrack> benches = new(StringComparer.Ordinal);
    private readonly Func<string, HeightUnit> unitOf;
    private readonly List<Entry> heard = [];
    private readonly List<Entry> before = [];
    private readonly bool only;
    private AreaBelief? belief;

    /// <summary>Starts an area.</summary>
    /// <param name="name">The area.</param>
    /// <param name="only">Whether it is the only one: then entries that name none are its own.</param>
    /// <param name="standing">All standing entries, in order.</param>
    /// <param name="record">Its weather.</param>
    /// <param name="unitOf">Describes a unit.</param>
    public AreaLedger(string name, bool only, IReadOnlyList<Entry> standing, WeatherRecord record, Func<string, HeightUnit> unitOf)
    {
        (Name, this.only, this.unitOf) = (name, only, unitOf);
        var area = TurfArea.Of(name, standing.Where(e => e.Is(AreaEntry.Kind) && e.Area == name));
        var first = standing.FirstOrDefault(Own)?.At ?? (standing.Count > 0 ? standing[0].At : (DateTimeOffset?)null) ?? new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
        // Care is known to the days from the start, so that a late feed does not make them twice.
        var days = new TurfDays(area, record, standing.Where(e => e.Kind.Name is WaterEntry.Name or FeedEntry.Name or TreatEntry.Name && Own(e)), area.LocalDate(first));
        Track = new(area, days);
        foreach (var e in standing) Take(e, caring: false);
    }

    public string Name { get; }

    public AreaTrack Track { get; }

    /// <summary>What the person wants.</summary>
    public TurfWish Wish { get; private set; } = new();

    /// <summary>The unit that mowed last, or null.</summary>
    public string? Unit { get; private set; }

    /// <summary>The last reading and how odd it was; null before the first.</summary>
    public (Entry Entry, double P)? LastRead { get; private set; }

    /// <summary>Entries of the area, in order: what its estimates rest on.</summary>
    public IReadOnlyList<Entry> Heard => heard;

    /// <summary>What is known now, from the whole record.</summary>
    public AreaBelief Belief => belief ??= AreaBelief.Of(Track);

    /// <summary>Adds the entry that comes next in order.</summary>
    /// <returns>How odd its reading was; null for what is no reading of this area.</returns>
    public double? Add(Entry e) => Take(e, caring: true);

    /// <summary>Whether an entry is about this area.</summary>
    public bool Own(Entry e) => e.Area is { } a ? a == Name : only && (e.Is(MowEntry.Kind) || e.Kind.Belongs == Belongs.Area);

    private double? Take(Entry e, bool caring)
    {
        double? surprise = null;
        if (Own(e))
        {
            belief = null;
            if (!e.Is(WeatherEntry.Kind)) heard.Add(e);
            if (e.Is(WishEntry.Kind)) Wish = Wish.After(e);
            if (e.Is(MowEntry.Kind))
            {
                surprise = Track.Add(e, Cut(e));
                Unit = e.Unit ?? Unit;
            }
            else if (caring || e.Kind.Name is not (WaterEntry.Name or FeedEntry.Name or TreatEntry.Name)) surprise = Track.Add(e);
        }
        if (surprise is { } p) LastRead = (e, p);
        if (!e.Is(CanopyEntry.Kind))
        {
            // A unit that was not asked for yet starts late; then it is walked through from the beginning.
            foreach (var t in benches.Values) t.Add(e);
            before.Add(e);
        }
        return surprise;
    }

    private CutHeight? Cut(Entry mow)
    {
        if (mow[MowEntry.CutMm] is { } told) return new(told, AreaDefaults.ToldCutSdMm);
        if (mow.Unit is { } unit)
        {
            if (!benches.TryGetValue(unit, out var bench))
            {
                benches[unit] = bench = new HeightTrack(unitOf(unit));
                foreach (var e in before) bench.Add(e);
            }
            if (bench.CutAt(mow) is { Sd: < UsableSdMm } cut) return new(cut.Mean, cut.Sd);
        }
        return Wish.CutMm is { } wished ? new(wished, WishSdMm) : null;
    }
}
