using System.Text.RegularExpressions;

namespace Closemown.Cli;

/// <summary>A day's weather as people say it: "4..15 rain 3", "39F..59F wind 10km/h yesterday".</summary>
internal static partial class WeatherWords
{
    private static readonly (string Word, string Field)[] Fields =
        [("rain", "rainMm"), ("wind", "windMs"), ("sun", "sunH"), ("humidity", "rhPct"), ("dew", "dewC"), ("mean", "tMeanC"), ("radiation", "radMjM2")];

    /// <summary>Turns the words into fields; what it does not know stays as it is.</summary>
    /// <param name="typed">The words.</param>
    /// <param name="today">The civil day of the area now.</param>
    public static IReadOnlyList<string> Read(IReadOnlyList<string> typed, DateOnly today)
    {
        var fields = new List<string>();
        string Day(DateOnly d) => $"date={d.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}";
        for (var i = 0; i < typed.Count; i++)
        {
            var word = typed[i];
            if (Range().Match(word) is { Success: true } range)
            {
                fields.Add($"tMinC={range.Groups[1].Value}");
                fields.Add($"tMaxC={range.Groups[2].Value}");
            }
            else if (Array.FindIndex(Fields, f => f.Word == word) is var f and >= 0 && i + 1 < typed.Count) fields.Add($"{Fields[f].Field}={typed[++i]}");
            else if (word == "dry") fields.Add("rainMm=0");
            else if (word is "today" or "yesterday") fields.Add(Day(word == "today" ? today : today.AddDays(-1)));
            else if (word.Length == 10 && DateOnly.TryParseExact(word, "yyyy-MM-dd", out var told)) fields.Add(Day(told));
            else fields.Add(word);
        }
        if (!fields.Exists(w => w.StartsWith("date=", StringComparison.OrdinalIgnoreCase) || w == "--date")) fields.Add(Day(today));
        return fields;
    }

    [GeneratedRegex(@"^(-?[\d.,]+\s*°?[CFcf]?)\.\.(-?[\d.,]+\s*°?[CFcf]?)$")]
    private static partial Regex Range();
}
