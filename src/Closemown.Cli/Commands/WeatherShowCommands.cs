using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>Shows an area's weather, merged from all sources.</summary>
internal sealed class WeatherShowCommand : CliCommand
{
    private const int Usual = 14;
    private static readonly Option<int?> Days = new("--days") { Description = "so many days up to the last", HelpName = "N" };

    public WeatherShowCommand() : base("show", "an area's last days, merged from all sources, forecasts marked")
    {
        Examples = [("closemown book weather show --area green --days 30", "the last thirty")];
        Options.Add(CommonOptions.Area);
        Options.Add(Days);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var area = WeatherAreas.Of(call, open.Desk);
        var record = WeatherRecord.Of(area.Name, open.Book.ReadWeather());
        var n = call.Parsed.GetValue(Days) ?? Usual;
        if (n <= 0) throw CliFault.Usage("--days needs a number above 0.", "Write --days 14.");
        if (record.Count == 0) throw CliFault.Refused($"The book has no weather of {area.Name}.", "Type a day: closemown add weather date=2026-05-03 tMin=4 tMax=15, or read a file: closemown book weather FILE");
        if (!call.Json) call.Screen.Line(WeatherLine.Header(call.Style));
        foreach (var day in record.Days.TakeLast(n))
        {
            if (!call.Json) call.Screen.Line(WeatherLine.Of(day, call.Style));
            else call.Answer(new JsonObject { ["date"] = TurfAnswer.Date(day.Date), ["tMinC"] = day.TMinC, ["tMaxC"] = day.TMaxC, ["rainMm"] = day.RainMm, ["windMs"] = day.WindMs, ["rhPct"] = day.RhPct, ["forecast"] = day.Forecast });
        }
        return ExitCodes.Done;
    }
}

/// <summary>Lists the days that an area's weather lacks.</summary>
internal sealed class WeatherGapsCommand : CliCommand
{
    public WeatherGapsCommand() : base("gaps", "days that an area's weather lacks between its first and its last")
    {
        Examples = [("closemown book weather gaps --area green", "from, to, how many")];
        Options.Add(CommonOptions.Area);
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var area = WeatherAreas.Of(call, open.Desk);
        var record = WeatherRecord.Of(area.Name, open.Book.ReadWeather());
        var gaps = record.Gaps().ToList();
        if (call.Json)
        {
            call.Answer(new JsonObject { ["ok"] = true, ["days"] = record.Count, ["gaps"] = new JsonArray([.. gaps.Select(g => (JsonNode)new JsonObject { ["from"] = TurfAnswer.Date(g.From), ["to"] = TurfAnswer.Date(g.To) })]) });
            return ExitCodes.Done;
        }
        call.Screen.Line(gaps.Count == 0 ? $"{BookWeatherCommand.Count(record.Count, "day")} of weather of {area.Name}, none missing between the first and the last." : $"{BookWeatherCommand.Count(gaps.Count, "gap")} in the weather of {area.Name}:");
        foreach (var g in gaps) call.Screen.Line($"  {TurfAnswer.Date(g.From)} to {TurfAnswer.Date(g.To)} ({BookWeatherCommand.Count(g.To.DayNumber - g.From.DayNumber + 1, "day")})");
        return ExitCodes.Done;
    }
}
