using System.Text;
using Closemown.Entries;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Layouts of national services: their units, what stands for missing, and which day a value is of.</summary>
public sealed class StationFileTests
{
    // The header is that of the published files (NCEI, global summary of the day); the rows are invented.
    private const string GsodHeader = "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"DEWP\",\"DEWP_ATTRIBUTES\",\"SLP\",\"SLP_ATTRIBUTES\",\"STP\",\"STP_ATTRIBUTES\",\"VISIB\",\"VISIB_ATTRIBUTES\",\"WDSP\",\"WDSP_ATTRIBUTES\",\"MXSPD\",\"GUST\",\"MAX\",\"MAX_ATTRIBUTES\",\"MIN\",\"MIN_ATTRIBUTES\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"SNDP\",\"FRSHTT\"\n";

    // Two rows of stations 1358 and 3987: Deutscher Wetterdienst, daily values KL, CC BY 4.0.
    private const string DwdHeader = "STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK;SHK_TAG;  NM; VPM;  PM; TMK; UPM; TXK; TNK; TGK;eor\n";
    private const string Dwd1890 = "       1358;18900802;-999;-999;-999;    1;  19.8;   1;-999;-999;   4.3;  13.5;    -999;   17.4;   61.00;   22.5;   10.8;-999;eor\n";
    private const string Dwd2025 = "       3987;20250406;   10;  11.7;   3.6;    9;-999;   0;    9.600;   0;   3.6;   4.1; 1014.30;    4.0;   53.00;   10.0;   -1.0;   -4.8;eor\n";

    // Three rows of Bracknell Beaufort Park: Met Office (2019), MIDAS Open, UK daily temperature data, v201908; Open Government Licence v3.0.
    private const string Midas = """
        Conventions,G,BADC-CSV,1
        missing_value,G,NA
        coordinate_variable,ob_end_time,t
        long_name,max_air_temp,maximum air temperature,degC
        long_name,min_air_temp,minimum air temperature,degC
        data
        ob_end_time,id_type,id,ob_hour_count,version_num,met_domain_name,src_id,rec_st_ind,max_air_temp,min_air_temp,min_grss_temp,min_conc_temp
        1991-02-06 09:00:00,DCNN,5592,24,1,NCM,838,1001,1.9,-3.2,-8.5,-6.9
        1991-02-07 09:00:00,DCNN,5592,24,1,NCM,838,1001,-0.8,-8.8,-9.7,-8.8
        1991-02-08 09:00:00,DCNN,5592,24,1,NCM,838,1001,-4.4,-7.6,-5.7,-4.8
        end data
        """;

    [Theory]
    [InlineData("Conventions,G,BADC-CSV\ndata\nob_end_time\n0001-1-1\n")]
    [InlineData("\"STATION\",\"DATE\",\"PRCP\"\ns,0001-1-1T0+,2\n")]
    [InlineData("\"STATION\",\"DATE\",\"PRCP\"\ns,9999-12-31T0+,2\n")]
    public void A_day_before_any_station_or_far_ahead_is_no_day(string file)
    {
        try
        {
            Assert.Empty(Days(Read(file)));
        }
        catch (WeatherException e)
        {
            Assert.NotEmpty(e.Message);                    // nothing that could be read is left
        }
    }

    [Fact]
    public void A_summary_of_the_day_comes_in_fahrenheit_knots_and_inches()
    {
        var read = Read(GsodHeader
            + Gsod("2026-05-01", "  50.0", "  41.0", " 10.0", "  59.0", "  39.2", " 0.50", "G")
            + Gsod("2026-05-02", "  50.0", "9999.9", "999.9", "9999.9", "9999.9", "99.99", " ")
            + Gsod("2026-05-03", "  50.0", "9999.9", "999.9", "  59.0", "*", " 0.00", "I")
            + Gsod("2026-05-04", "  50.0", "9999.9", "999.9", "  59.0", "  39.2", " 0.00", "H"));
        var days = Days(read);
        Assert.Equal("gsod", read.Source);
        double? N(Entry e, Field<double> field) => e[field] is { } x ? Math.Round(x, 3) : null;
        Assert.Equal((10, 5, 15, 4, 12.7), (N(days[0], WeatherEntry.TMeanC), N(days[0], WeatherEntry.DewC), N(days[0], WeatherEntry.TMaxC), N(days[0], WeatherEntry.TMinC), N(days[0], WeatherEntry.RainMm)));
        // A knot is 1852 m an hour.
        Assert.Equal((5.144, 10), (N(days[0], WeatherEntry.WindMs), N(days[0], WeatherEntry.WindHeightM)));
        Assert.Equal((10, null, null, null, null), (N(days[1], WeatherEntry.TMeanC), N(days[1], WeatherEntry.DewC), N(days[1], WeatherEntry.TMaxC), N(days[1], WeatherEntry.RainMm), N(days[1], WeatherEntry.WindMs)));
        Assert.Equal([null, null], days.Skip(2).Select(d => d[WeatherEntry.RainMm]));
        Assert.Equal((2, 4), read.Days.Dropped["rain not reported, or seen and not measured"]);
        Assert.Contains(read.Days.Notes, n => n.Contains("UTC", StringComparison.Ordinal));
    }

