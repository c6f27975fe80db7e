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
        List<Entry> looks = [.. ledger.Heard.Where(e => e.Is("look") && e.At <= to && ledger.Track.Area.LocalDate(e.At) == date)];
        return looks.Count == 0 ? null : new(date, looks);
    }

    /// <summary>The looks of the last day that has any; null where there were none.</summary>
    public static DayLook? Last(AreaLedger ledger, DateTimeOffset to) =>
        ledger.Heard.LastOrDefault(e => e.Is("look") && e.At <= to) is { } last ? On(ledger, ledger.Track.Area.LocalDate(last.At), to) : null;

    public string? Word(string name) => looks.FindLast(e => e.Word(name) is not null)?.Word(name);

    public bool? Flag(string name) => looks.FindLast(e => e.Flag(name) is not null)?.Flag(name);

    public double? Number(string name) => looks.FindLast(e => e.Number(name) is not null)?.Number(name);
}
