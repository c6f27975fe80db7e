using System.Globalization;
using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>A day of a plan, as the answer to <c>plan</c> tells it.</summary>
/// <param name="Date">The day.</param>
/// <param name="Mow">Whether it is mown.</param>
/// <param name="CutMm">What the mowing leaves, mm.</param>
/// <param name="BenchMm">The bench height for it, mm; null where no unit is known.</param>
/// <param name="Minutes">Minutes of the work.</param>
/// <param name="CanopyMm">What it stands at that morning, mm.</param>
/// <param name="Share">The share that comes off, 0 to 1.</param>
/// <param name="OverThird">How likely more than a third comes off, 0 to 1.</param>
/// <param name="Reason">What decided, in the answer's own word.</param>
/// <param name="Why">Why mown, or why not.</param>
/// <param name="Looks">What it should look like after mowing; empty on other days.</param>
/// <param name="AskFirst">More than a third is likely to come off.</param>
public sealed record PlannedDay(DateOnly Date, bool Mow, double CutMm, double? BenchMm, double Minutes, Band CanopyMm, Band Share, double OverThird, string Reason, string Why, string Looks, bool AskFirst)
{
    /// <summary>The days of an answer; none where it has a fault.</summary>
    public static IReadOnlyList<PlannedDay> Of(JsonObject answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return [.. (answer["plan"] as JsonArray ?? []).OfType<JsonObject>().Select(Of1)];
    }

    /// <summary>A date as answers and addresses write it.</summary>
    public static DateOnly? ReadDate(string? text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <inheritdoc cref="ReadDate"/>
    public static string WriteDate(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static PlannedDay Of1(JsonObject d) => new(
        ReadDate((string?)d["date"]) ?? default, (bool)d["mow"]!, (double)d["cutMm"]!, (double?)d["benchMm"], (double?)d["minutes"] ?? 0,
        Band.Of(d["canopyMm"]) ?? default, Band.Of(d["shareRemoved"]) ?? default, (double?)d["overThird"] ?? 0,
        (string?)d["reason"] ?? "", (string?)d["why"] ?? "", (string?)d["looks"] ?? "", (bool?)d["askFirst"] ?? false);
}
