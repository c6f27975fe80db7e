using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>All looks of one day as one: each field as it was last said that day.</summary>
internal sealed class DayLook
{
    private readonly List<Entry> looks;

    private DayLook(DateOnly date, List<Entry> looks) => (Date, this.looks) = (date, looks);

    /// <summary>The day.</summary>
    public DateOnly Date { get; }

    /// <summary>When the last of them was made.</summary>
    public DateTimeOffset At => looks[^1].At;

    /// <summary>The looks of a day up to a time; null where there were none.</summary>
    public static DayLook? On(AreaLedger ledger, DateOnly date, DateTimeOffset to)
    {
        List<Entry> looks = [.. ledger.Heard.Where(e => e.Is(LookEntry.Kind) && e.At <= to && ledger.Track.Area.LocalDate(e.At) == date)];
        return looks.Count == 0 ? null : new(date, looks);
    }

    /// <summary>The looks of the last day that has any; null where there were none.</summary>
    public static DayLook? Last(AreaLedger ledger, DateTimeOffset to) =>
        ledger.Heard.LastOrDefault(e => e.Is(LookEntry.Kind) && e.At <= to) is { } last ? On(ledger, ledger.Track.Area.LocalDate(last.At), to) : null;

    /// <summary>The last word of the day in a field.</summary>
    public string? this[Field<string> field] => looks.FindLast(e => e[field] is not null)?[field];

    /// <summary>The last yes or no of the day in a field.</summary>
    public bool? this[Field<bool> field] => looks.FindLast(e => e[field] is not null)?[field];

    /// <summary>The last number of the day in a field.</summary>
    public double? this[Field<double> field] => looks.FindLast(e => e[field] is not null)?[field];
}
