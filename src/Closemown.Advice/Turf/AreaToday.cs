using Closemown.Entries;
using Closemown.Height;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>Everything about an area on a day, before it is put into words or JSON.</summary>
public sealed class AreaToday
{
    private const double Bell95 = 1.6448536269514722;
    private const int FeedDays = 30, MorningHour = 9;
    private const double LeastEvenness = 0.3;

    private AreaToday(AreaLedger ledger, DateTimeOffset at, TurfDays days) =>
        (Ledger, At, Date, Days) = (ledger, at, ledger.Track.Area.LocalDate(at), days);

    internal AreaLedger Ledger { get; }

    /// <summary>The days up to then: those of the record, and of a day to come those in which it is watered on.</summary>
    internal TurfDays Days { get; }

    /// <summary>Whether waterings not entered are taken to have come by then.</summary>
    public bool WateredUntil => !ReferenceEquals(Days, Ledger.Track.Days);

    /// <summary>The area's short name.</summary>
    public string AreaName => Ledger.Name;

    /// <summary>The moment that a question of now is about.</summary>
    public static DateTimeOffset Moment(Desk desk, string area, DateTimeOffset now) => TurfTime.On(desk, area, null, now);

    /// <summary>Noon of a day there; now where it is today.</summary>
    public static DateTimeOffset AtNoon(Desk desk, string area, DateOnly date, DateTimeOffset now) => TurfTime.On(desk, area, date, now);

    /// <summary>When.</summary>
    public DateTimeOffset At { get; }

    /// <summary>The civil day there.</summary>
    public DateOnly Date { get; }

    /// <summary>What the day brings.</summary>
    public required TurfDay Day { get; init; }

    /// <summary>What the turf stands at, mm.</summary>
    public required HeightEstimate CanopyMm { get; init; }

    /// <summary>When its height was last read, or cut; null where it never was.</summary>
    public DateTimeOffset? News { get; init; }

    /// <summary>Whether the standing height is known: not where it was never read or cut, nor after long silence.</summary>
    public bool HeightKnown => News is { } news && (At - news).TotalDays is var days
        && (days <= AreaDefaults.SilentDays || (days <= AreaDefaults.LongSilentDays && CanopyMm.Sd <= AreaDefaults.HardlyKnownShare * CanopyMm.Mean));

    /// <summary>Growth, mm a day.</summary>
    public required HeightEstimate GrowthMm { get; init; }

    /// <summary>Stress, 0 to 3.</summary>
    public required HeightEstimate Stress { get; init; }

    /// <summary>Probability of none, slight, marked and severe stress.</summary>
    public required double[] StressLevels { get; init; }

    /// <summary>The height the next mowing would leave, mm, and the unit it is for; null where neither unit nor wish tells.</summary>
    public (double Mean, double Sd, string? Unit)? CutMm { get; init; }

    /// <summary>The share a mowing now would take; null where no cut is known.</summary>
    public SampledNumber? ShareIfMown { get; init; }

    public required WaterNeed Water { get; init; }

    /// <summary>Lower-quarter evenness of the watering, 0 to 1, by the last cans set out; null where none were.</summary>
    public double? WateringEvenness { get; init; }

    public required FeedNeed Feed { get; init; }

    /// <summary>Whether anything but the usual is known of tomorrow's weather.</summary>
    public required bool ForecastKnown { get; init; }

    /// <summary>How it is watered; null where the record shows no habit.</summary>
    public WaterHabit? Waters { get; init; }

    /// <summary>Coming nights in which the grass may freeze by a forecast or a reading, with the probability.</summary>
    public required IReadOnlyList<(DateOnly Date, double Probability)> Frosts { get; init; }

    /// <summary>Whether the turf wilts: by the water in its roots, or as it was seen.</summary>
    public bool Wilting { get; init; }

    /// <summary>What was seen today that keeps everyone off, and what the weather says.</summary>
    public required IReadOnlyList<string> Off { get; init; }

