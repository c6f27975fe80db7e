using System.Globalization;
using System.Text.Json;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>Reads the day that a question names.</summary>
public static class QuestionDate
{
    /// <summary>How far ahead of the asking time a day may lie: further on nothing is known of turf or weather.</summary>
    public const int YearsAhead = 2;

    private const int FirstYear = 1900;

    /// <summary>An optional day, from 1900 to two years after the asking time; false with what is wrong with it.</summary>
    public static bool Read(JsonElement question, string field, DateTimeOffset now, out DateOnly? date, out EntryFault? fault)
    {
        (date, fault) = (null, null);
        if (!question.TryGetProperty(field, out var v) || v.ValueKind == JsonValueKind.Null) return true;
        if (v.ValueKind != JsonValueKind.String || !DateOnly.TryParseExact(v.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            fault = new(FaultCodes.BadValue, field, $"{Spelling.Clip(v.GetRawText())} is no date.", "Write it as 2026-05-03, in quotes.");
            return false;
        }
        var asked = DateOnly.FromDateTime(now.DateTime);
        var last = asked.Year >= DateOnly.MaxValue.Year - YearsAhead ? DateOnly.MaxValue : asked.AddYears(YearsAhead);
        if (day.Year < FirstYear || day > last)
        {
            fault = new(FaultCodes.BadValue, field, $"{Written(day)} lies too far from the day of asking, {Written(asked)}.",
                $"Ask for a day from {FirstYear} to {Written(last)}: further ahead nothing is known.");
            return false;
        }
        date = day;
        return true;
    }

    private static string Written(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
