using System.Globalization;
using System.Text.Json;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>The days of a question on which nobody is there to mow.</summary>
public static class DaysOff
{
    /// <summary>The most days taken.</summary>
    public const int Most = 400;

    /// <summary>Reads <c>daysOff</c>, a list of dates.</summary>
    /// <param name="question">The question.</param>
    /// <param name="off">The days; null where none are told.</param>
    /// <param name="fault">What is wrong with them; null where nothing is.</param>
    /// <returns>Whether nothing is wrong.</returns>
    public static bool Read(JsonElement question, out IReadOnlySet<DateOnly>? off, out EntryFault? fault)
    {
        (off, fault) = (null, null);
        if (!question.TryGetProperty("daysOff", out var list) || list.ValueKind == JsonValueKind.Null) return true;
        var days = new HashSet<DateOnly>();
        if (list.ValueKind == JsonValueKind.Array && list.GetArrayLength() <= Most)
        {
            foreach (var item in list.EnumerateArray())
            {
                if (item.ValueKind != JsonValueKind.String || !DateOnly.TryParseExact(item.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
                {
                    fault = new(FaultCodes.BadValue, "daysOff", $"{Spelling.Clip(item.GetRawText())} is no date.", "Write each day as 2026-05-03, in quotes.");
                    return false;
                }
                days.Add(day);
            }
            off = days;
            return true;
        }
        fault = new(FaultCodes.BadValue, "daysOff", $"{Spelling.Clip(list.GetRawText())} is no list of days.", "Write a list of dates like [\"2026-05-03\"], 400 at most.");
        return false;
    }
}
