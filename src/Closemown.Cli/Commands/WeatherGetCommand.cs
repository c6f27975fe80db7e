using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Weather;

namespace Closemown.Cli;

/// <summary>Fetches forecast and past days from a public service, once the person has switched that on.</summary>
internal sealed class WeatherGetCommand : CliCommand
{
    private const string SourceName = "open-meteo";
    private static readonly Option<int?> Past = new("--days-past") { Description = "days before today, at most 92", HelpName = "N" };
    private static readonly Option<int?> Ahead = new("--days-ahead") { Description = "today and days ahead, at most 16", HelpName = "N" };

    public WeatherGetCommand() : base("get", "fetch forecast and past days from a public weather service; only when switched on in the settings")
    {
        Examples = [("closemown settings set weatherFetch on", "switch it on: place (two decimals) and time zone of the area are sent"), ("closemown book weather get --area green", "two weeks back, ten days ahead")];
        Details = ["What is fetched are values of a weather model for a square of some kilometres, not of your lawn. Data of Open-Meteo.com, licence CC BY 4.0."];
        foreach (var option in (Option[])[CommonOptions.Area, Past, Ahead, CommonOptions.At]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        if (!call.Preferences.WeatherFetch)
            throw CliFault.Refused("Fetching weather is switched off.", $"Switch it on with {call.Around.Called} settings set weatherFetch on. Then latitude and longitude of the area, to two decimals, and its time zone are sent to {call.Preferences.WeatherUrl.Host} at each call, and nothing else.");
        int past = call.Parsed.GetValue(Past) ?? 14, ahead = call.Parsed.GetValue(Ahead) ?? 10;
        if (past is < 0 or > 92 || ahead is < 1 or > 16) throw CliFault.Usage("So many days are not to be had.", "--days-past may be 0 to 92, --days-ahead 1 to 16.");
        using var open = call.Write();
        var area = WeatherAreas.Of(call, open.Desk);
        if (area is not { LatitudeDeg: { } lat, LongitudeDeg: { } lon })
            throw CliFault.Refused($"Where {area.Name} lies is not in the book.", $"Enter it: {call.Around.Called} add area {area.Name} --lat 51.5 --lon -0.9");
        try
        {
            using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { Timeout = Timeout.InfiniteTimeSpan };
            var service = new WeatherService(client, call.Preferences.WeatherTry, call.Preferences.WeatherTry / 20);
            var days = service.Fetch(new(call.Preferences.WeatherUrl, lat, lon, area.Zone, past, ahead)).GetAwaiter().GetResult();
            var today = area.LocalDate(call.Now);
            // A forecast is told at the time it was fetched, so that a later one takes its place.
            var entries = days.Entries(area.Name, SourceName, today, d => d >= today ? call.Now : area.At(d, TimeSpan.FromHours(12), call.Now));
            var (added, there) = BookWeatherCommand.Stored(open.Book, entries, call.Now);
            if (call.Json)
            {
                call.Answer(new JsonObject
                {
                    ["ok"] = days.LeftOut.Count == 0,
                    ["area"] = area.Name,
                    ["days"] = days.Count,
                    ["added"] = added,
                    ["alreadyThere"] = there,
                    ["source"] = SourceName,
                    ["leftOut"] = WeatherReport.Json(days.LeftOut),
                    ["attribution"] = Licences.OpenMeteo,
                });
            }
            else
            {
                call.Screen.Line($"{BookWeatherCommand.Count(days.Count, "day")} of {area.Name} fetched{(days.Span is { } s ? $", {TurfAnswer.Date(s.First)} to {TurfAnswer.Date(s.Last)}" : "")}; {added} new. {Licences.OpenMeteo}");
                foreach (var left in days.LeftOut) call.Screen.Line(WeatherReport.Of(left, call.Style.DecimalSign));
            }
            return days.LeftOut.Count == 0 ? ExitCodes.Done : ExitCodes.Refused;
        }
        catch (WeatherException fault)
        {
            throw CliFault.Refused(fault.Message, fault.Remedy);
        }
    }
}
