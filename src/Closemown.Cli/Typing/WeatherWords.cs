using System.Text.RegularExpressions;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>A day's weather as people say it: "4..15 rain 3", "39F..59F wind 10km/h yesterday".</summary>
internal static partial class WeatherWords
{
    private static readonly (string Word, string Field)[] Fields =
        [("rain", "rainMm"), ("wind", "windMs"), ("sun", "sunH"), ("humidity", "rhPct"), ("dew", "dewC"), ("mean", "tMeanC"), ("radiation", "radMjM2"),
        ("min", "tMinC"), ("low", "tMinC"), ("least", "tMinC"), ("max", "tMaxC"), ("high", "tMaxC"), ("most", "tMaxC")];

    /// <summary>Turns the words into fields; what it does not know stays as it is.</summary>
    /// <param name="typed">The words.</param>
    /// <param name="today">The civil day of the area now.</param>
    /// <param name="style">The person's way of writing.</param>
    public static IReadOnlyList<string> Read(IReadOnlyList<string> typed, DateOnly today, WritingStyle style)
    {
        typed = FieldOptions.Assigned(WeatherEntry.Kind, typed);
        var (fields, ahead) = (new List<string>(), typed.Any(w => w is "forecast" or "forecast=yes" or "forecast=true"));
        string Day(DateOnly d) => $"date={d.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}";
        for (var i = 0; i < typed.Count; i++)
        {
            var word = typed[i];
            if (Range().Match(word) is { Success: true } range)
            {
                fields.Add($"tMinC={range.Groups[1].Value}");
                fields.Add($"tMaxC={range.Groups[2].Value}");
            }
            else if (i + 2 < typed.Count && typed[i + 1] == "to" && Range().Match($"{word}..{typed[i + 2]}") is { Success: true } between)
            {
                fields.Add($"tMinC={between.Groups[1].Value}");
                fields.Add($"tMaxC={between.Groups[2].Value}");
                i += 2;
            }
            else if (Array.FindIndex(Fields, f => f.Word == word) is var f and >= 0 && i + 1 < typed.Count && Amounts.IsNumber(typed[i + 1]) && !Range().IsMatch(typed[i + 1]))
            {
                // "rain 3 mm": the unit stands by itself.
                var field = WeatherEntry.Kind.Fields[WeatherEntry.Kind.IndexOf(Fields[f].Field)];
                var apart = i + 2 < typed.Count && Amounts.IsBare(typed[i + 1]) && NumberText.TryRead(field, $"{typed[i + 1]} {typed[i + 2]}", style, out _, out _);
                fields.Add($"{Fields[f].Field}={typed[i + 1]}{(apart ? " " + typed[i + 2] : "")}");
                i += apart ? 2 : 1;
            }
            else if (word == "dry") fields.Add("rainMm=0");
            else if (word == "date" && i + 1 < typed.Count) continue;
            else if (DayTyped.Read(typed, i, today, ahead, out var told) is > 0 and var n)
            {
                fields.Add(Day(told));
                i += n - 1;
            }
            else fields.Add(word);
        }
        var at = fields.FindIndex(w => w.StartsWith("date=", StringComparison.OrdinalIgnoreCase) || w.StartsWith("day=", StringComparison.OrdinalIgnoreCase));
        var day = today;
        if (at >= 0 && DayTyped.Read([fields[at][(fields[at].IndexOf('=', StringComparison.Ordinal) + 1)..]], 0, today, ahead, out day) == 0) return fields;
        if (at >= 0) fields[at] = Day(day);
        else fields.Add(Day(day));
        if (day > today && !ahead)
        {
            if (fields.Exists(w => w is "forecast=no" or "forecast=false")) throw CliFault.Refused($"{EntryWords.Day(day)} has not been yet.", "Its weather is a forecast: leave forecast=no out.");
            fields.Add("forecast=yes");
        }
        return fields;
    }

    [GeneratedRegex(@"^(-?[\d.,]+\s*°?[CFcf]?)\.\.(-?[\d.,]+\s*°?[CFcf]?)$")]
    private static partial Regex Range();
}