    [Fact]
    public void Daily_values_with_semicolons_are_read_without_what_is_missing()
    {
        var old = Assert.Single(Days(Read(DwdHeader + Dwd1890)));
        Assert.Equal(("1890-08-02", 17.4, 22.5, 10.8, 61.0, 19.8), (old[WeatherEntry.Date], old[WeatherEntry.TMeanC], old[WeatherEntry.TMaxC], old[WeatherEntry.TMinC], old[WeatherEntry.RhPct], old[WeatherEntry.RainMm]));
        Assert.Equal((null, null, null), (old[WeatherEntry.WindMs], old[WeatherEntry.WindHeightM], old[WeatherEntry.SunH]));
        var now = Assert.Single(Days(Read(DwdHeader + Dwd2025)));
        Assert.Equal((4.0, 10.0, -1.0, 53.0, null, 9.6, 3.6, 10.0), (now[WeatherEntry.TMeanC], now[WeatherEntry.TMaxC], now[WeatherEntry.TMinC], now[WeatherEntry.RhPct], now[WeatherEntry.RainMm], now[WeatherEntry.SunH], now[WeatherEntry.WindMs], now[WeatherEntry.WindHeightM]));
        Assert.Contains("CC BY 4.0", Read(DwdHeader + Dwd2025).Attribution, StringComparison.Ordinal);
    }

