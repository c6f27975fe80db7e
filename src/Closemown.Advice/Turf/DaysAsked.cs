using System.Globalization;
using System.Text.Json;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>What a question about a plan says of single days, whatever the usual days are.</summary>
/// <param name="Off">Days on which nobody is there to mow.</param>
/// <param name="On">Days on which someone is.</param>
/// <param name="OverThird">Days for which the person says yes to taking more than a third.</param>
/// <param name="Dry">Whether nothing is watered, whatever the record shows.</param>
public sealed record DaysAsked(IReadOnlySet<DateOnly> Off, IReadOnlySet<DateOnly> On, IReadOnlySet<DateOnly> OverThird, bool Dry = false)
{
    /// <summary>The most days of a sort.</summary>
    public const int Most = 400;

    /// <summary>Nothing is said.</summary>
    public static DaysAsked None { get; } = new(new HashSet<DateOnly>(), new HashSet<DateOnly>(), new HashSet<DateOnly>());

    /// <summary>Whether nothing is said.</summary>
    public bool IsNone => !Dry && Off.Count + On.Count + OverThird.Count == 0;

    /// <summary>Reads <c>daysOff</c>, <c>daysOn</c> and <c>overThird</c>, lists of dates, and <c>dry</c>, true or false.</summary>
    /// <param name="question">The question.</param>
    /// <param name="asked">The days; none where a list is faulty.</param>
    /// <param name="fault">What is wrong with them; null where nothing is.</param>
    /// <returns>Whether nothing is wrong.</returns>
    public static bool Read(JsonElement question, out DaysAsked asked, out EntryFault? fault)
    {
        asked = None;
        if (!List(question, "daysOff", out var off, out fault) || !List(question, "daysOn", out var on, out fault)
            || !List(question, "overThird", out var over, out fault)) return false;
        if (Both(off, on) is { } both)
        {
            fault = both;
            return false;
        }
        if (question.TryGetProperty("dry", out var dry) && dry.ValueKind is not (JsonValueKind.True or JsonValueKind.False or JsonValueKind.Null))
        {
            fault = new(FaultCodes.BadValue, "dry", $"{Spelling.Clip(dry.GetRawText())} is neither true nor false.", "Write true to plan without any watering, or leave it out.");
            return false;
        }
        asked = new(off, on, over, dry.ValueKind == JsonValueKind.True);
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
