using System.IO.Compression;
using System.Text;
using Closemown.Entries;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Weather files: recognised by what is in them, units converted, missing kept apart from none.</summary>
public sealed class WeatherFileTests
{
    private const string Ghcn = """
        USC00026481,20200101,TMAX,156,,,7,0700
        USC00026481,20200101,TMIN,44,,,7,0700
        USC00026481,20200101,PRCP,0,T,,7,0700
        USC00026481,20200102,TMAX,999,,X,7,0700
        USC00026481,20200102,TMIN,21,,,7,0700
        USC00026481,20200102,MDPR,300,,,7,0700
        USC00026481,20200105,PRCP,102,,,7,0700
        USC00026481,20200105,SNOW,25,,,7,0700
        USC00026481,20200105,AWND,31,,,7,
        """;

    // The shape of the service's own export; licence CC BY 4.0.
    private const string OpenMeteo = """
        latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation
        40.738136,-74.04254,27.0,-14400,America/New_York,GMT-4

        time,temperature_2m_max (°F),temperature_2m_min (°C),precipitation_sum (inch),wind_speed_10m_mean (km/h),sunshine_duration (s)
        2025-10-08,71.2,14.5,0.2,18.0,7200
        2025-10-09,59.2,8.5,NaN,NaN,0.0
        """;