    /// <summary>Looks at an area.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="area">The area.</param>
    /// <param name="at">The time.</param>
    /// <param name="now">When it is asked; null for then. From that day to a later one it is taken to be watered on as lately.</param>
    /// <param name="dry">Whether it is taken not to be watered on.</param>
    public static AreaToday Of(Desk desk, string area, DateTimeOffset at, DateTimeOffset? now = null, bool dry = false)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var ledger = desk.Ledger(area);
        var place = ledger.Track.Area;
        var (date, asked) = (place.LocalDate(at), place.LocalDate(now ?? at));
        var habit = WaterHabit.Of(place, ledger.Heard.Where(e => e.At <= at), date < asked ? date : asked);
        var (belief, days) = (ledger.Belief, ledger.Track.Days);
        if (habit is not null && !dry && date > asked) days = days.WateredOn(habit, asked);
        var state = belief.At(at, days);
        var day = days.On(date);
        var canopy = Of(belief.StandsMm(at, state));
        var cut = Cut(desk, ledger);
        var look = DayLook.On(ledger, date, at);
        var fed = ledger.Heard.Where(e => e.Is(FeedEntry.Kind) && e.At <= at && e.At > at.AddDays(-FeedDays)).Sum(e => e[FeedEntry.NGm2] ?? 0);
        return new(ledger, at, days)
        {
            Day = day,
            CanopyMm = canopy,
            News = ledger.Heard.LastOrDefault(e => e.At <= at && e.Kind.Name is CanopyEntry.Name or MowEntry.Name)?.At,
            GrowthMm = Of(AreaBelief.GrowthMm(state, day)),
            Stress = Of(AreaBelief.Stress(state)),
            StressLevels = AreaBelief.StressLevels(state),
            CutMm = cut,
            ShareIfMown = cut is { } c ? ShareRemoved.Of((canopy.Mean, canopy.Sd), (c.Mean, Math.Sqrt((c.Sd * c.Sd) + (AreaDefaults.CutMm * AreaDefaults.CutMm)))) : null,
            Water = WaterNeed.Of(days, date),
            WateringEvenness = Evenness(ledger, at),
            Feed = FeedNeed.Of(days, date, fed),
            Frosts = [.. Enumerable.Range(NightOver(ledger, at) ? 1 : 0, FrostOutlook.Nights).Select(k => (Date: date.AddDays(k), P: FrostOutlook.Probability(days.On(date.AddDays(k)), k, days.Usual.On(date.AddDays(k))))).Where(n => n.P >= FrostOutlook.NamedFrom && days.On(n.Date).Weather.Read is not null)],
            ForecastKnown = days.On(date.AddDays(1)).Weather.Read is not null,
            Waters = habit,
            Wilting = day.Wilting || look?[LookEntry.Footprints] == true || look?[LookEntry.Colour] == "blue-grey",
            Off = [.. OffWords(day.KeepOff), .. Seen(look)],
        };
    }

    /// <summary>What the last catch cans say of how evenly the water falls.</summary>
    private static double? Evenness(AreaLedger ledger, DateTimeOffset at)
    {
        var cans = ledger.Heard.Where(e => e.Is(WaterEntry.Kind) && e.At <= at).Select(e => e[WaterEntry.CansMm]).LastOrDefault(c => c is not null && CatchCans.Tell(c));
        return cans is null ? null : Math.Max(LeastEvenness, CatchCans.LowQuarter(cans));
    }

    /// <summary>Whether the night to this day is over, so that its frost is no news.</summary>
    private static bool NightOver(AreaLedger ledger, DateTimeOffset at) => ledger.Track.Area.LocalTime(at).Hour >= MorningHour;

    /// <summary>What the next mowing would leave: the unit that mows here as it stands, with what this area's turf has said of its cut; else the last cut told.</summary>
    internal static (double Mean, double Sd, string? Unit)? Cut(Desk desk, AreaLedger ledger)
    {
        var offset = ledger.Belief.CutOffsetMm;
        if (ledger.Unit is { } unit && desk.HeightTrack(unit).Readings > 0)
        {
            var cut = desk.Height(unit).CutMm(ledger.Name);
            return (cut.Mean, cut.Sd, unit);
        }
        if (ledger.Track.Cuts.Count > 0) return (ledger.Track.Cuts[^1].CutMm + offset.Mean, offset.Sd, ledger.Unit);
        return ledger.Wish.CutMm is { } wished ? (wished, AreaDefaults.ToldCutSdMm, ledger.Unit) : null;
    }

    /// <summary>Reasons to keep off, as words of the contract.</summary>
    public static IEnumerable<string> OffWords(KeepOff off)
    {
        if (off.HasFlag(KeepOff.Frost)) yield return "frost";
        if (off.HasFlag(KeepOff.FrozenSoil)) yield return "frozen soil";
        if (off.HasFlag(KeepOff.ThawedOverFrozen)) yield return "thawed over frozen";
        if (off.HasFlag(KeepOff.Saturated)) yield return "saturated";
    }

    internal static IEnumerable<string> Seen(DayLook? look)
    {
        if (look is null) yield break;
        if (look[LookEntry.Frost] == true) yield return "frost seen";
        if (look[LookEntry.FrozenSoil] == true) yield return "frozen soil felt";
        if (look[LookEntry.Wet] == true) yield return "wet underfoot";
        if (look[LookEntry.Footprints] == true) yield return "footprints stay";
    }

    private static HeightEstimate Of((double Mean, double Sd) e) => new(e.Mean, e.Sd);
}