    [Fact]
    public void A_maximum_read_at_nine_is_of_the_day_before_and_a_minimum_of_the_day()
    {
        var read = Read(Midas);
        Assert.True(read.Placed);
        Assert.Equal(
            [("1991-02-05", null, 1.9), ("1991-02-06", -3.2, -0.8), ("1991-02-07", -8.8, -4.4), ("1991-02-08", -7.6, null)],
            Days(read).Select(d => (d[WeatherEntry.Date], d[WeatherEntry.TMinC], d[WeatherEntry.TMaxC])));
        Assert.Contains("Open Government Licence", read.Attribution, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_halves_make_a_day_and_one_alone_does_not()
    {
        // Invented rows: night to the 2nd, day of the 2nd, night to the 3rd, the same as 24 hours, day of the 3rd.
        var read = Read(Temperature("2026-01-02 09:00:00,12,3,-2", "2026-01-02 21:00:00,12,7,1", "2026-01-03 09:00:00,12,8,0.5", "2026-01-03 09:00:00,24,8,0.5", "2026-01-03 21:00:00,12,6,2"));
        var days = Days(read);
        // The night to the 3rd was warmer than the day before it.
        Assert.Equal([("2026-01-02", null, 8.0), ("2026-01-03", 0.5, null)], days.Select(d => (d[WeatherEntry.Date], d[WeatherEntry.TMinC], d[WeatherEntry.TMaxC])));
        Assert.Equal(4, read.Days.Dropped["half a day without the other half"].Count);
    }

    [Fact]
    public void Rain_ends_on_the_stated_day_and_sums_over_days_are_put_on_none()
    {
        var read = Read("Conventions,G,BADC-CSV,1\nlong_name,prcp_amt,precipitation amount,mm\ndata\nob_date,id,id_type,version_num,met_domain_name,ob_end_ctime,ob_day_cnt,src_id,rec_st_ind,prcp_amt\n"
            + "2026-01-02 00:00:00,1,RAIN,1,WADRAIN,900,1,9,1001,4.2\n2026-01-05 00:00:00,1,RAIN,1,WADRAIN,900,3,9,1001,30\n2026-01-06 00:00:00,1,RAIN,0,WADRAIN,900,1,9,1001,5\n2026-01-07 00:00:00,1,RAIN,1,WADRAIN,900,1,9,1001,NA\nend data\n");
        Assert.Equal([("2026-01-01", 4.2)], Days(read).Select(d => (d[WeatherEntry.Date], d[WeatherEntry.RainMm])));
        Assert.Equal(1, read.Days.Dropped["rain summed over several days"].Count);
        Assert.Equal(1, read.Days.Dropped["a version that is not the checked one"].Count);
    }

    [Theory]
    [InlineData(GsodHeader + "\"A\",\"2026-05-01\"\n\"B\",\"2026-05-02\"\n", "another station (B)")]
    [InlineData("STATION,DATE,TMAX\nA,2026-05-01,250\nB,2026-05-02,250\n", "another station (B)")]
    [InlineData(GsodHeader, "No row")]
    [InlineData(DwdHeader + Dwd1890 + Dwd2025, "another station (3987)")]
    [InlineData("STATIONS_ID;MESS_DATUM;QN_9;TT_TU;RF_TU;eor\n 44;2007040100;5;8.1;55.0;eor\n", "hourly")]
    [InlineData("STATIONS_ID;MESS_DATUM;QN_9;XX;eor\n 44;20070401;5;8.1;eor\n", "No row")]
    [InlineData("Conventions,G,BADC-CSV,1\ndata\nob_time,air_temperature\n2026-01-01 01:00:00,4\nend data\n", "neither")]
    [InlineData("Conventions,G,BADC-CSV,1\ndata\nob_end_time,ob_hour_count,version_num,src_id,prcp_amt\n2026-01-01 01:00:00,1,1,9,4\nend data\n", "hourly")]
    [InlineData("Conventions,G,BADC-CSV,1\ndata\nob_end_time,ob_hour_count,version_num,src_id,max_air_temp\n2026-01-01 09:00:00,24,0,9,4\nend data\n", "version 1")]
    [InlineData("Conventions,G,BADC-CSV,1\nlong_name,max_air_temp,x,0.1 furlong\ndata\nob_end_time,ob_hour_count,version_num,src_id,max_air_temp\n2026-01-01 09:00:00,24,1,9,4\nend data\n", "0.1 furlong")]
    [InlineData("PK\u0003\u0004", "zip")]
    public void What_cannot_be_read_says_why(string text, string says)
    {
        var fault = Assert.Throws<WeatherException>(() => Read(text));
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Remedy);
    }

    [Theory]
    [InlineData("2026-01-03 09:00:00,24,8,1", "2026-01-03 1 · | 2026-01-02 · 8")]
    [InlineData("2026-01-03 00:00:00,24,8,1", "2026-01-02 1 8")]
    [InlineData("2026-01-03 21:00:00,24,8,1", "2026-01-03 1 8")]
    public void A_whole_day_is_put_by_when_it_ends(string row, string days) =>
        Assert.Equal(days.Split(" | ").Order(StringComparer.Ordinal), Days(Read(Temperature(row))).Select(d => $"{d[WeatherEntry.Date]} {d[WeatherEntry.TMinC]?.ToString("0") ?? "·"} {d[WeatherEntry.TMaxC]?.ToString("0") ?? "·"}"));

    private static string Temperature(params string[] rows) =>
        "Conventions,G,BADC-CSV,1\ndata\nob_end_time,ob_hour_count,max_air_temp,min_air_temp,version_num,src_id\n" + string.Concat(rows.Select(r => r + ",1,9\n")) + "end data\n";

    private static string Gsod(string date, string mean, string dew, string wind, string max, string min, string rain, string flag) =>
        $"\"99999999999\",\"{date}\",\"51.0\",\"-1.0\",\"84.0\",\"SOMEWHERE, UK\",\"{mean}\",\" 4\",\"{dew}\",\" 4\",\"1001.6\",\" 4\",\"999.9\",\" 0\",\" 17.1\",\" 4\",\"{wind}\",\" 4\",\"  8.9\",\"999.9\",\"{max}\",\" \",\"{(min == "*" ? "  39.2" : min)}\",\"{(min == "*" ? "*" : " ")}\",\"{rain}\",\"{flag}\",\"999.9\",\"000000\"\n";

    private static List<Entry> Days(WeatherFileRead read) => [.. read.Days.Entries("green", read.Source, null, d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero))];

    private static WeatherFileRead Read(string text) => WeatherFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));
}
