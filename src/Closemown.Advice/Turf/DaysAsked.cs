using System.Globalization;
using System.Text.Json;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>What a question about a plan says of single days, whatever the usual days are.</summary>
/// <param name="Off">Days on which nobody is there to mow.</param>
/// <param name="On">Days on which someone is.</param>
public sealed record DaysAsked(IReadOnlySet<DateOnly> Off, IReadOnlySet<DateOnly> On)
{
    /// <summary>The most days of a sort.</summary>
    public const int Most = 400;

    /// <summary>Nothing is said.</summary>
    public static DaysAsked None { get; } = new(new HashSet<DateOnly>(), new HashSet<DateOnly>());

    /// <summary>Whether nothing is said.</summary>
    public bool IsNone => Off.Count + On.Count == 0;

    /// <summary>Reads <c>daysOff</c> and <c>daysOn</c>, lists of dates.</summary>
    /// <param name="question">The question.</param>
    /// <param name="asked">The days; none where a list is faulty.</param>
    /// <param name="fault">What is wrong with them; null where nothing is.</param>
    /// <returns>Whether nothing is wrong.</returns>
    public static bool Read(JsonElement question, out DaysAsked asked, out EntryFault? fault)
    {
        asked = None;
        if (!List(question, "daysOff", out var off, out fault) || !List(question, "daysOn", out var on, out fault)) return false;
        if (Both(off, on) is { } both)
        {
            fault = both;
            return false;
        }
        asked = new(off, on);
        return true;
    }

    /// <summary>The fault of a day that is said to be both; null where there is none.</summary>
    public static EntryFault? Both(IReadOnlySet<DateOnly> off, IReadOnlySet<DateOnly> on)
    {
        ArgumentNullException.ThrowIfNull(off);
        ArgumentNullException.ThrowIfNull(on);
        var both = off.Where(on.Contains).Order().ToList();
        return both.Count == 0 ? null : new(FaultCodes.BadValue, "daysOn", $"{both[0]:yyyy-MM-dd} is named as a day off and as a day on.", "Leave it in one of the two.");
    }

    private static bool List(JsonElement question, string name, out HashSet<DateOnly> days, out EntryFault? fault)
    {
        (days, fault) = ([], null);
        if (!question.TryGetProperty(name, out var list) || list.ValueKind == JsonValueKind.Null) return true;
        if (list.ValueKind != JsonValueKind.Array || list.GetArrayLength() > Most)
        {
            fault = new(FaultCodes.BadValue, name, $"{Spelling.Clip(list.GetRawText())} is no list of days.", "Write a list of dates like [\"2026-05-03\"], 400 at most.");
            return false;
        }
        foreach (var item in list.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.String || !DateOnly.TryParseExact(item.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                fault = new(FaultCodes.BadValue, name, $"{Spelling.Clip(item.GetRawText())} is no date.", "Write each day as 2026-05-03, in quotes.");
                return false;
            }
            days.Add(day);
        }
        return true;
    }
}
