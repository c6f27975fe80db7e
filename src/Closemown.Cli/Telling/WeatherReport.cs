using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Entries;
using Closemown.Weather;

namespace Closemown.Cli;

/// <summary>What is told of a weather file that was read, or only looked at.</summary>
/// <param name="read">The file; its entries were made already.</param>
/// <param name="source">Where they come from.</param>
/// <param name="area">The area.</param>
internal sealed class WeatherReport(WeatherFileRead read, string source, string area)
{
    private const int GapsShown = 12;

    /// <summary>Of a preview: the first days; else null.</summary>
    public IReadOnlyList<Entry>? First { get; init; }

    /// <summary>How many days are new, and how many were there.</summary>
    public (int Added, int There) Done { get; init; }

    /// <summary>Whether every value was taken.</summary>
    public bool Ok => read.Days.LeftOut.Count == 0;

    /// <summary>Tells it, in words or as JSON.</summary>
    public void Tell(Call call)
    {
        if (call.Json)
        {
            call.Answer(Json());
            return;
        }
        var days = read.Days;
        var span = days.Span is { } s ? $", {TurfAnswer.Date(s.First)} to {TurfAnswer.Date(s.Last)}" : "";
        call.Screen.Line(First is null
            ? $"{read.Layout}: {BookWeatherCommand.Count(days.Count, "day")}{span}; {Done.Added} new in the weather of {area}, {Done.There} there already."
            : $"Recognised: {read.Layout}; {BookWeatherCommand.Count(days.Count, "day")}{span}. Nothing was stored.");
        call.Screen.Line($"Read: {string.Join(", ", days.Fields)}.");
        if (First is not null) call.Screen.Line(WeatherLine.Header(call.Style));
        foreach (var e in First ?? []) call.Screen.Line(WeatherLine.Of(e, call.Style));
        foreach (var (reason, d) in days.Dropped) call.Screen.Line($"Dropped {d.Count}: {reason} (first in line {Number(d.FirstLine)}).");
        foreach (var left in days.LeftOut) call.Screen.Line(Of(left, call.Style.DecimalSign));
        if (days.Traces > 0) call.Screen.Line($"{BookWeatherCommand.Count(days.Traces, "trace")} of rain, too little to measure: 0 mm.");
        foreach (var note in days.Notes) call.Screen.Line(note);
        Gaps(call.Screen);
        if (read.Attribution is { } whose) call.Screen.Line(whose);
    }

    private void Gaps(Screen screen)
    {
        var gaps = read.Days.Gaps().ToList();
        if (gaps.Count > 0) screen.Line($"{BookWeatherCommand.Count(gaps.Count, "gap")}:");
        foreach (var g in gaps.Take(GapsShown)) screen.Line($"  {TurfAnswer.Date(g.From)} to {TurfAnswer.Date(g.To)} ({BookWeatherCommand.Count(Length(g), "day")})");
        if (gaps.Count > GapsShown) screen.Line($"  and {gaps.Count - GapsShown} more: --json lists all.");
    }

    /// <summary>Values that were not taken, on one line.</summary>
    public static string Of(LeftOut left, char decimalSign)
    {
        var first = string.Join(", ", left.First.Select(v => $"{Number(v.Value).Replace('.', decimalSign)} {left.Unit} on {TurfAnswer.Date(v.Date)} (line {Number(v.Line)})"));
        var more = left.Count > left.First.Count ? $" and {left.Count - left.First.Count} more" : "";
        return $"Left out {BookWeatherCommand.Count(left.Count, "value")} of {left.Field}, {(left.CanBe ? "not plausible" : "which cannot be")}: {first}{more}.{(left.CanBe ? " If right, --confirmed takes them." : "")}";
    }

    private JsonObject Json()
    {
        var days = read.Days;
        return new()
        {
            ["ok"] = Ok,
            ["layout"] = read.Layout,
            ["source"] = source,
            ["area"] = area,
            ["preview"] = First is not null,
            ["days"] = days.Count,
            ["added"] = Done.Added,
            ["alreadyThere"] = Done.There,
            ["first"] = days.Span is { } s ? TurfAnswer.Date(s.First) : null,
            ["last"] = days.Span is { } t ? TurfAnswer.Date(t.Last) : null,
            ["fields"] = Array(days.Fields, f => f),
            ["firstDays"] = First is null ? null : Array(First, e => JsonNode.Parse(e.Json)),
            ["dropped"] = new JsonObject(days.Dropped.Select(d => KeyValuePair.Create<string, JsonNode?>(d.Key, d.Value.Count))),
            ["droppedFirstLine"] = new JsonObject(days.Dropped.Select(d => KeyValuePair.Create<string, JsonNode?>(d.Key, d.Value.FirstLine))),
            ["leftOut"] = Json(days.LeftOut),
            ["traces"] = days.Traces,
            ["gaps"] = Array(days.Gaps(), g => new JsonObject { ["from"] = TurfAnswer.Date(g.From), ["to"] = TurfAnswer.Date(g.To), ["days"] = Length(g) }),
            ["notes"] = Array(days.Notes, n => n),
            ["attribution"] = read.Attribution,
        };
    }

    /// <summary>The same as JSON.</summary>
    public static JsonArray Json(IEnumerable<LeftOut> leftOut) => Array(leftOut, l => new JsonObject
    {
        ["field"] = l.Field,
        ["why"] = l.CanBe ? FaultCodes.Implausible : FaultCodes.BadValue,
        ["count"] = l.Count,
        ["first"] = Array(l.First, v => new JsonObject { ["date"] = TurfAnswer.Date(v.Date), ["value"] = v.Value, ["line"] = v.Line }),
    });

    private static JsonArray Array<T>(IEnumerable<T> of, Func<T, JsonNode?> node) => new([.. of.Select(node)]);

    private static int Length((DateOnly From, DateOnly To) gap) => gap.To.DayNumber - gap.From.DayNumber + 1;

    private static string Number(double x) => x.ToString("0.##", CultureInfo.InvariantCulture);
}