    private static WeatherFileRead Read(string text, WeatherFileOptions? options = null) => WeatherFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), options);

    private static List<Entry> Days(WeatherFileRead read) => [.. read.Days.Entries("green", read.Source, null, d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero))];

    [Fact]
    public void Elements_by_row_come_in_tenths_and_failed_ones_do_not_come()
    {
        var read = Read(Ghcn);
        var days = Days(read);
        Assert.Equal("GHCN-Daily, one element a row", read.Layout);
        Assert.Equal(["2020-01-01", "2020-01-02", "2020-01-05"], days.Select(d => d[WeatherEntry.Date]));
        Assert.Equal((15.6, 4.4, 0.0), (days[0][WeatherEntry.TMaxC], days[0][WeatherEntry.TMinC], days[0][WeatherEntry.RainMm]));
        Assert.Equal((null, 2.1, null), (days[1][WeatherEntry.TMaxC], days[1][WeatherEntry.TMinC], days[1][WeatherEntry.RainMm]));
        Assert.Equal((10.2, 3.1, 10.0), (days[2][WeatherEntry.RainMm], days[2][WeatherEntry.WindMs], days[2][WeatherEntry.WindHeightM]));
        Assert.Equal(1, read.Days.Dropped["failed the station network's check"].Count);
        Assert.Equal(1, read.Days.Dropped["rain summed over several days"].Count);
        Assert.Equal([(new DateOnly(2020, 1, 3), new DateOnly(2020, 1, 4))], read.Days.Gaps());
        Assert.Contains(read.Days.Notes, n => n.Contains("--day-before", StringComparison.Ordinal));
        Assert.Equal(1, read.Days.Traces);
        Assert.Equal(1, read.Days.ReadInTheMorning().Traces);
        Assert.Empty(read.Days.ReadInTheMorning().Notes);
    }

    [Fact]
    public void A_header_and_gzip_change_nothing()
    {
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionMode.Compress, leaveOpen: true)) zip.Write(Encoding.UTF8.GetBytes("ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n" + Ghcn));
        packed.Position = 0;
        Assert.Equal(Days(Read(Ghcn)).Select(e => e.Json), Days(WeatherFile.Read(packed)).Select(e => e.Json));
    }

    [Fact]
    public void Units_in_the_header_are_read_and_missing_is_not_none()
    {
        var read = Read(OpenMeteo);
        var days = Days(read);
        Assert.Equal("Open-Meteo CSV", read.Layout);
        Assert.Equal(21.8, days[0][WeatherEntry.TMaxC]!.Value, 0.03);
        Assert.Equal(5.08, days[0][WeatherEntry.RainMm]!.Value, 1e-9);
        Assert.Equal((5.0, 10.0, 2.0), (days[0][WeatherEntry.WindMs], days[0][WeatherEntry.WindHeightM], days[0][WeatherEntry.SunH]));
        Assert.Equal((null, 0.0), (days[1][WeatherEntry.RainMm], days[1][WeatherEntry.SunH]));
    }

    [Fact]
    public void Json_and_csv_of_the_same_days_say_the_same()
    {
        const string Json = """
            {"latitude":40.7,"longitude":-74.0,"utc_offset_seconds":-14400,"daily_units":{"time":"iso8601","temperature_2m_max":"°F","temperature_2m_min":"°C","precipitation_sum":"inch","wind_speed_10m_mean":"km/h","sunshine_duration":"s"},
             "daily":{"time":["2025-10-08","2025-10-09"],"temperature_2m_max":[71.2,59.2],"temperature_2m_min":[14.5,8.5],"precipitation_sum":[0.2,null],"wind_speed_10m_mean":[18.0,null],"sunshine_duration":[7200,0.0]}}
            """;
        Assert.Equal(Days(Read(OpenMeteo)).Select(e => e.Json), Days(Read(Json)).Select(e => e.Json));
    }

    [Fact]
    public void A_table_of_ones_own_with_a_title_commas_and_semicolons()
    {
        var days = Days(Read("\uFEFFMy station\nDatum;Min temp (°C);Max temp (°F);Rain (in);Wind (mph)\n01.05.2026;4,5;59;0,1;10\n02.05.2026;--;61;;NaN\n"));
        Assert.Equal((4.5, 15.0, 2.54), (days[0][WeatherEntry.TMinC], days[0][WeatherEntry.TMaxC], days[0][WeatherEntry.RainMm]));
        Assert.Equal(4.4704, days[0][WeatherEntry.WindMs]!.Value, 1e-4);
        Assert.Equal((null, null), (days[1][WeatherEntry.TMinC], days[1][WeatherEntry.RainMm]));
    }

    [Fact]
    public void Columns_may_be_told()
    {
        var options = new WeatherFileOptions { Columns = new Dictionary<string, string> { ["tMinC"] = "a:C", ["tMaxC"] = "b:F", ["rainMm"] = "c:mm" }, Dates = "dmy" };
        var day = Assert.Single(Days(Read("date,a,b,c\n03/04/2026,5,68,1\n", options)));
        Assert.Equal(("2026-04-03", 5.0, 20.0, 1.0), (day[WeatherEntry.Date], day[WeatherEntry.TMinC], day[WeatherEntry.TMaxC], day[WeatherEntry.RainMm]));
    }

    [Theory]
    [InlineData("date,rain\n2026-05-01,3\n", "does not say its unit")]
    [InlineData("date,Rain (furlong)\n2026-05-01,3\n", "no unit known")]
    [InlineData("date,Rain (mm)\n03/04/2026,3\n", "day first or month first")]
    [InlineData("x,y\n1,2\n", "column of days")]
    [InlineData("date,colour\n2026-05-01,3\n", "No column is known")]
    [InlineData("<!DOCTYPE html><html></html>", "web page")]
    [InlineData("", "empty")]
    [InlineData("{\"daily_units\":{},\"daily\":{\"time\":[\"2025-10-08\"", "cut off")]
    [InlineData("{\"daily\":{\"time\":[\"2025-10-08\"]}}", "units")]
    [InlineData("{\"daily_units\":{\"precipitation_sum\":\"pt\"},\"daily\":{\"time\":[\"2025-10-08\"],\"precipitation_sum\":[1]}}", "\"pt\"")]
    [InlineData("{\"daily_units\":{\"precipitation_sum\":\"mm\"},\"daily\":{\"time\":[\"2025-10-08\",\"2025-10-09\"],\"precipitation_sum\":[1]}}", "1 values for 2 days")]
    [InlineData("STATION,DATE,NAME,PRCP,TMAX,TMIN\nUSW00014739,2024-07-01,\"BOSTON, MA US\",0.1,77,60\n", "does not say its units")]
    [InlineData("US1,20200101\n", "column of days")]
    public void What_cannot_be_read_says_why_and_what_to_do(string text, string says)
    {
        var fault = Assert.Throws<WeatherException>(() => Days(Read(text)));
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Remedy);
    }

    [Theory]
    [InlineData("standard", 25.0, 2.54)]
    [InlineData("metric", 77.0, 0.1)]
    public void A_daily_summary_is_read_in_the_units_told(string units, double tMax, double rain)
    {
        const string Text = "\"STATION\",\"DATE\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"TMAX\",\"TMIN\"\n\"USW00014739\",\"2024-07-01\",\"BOSTON, MA US\",\"0.1\",\",,W,2400\",\"77\",\"60\"\n";
        if (units == "metric")
        {
            Assert.Contains("over 60", Assert.Throws<WeatherException>(() => Read(Text, new() { Units = units })).Message, StringComparison.Ordinal);
            return;
        }
        var day = Assert.Single(Days(Read(Text, new() { Units = units })));
        Assert.Equal((tMax, rain), (Math.Round(day[WeatherEntry.TMaxC]!.Value, 6), day[WeatherEntry.RainMm]));
    }

    [Fact]
    public void A_value_that_is_not_plausible_takes_none_of_the_others_with_it()
    {
        var read = Read("date,Rain (mm),Min temp (C)\n2026-05-01,1900,4\n");
        var day = Assert.Single(Days(read));
        Assert.Equal((null, 4.0), (day[WeatherEntry.RainMm], day[WeatherEntry.TMinC]));
        var left = Assert.Single(read.Days.LeftOut);
        Assert.Equal(("rainMm", true, 1), (left.Field, left.CanBe, left.Count));
        Assert.Equal([(new DateOnly(2026, 5, 1), 1900.0, 2)], left.First);
    }

    [Fact]
    public void Values_left_out_are_told_by_field_and_a_day_without_any_other_is_a_gap()
    {
        var read = Read("date,Rain (mm),Wind (m/s)\n2026-05-01,400,2\n2026-05-02,500,\n2026-05-03,600,200\n2026-05-04,700,1\n2026-05-05,0,1\n");
        Assert.Equal(["2026-05-01", "2026-05-04", "2026-05-05"], Days(read).Select(d => d[WeatherEntry.Date]));
        Assert.Equal([("rainMm", true, 4), ("windMs", false, 1)], read.Days.LeftOut.Select(l => (l.Field, l.CanBe, l.Count)));
        Assert.Equal([2, 3, 4], read.Days.LeftOut.First().First.Select(v => v.Line));
        Assert.Equal(3, read.Days.Count);
        Assert.Equal([(new DateOnly(2026, 5, 2), new DateOnly(2026, 5, 3))], read.Days.Gaps());
    }

    [Fact]
    public void A_morning_readers_greatest_temperature_and_rain_are_of_the_day_before_and_the_least_is_of_the_day_of_reading()
    {
        var read = Read("date,Min temp (C),Max temp (C),Rain (mm)\n2026-05-02,4,15,3\n2026-05-03,6,18,0\n");
        var days = Days(read with { Days = read.Days.ReadInTheMorning() });
        Assert.Equal(
            [("2026-05-01", null, 15.0, 3.0), ("2026-05-02", 4.0, 18.0, 0.0), ("2026-05-03", 6.0, null, null)],
            days.Select(d => (d[WeatherEntry.Date], d[WeatherEntry.TMinC], d[WeatherEntry.TMaxC], d[WeatherEntry.RainMm])));
    }

    [Fact]
    public void The_same_file_makes_the_same_entries_and_another_value_another_id()
    {
        var (one, two, other) = (Days(Read(OpenMeteo)), Days(Read(OpenMeteo)), Days(Read(OpenMeteo.Replace("14.5", "14.6", StringComparison.Ordinal))));
        Assert.Equal(one.Select(e => e.Json), two.Select(e => e.Json));
        Assert.NotEqual(one[0].Id, other[0].Id);
        Assert.Equal(one[1].Id, other[1].Id);
        Assert.Equal(7, one[0].Id.Version);
    }
}
