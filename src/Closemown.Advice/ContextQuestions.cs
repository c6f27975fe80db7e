using System.Globalization;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Advice;

/// <summary>Asks about an entry made by hand: more at once than is done, and what is odd beside the other entries of the book.</summary>
public static class ContextQuestions
{
    /// <summary>More than unmown turf grows in a day, mm. Common practice or assumption, no source.</summary>
    private const double MostGrowthMm = 6;

    /// <summary>What a standing height may be at most beside the last one, apart from growth: so many times it, or so many mm above.
    /// Assumption, no source.</summary>
    private const double MostTimes = 3, MostMoreMm = 10;

    /// <summary>A spot below this share of what is kept there, or below this many mm where nothing is known, is odd.
    /// Assumption, no source.</summary>
    private const double LeastShare = 0.5, LeastMm = 1.5;

    /// <summary>What is odd of an entry about to be put in.</summary>
    /// <param name="desk">The entries before it.</param>
    /// <param name="entry">The entry, as it was read.</param>
    /// <returns>The fault; null where nothing is odd, or the person stands by it, or the book holds the entry already.</returns>
    public static EntryFault? Of(Desk desk, Entry entry)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(entry);
        var fault = entry.Kind.Name switch { CanopyEntry.Name => Canopy(desk, entry), WeatherEntry.Name => Weather(entry), _ => null } ?? AtOnce(entry);
        return fault is not null && desk.Arrived.Any(e => e.Id == entry.Id) ? null : fault;
    }

    private static EntryFault? AtOnce(Entry e)
    {
        foreach (var field in e.Kind.Fields)
        {
            if (e.Confirmed.Contains(field.Name)) continue;
            if (!PlausibleRanges.ByHand.TryGetValue($"{e.Kind.Name}.{field.Name}", out var range)) continue;
            if (e[e.Kind.IndexOf(field.Name)] is not double value || UnitSlip.Check(value, range) is not { } question) continue;
            var readings = string.Join(", or ", question.Candidates.Select(c => c.Reading));
            var offers = readings.Length == 0 ? "" : $" Did you mean {readings}?";
            return new(FaultCodes.Implausible, field.Name, question.Why + offers, Remedy(field.Name));
        }
        return null;
    }

    private static EntryFault? Weather(Entry e)
    {
        (Field<double> Low, Field<double> High)[] pairs = [(WeatherEntry.TMinC, WeatherEntry.TMaxC), (WeatherEntry.RhMinPct, WeatherEntry.RhMaxPct)];
        foreach (var (low, high) in pairs)
        {
            if (e[low] is { } a && e[high] is { } b && a > b)
                return new(FaultCodes.BadValue, low.Name, $"{low.Name}, {N(a)}, is above {high.Name}, {N(b)}.", $"The smaller comes first: {N(b)}..{N(a)}.");
        }
        return null;
    }

    private static EntryFault? Canopy(Desk desk, Entry e)
    {
        var spots = e[CanopyEntry.Mm];
        // Of limits, the turf is surely as high as the low one and as low as the high one.
        var (high, low) = spots is { Count: > 0 } ? (spots.Max(), spots.Min()) : (e[CanopyEntry.LowMm], e[CanopyEntry.HighMm]);
        var (highField, lowField) = spots is { Count: > 0 } ? (CanopyEntry.Mm.Name, CanopyEntry.Mm.Name) : (CanopyEntry.LowMm.Name, CanopyEntry.HighMm.Name);
        bool Here(Entry x) => x.Area == e.Area || (x.Area is null && desk.Areas.Count < 2);
        var before = desk.Standing.Where(x => x.At <= e.At && x.Id != e.Id && x.Id != e.Voids && Here(x)).ToList();
        var read = before.Select(x => (x.At, Mm: Height(x))).LastOrDefault(x => x.Mm is not null);
        if (high is { } stands && read.Mm is { } last && !e.Confirmed.Contains(highField))
        {
            var days = (e.At - read.At).TotalDays;
            if (stands > Math.Max(MostTimes * last, last + MostMoreMm) + (MostGrowthMm * days))
                return Odd(highField, $"It stood at {N(last)} mm {Ago(days)}, and this is {N(stands)} mm.");
        }
        var kept = before.Select(Kept).LastOrDefault(x => x is not null);
        if (low is not { } least || e.Confirmed.Contains(lowField) || least >= (kept is { } k ? LeastShare * k : LeastMm)) return null;
        return Odd(lowField, kept is { } cut
            ? $"{N(least)} mm is less than half of the {N(cut)} mm that is kept there." : $"{N(least)} mm is lower than turf is kept.");
    }

    /// <summary>What the turf was last read or left at, mm.</summary>
    private static double? Height(Entry e) => e.Is(CanopyEntry.Kind) ? Middle(e) : e.Is(MowEntry.Kind) ? e[MowEntry.CutMm] : null;

    /// <summary>What the turf is kept at, mm, as far as an entry says.</summary>
    private static double? Kept(Entry e) => e.Is(WishEntry.Kind) || e.Is(MowEntry.Kind) ? e[MowEntry.CutMm] : e.Is(CanopyEntry.Kind) && e[CanopyEntry.When] == "after" ? Middle(e) : null;

    private static double? Middle(Entry e) => e[CanopyEntry.Mm] is { Count: > 0 } spots ? spots.Average() : e[CanopyEntry.HighMm] ?? e[CanopyEntry.LowMm];

    private static EntryFault Odd(string field, string says) =>
        new(FaultCodes.Implausible, field, $"{says} Is it really so?", Remedy(field));

    private static string Remedy(string field) => $"Correct {field}, or add \"confirmed\": [\"{field}\"] if it is right as it is.";

    private static string Ago(double days) => days < 1.5 ? "a day or less before" : $"{Math.Round(days).ToString(CultureInfo.InvariantCulture)} days before";

    private static string N(double x) => x.ToString("0.##", CultureInfo.InvariantCulture);
}
