using Closemown.Tests.Weather;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>Fetching weather, switched on, from a server on this machine.</summary>
public sealed class WeatherGetTests
{
    private const string At = "2026-05-02T10:00+01:00";
    private const string Answer = """
        {"daily_units":{"temperature_2m_min":"°C","temperature_2m_max":"°C","precipitation_sum":"mm"},
         "daily":{"time":["2026-05-01","2026-05-02","2026-05-03"],"temperature_2m_min":[4.0,5.0,6.0],"temperature_2m_max":[15.1,16.0,170.0],"precipitation_sum":[0.0,2.4,null]}}
        """;

    private static Bench SwitchedOn(LocalServer server, params string[] place)
    {
        var bench = new Bench();
        Assert.Equal(0, bench.Run("settings", "set", "weatherFetch", "on").Exit);
        Assert.Equal(0, bench.Run("settings", "set", "weatherUrl", server.Address.ToString()).Exit);
        Assert.Equal(0, bench.Run(["add", "area", "green", "--grass", "cool", "--zone", "Europe/London", .. place, "--at", "2026-04-01T08:00+01:00"]).Exit);
        return bench;
    }

    [Fact]
    public void What_was_is_recorded_and_today_and_what_lies_ahead_is_forecast()
    {
        using var server = new LocalServer((_, _) => (200, Answer.Replace("170.0", "17.0", StringComparison.Ordinal), 0));
        using var bench = SwitchedOn(server, "--lat", "51.4567", "--lon", "-0.9765");
        var told = bench.Run("book", "weather", "get", "--area", "green", "--days-past", "1", "--days-ahead", "2", "--at", At);
        Assert.Equal((0, ""), (told.Exit, told.Error));
        Assert.Contains("3 days of green fetched, 2026-05-01 to 2026-05-03; 3 new. Weather data by Open-Meteo.com, licence CC BY 4.0.", told.Out, StringComparison.Ordinal);
        var asked = Assert.Single(server.Asked);
        Assert.All((string[])["latitude=51.46&", "longitude=-0.98&", "timezone=Europe%2FLondon", "past_days=1&", "forecast_days=2 "], part => Assert.Contains(part, asked, StringComparison.Ordinal));
        var shown = bench.Run("book", "weather", "show", "--json").Lines;
        Assert.Equal(3, shown.Length);
        Assert.Contains("\"tMaxC\":15.1", shown[0], StringComparison.Ordinal);
        Assert.Equal([false, true, true], shown.Select(l => l.Contains("\"forecast\":true", StringComparison.Ordinal)));
    }

    [Fact]
    public void Json_says_whose_data_it_is_and_what_was_left_out()
    {
        using var server = new LocalServer((_, _) => (200, Answer, 0));
        using var bench = SwitchedOn(server, "--lat", "51.5", "--lon", "-1");
        var told = bench.Run("book", "weather", "get", "--json", "--at", At);
        Assert.Equal(1, told.Exit);
        Assert.Equal("Weather data by Open-Meteo.com, licence CC BY 4.0.", (string)told.Json["attribution"]!);
        Assert.Equal((3, 3), ((int)told.Json["days"]!, (int)told.Json["added"]!));
        var left = Assert.Single(told.Json["leftOut"]!.AsArray())!;
        Assert.Equal(("tMaxC", 1, 170.0), ((string)left["field"]!, (int)left["count"]!, (double)left["first"]![0]!["value"]!));
    }

    [Fact]
    public void Without_latitude_and_longitude_nothing_is_asked()
    {
        using var server = new LocalServer((_, _) => (200, Answer, 0));
        foreach (var place in (string[][])[[], ["--lat", "51.5"]])
        {
            using var bench = SwitchedOn(server, place);
            var told = bench.Run("book", "weather", "get", "--area", "green", "--at", At);
            Assert.Equal((1, ""), (told.Exit, told.Out));
            Assert.Contains("Where green lies is not in the book.", told.Error, StringComparison.Ordinal);
            Assert.Contains("add area green --lat 51.5 --lon -0.9", told.Error, StringComparison.Ordinal);
        }
        Assert.Empty(server.Asked);
    }

    [Fact]
    public void A_truncated_answer_leaves_the_book_as_it_was()
    {
        using var server = new LocalServer((_, _) => (200, Answer, 0)) { Announced = 100_000 };
        using var bench = SwitchedOn(server, "--lat", "51.5", "--lon", "-1");
        Assert.Equal(0, bench.Run("settings", "set", "weatherSeconds", "0.5").Exit);
        var told = bench.Run("book", "weather", "get", "--area", "green", "--at", At);
        Assert.Equal(1, told.Exit);
        Assert.Contains("truncated", told.Error, StringComparison.Ordinal);
        Assert.Contains("no weather of green", bench.Run("book", "weather", "show", "--area", "green").Error, StringComparison.Ordinal);
    }
}
