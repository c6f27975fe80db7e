using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>What is told of a weather file that is read, or looked at.</summary>
public sealed class WeatherFileCommandTests : IDisposable
{
    private const string At = "2026-05-20T10:00+01:00";
    private const string Elements = """
        USC00026481,20260401,TMAX,156,,,7,0700
        USC00026481,20260401,TMIN,44,,,7,0700
        USC00026481,20260401,PRCP,0,T,,7,0700
        USC00026481,20260402,TMAX,999,,X,7,0700
        USC00026481,20260402,TMIN,41,,,7,0700
        USC00026481,20260402,PRCP,9000,,,7,0700
        USC00026481,20260405,PRCP,102,,,7,0700
        USC00026481,20260405,TMIN,-520,,,7,0700
        """;

    private const string Service = """
        {"daily_units":{"temperature_2m_max":"°C"},"daily":{"time":["2026-05-01"],"temperature_2m_max":[15.1]}}
        """;

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    private Ran Read(string text, params string[] more) => bench.Run(["book", "weather", "-", "--area", "green", "--at", At, .. more], text, null);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Read_or_looked_at_the_same_drops_values_left_out_traces_and_gaps_are_told(bool preview)
    {
        var told = Read(Elements, preview ? ["--preview"] : []);
        Assert.Equal(1, told.Exit);
        Assert.All(
            (string[])["3 days, 2026-04-01 to 2026-04-05", "Dropped 1: failed the station network's check (first in line 4).", "Left out 1 value of rainMm, not plausible: 900 mm on 2026-04-02 (line 6). If right, --confirmed takes them.",
                "Left out 1 value of tMinC, not plausible: -52 °C on 2026-04-05 (line 8).", "1 trace of rain, too little to measure: 0 mm.", "1 gap:", "2026-04-03 to 2026-04-04 (2 days)"],
            part => Assert.Contains(part, told.Out, StringComparison.Ordinal));
        Assert.Contains(preview ? "Nothing was stored." : "3 new in the weather of green", told.Out, StringComparison.Ordinal);
        Assert.Equal(preview ? 1 : 0, bench.Run("book", "weather", "show", "--area", "green").Exit);
        Assert.Equal(0, Read(Elements, preview ? ["--preview", "--confirmed"] : ["--confirmed"]).Exit);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Json_has_the_same_with_the_source_and_how_long_gaps_are(bool preview)
    {
        var told = Read(Elements, preview ? ["--json", "--preview"] : ["--json", "--source", "the shed"]);
        Assert.Equal(1, told.Exit);
        Assert.False((bool)told.Json["ok"]!);
        Assert.Equal((preview ? "ghcn-daily" : "the shed", preview, preview ? 0 : 3), ((string)told.Json["source"]!, (bool)told.Json["preview"]!, (int)told.Json["added"]!));
        Assert.Equal((1, 2), ((int)told.Json["traces"]!, (int)told.Json["gaps"]![0]!["days"]!));
        Assert.Equal(["tMinC", "rainMm"], told.Json["leftOut"]!.AsArray().Select(l => (string)l!["field"]!));
        Assert.Equal((900, 6, "2026-04-02"), ((double)told.Json["leftOut"]![1]!["first"]![0]!["value"]!, (int)told.Json["leftOut"]![1]!["first"]![0]!["line"]!, (string)told.Json["leftOut"]![1]!["first"]![0]!["date"]!));
        Assert.Equal(1, (int)told.Json["dropped"]!["failed the station network's check"]!);
        Assert.Null(told.Json["attribution"]);
    }

    [Fact]
    public void A_morning_readers_days_are_moved_and_told_as_moved()
    {
        var told = Read("date,Min temp (C),Max temp (C),Rain (mm)\n2026-05-02,4,15,3\n2026-05-03,6,18,0\n", "--day-before");
        Assert.Equal(0, told.Exit);
        Assert.Contains("3 days, 2026-05-01 to 2026-05-03", told.Out, StringComparison.Ordinal);
        var shown = bench.Run("book", "weather", "show", "--area", "green").Lines;
        Assert.Contains(shown, l => l.StartsWith("2026-05-01         ·     15.0      3.0", StringComparison.Ordinal));
        Assert.Contains(shown, l => l.StartsWith("2026-05-02       4.0     18.0      0.0", StringComparison.Ordinal));
        Assert.Contains(shown, l => l.StartsWith("2026-05-03       6.0        ·        ·", StringComparison.Ordinal));
    }

    [Fact]
    public void Whose_data_it_is_is_told_where_its_licence_wants_that()
    {
        Assert.EndsWith("Weather data by Open-Meteo.com, licence CC BY 4.0.\n", Read(Service).Out, StringComparison.Ordinal);
        Assert.Contains("CC BY 4.0", (string)Read(Service, "--json", "--preview").Json["attribution"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_several_places_one_is_told()
    {
        var two = $"[{Service.Trim()},{Service.Trim().Replace("15.1", "16.1", StringComparison.Ordinal)}]";
        var asked = Read(two);
        Assert.Equal(1, asked.Exit);
        Assert.Contains("--place 1 to 2", asked.Error, StringComparison.Ordinal);
        Assert.Contains("16.1", Read(two, "--place", "2", "--preview").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Hours_are_refused()
    {
        var told = Read("date,Temp (C)\n2026-05-01 00:00,4\n2026-05-01 01:00,5\n");
        Assert.Equal((1, ""), (told.Exit, told.Out));
        Assert.Contains("hourly", told.Error, StringComparison.Ordinal);
        Assert.Contains("daily values", told.Error, StringComparison.Ordinal);
    }
}
