using System.Text;
using Closemown.Entries;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Hours are refused, whatever the layout; a table of days may carry a constant time of day.</summary>
public sealed class HourlyTests
{
    private const string Place = "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n40.7,-74.0,27.0,-14400,America/New_York,GMT-4\n\n";

    [Theory]
    [InlineData("date,Temp (C)\n2026-05-01 00:00,4\n2026-05-01 01:00,5\n", "line 3")]
    [InlineData("date,Temp (C)\n2026-05-01T00:00,4\n2026-05-01T01:00,4\n", "line 3")]
    [InlineData("date,Temp (C)\n2026-05-01T00:00:00+01:00,4\n2026-05-01T01:00:00+01:00,4\n", "01:00")]
    [InlineData("Datum;Temp (°C)\n01.05.2026 00:00;4,1\n01.05.2026 01:00;4,2\n", "hourly")]
    [InlineData("date,time,Temp (C)\n2026-05-01,00:00,4\n2026-05-01,00:30,4\n", "00:30")]
    [InlineData("Time,Date,Temp (C)\n1:00 PM,2026-05-01,4\n2:00 PM,2026-05-01,5\n", "14:00")]
    [InlineData("date,hour,Temp (C)\n2026-05-01,0,4\n2026-05-01,1,4\n", "hourly")]
    [InlineData("date,Temp (C)\n2026050100,4\n2026050101,4\n", "hourly")]
    [InlineData("date,Temp (C)\n202605010000,4\n202605010100,4\n", "hourly")]
    [InlineData("date,Temp (C)\n2026-05-01,4\n2026-05-01,5\n2026-05-01,6\n2026-05-02,4\n2026-05-02,4\n2026-05-02,4\n", "6 rows are of 2 days")]
    [InlineData("date,Rain (mm)\n2026-05-01,0\n2026-05-01,0\n2026-05-01,0\n", "3 rows are of 1 day.")]
    [InlineData("date,Temp (C)\n2026-05-01 06:00,4\n2026-05-02 18:00,4\n", "changing hours (06:00 to 18:00")]
    [InlineData("STATION,DATE,TMAX\nX,2024-07-01T00:00:00,25\nX,2024-07-01T01:00:00,26\n", "hourly")]
    [InlineData(Place + "time,temperature_2m (°C),precipitation (mm)\n2025-10-08T00:00,14.5,0\n2025-10-08T01:00,14.1,0\n", "hourly")]
    [InlineData(Place + "time,temperature_2m (°C),sunshine_duration (s)\n2025-10-08T00:00,14.5,0\n2025-10-08T01:00,14.1,0\n", "hourly")]
    [InlineData("{\"hourly_units\":{\"temperature_2m\":\"°C\"},\"hourly\":{\"time\":[\"2025-10-08T00:00\",\"2025-10-08T01:00\"],\"temperature_2m\":[4,5]}}", "hourly")]
    [InlineData("{\"daily_units\":{\"precipitation_sum\":\"mm\"},\"daily\":{\"time\":[\"2025-10-08T00:00\",\"2025-10-08T01:00\"],\"precipitation_sum\":[4,5]}}", "hourly")]
    public void Hours_are_refused_and_days_asked_for(string text, string says)
    {
        var fault = Assert.Throws<WeatherException>(() => Read(text, new() { Units = "metric" }));
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
        Assert.Contains("daily", fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("date,Temp (C)\n2026-04-03 00:00,4\n2026-04-04 00:00,5\n", null)]
    [InlineData("date,Temp (C)\n2026-04-03T00:00:00Z,4\n2026-04-04T00:00:00Z,5\n", null)]
    [InlineData("date,Temp (C)\n3/4/2026 09:00,4\n4/4/2026 09:00,5\n", "dmy")]
    [InlineData("date,Temp (C)\n4/3/2026 9:00 AM,4\n4/4/2026 9:00 AM,5\n", "mdy")]
    [InlineData("date,Temp (C)\n03.04.2026 08:00,4\n04.04.2026 09:00,5\n", null)]
    [InlineData("Date,High (C),Time,Temp (C)\n2026-04-03,9,14:10,4\n2026-04-04,9,23:10,5\n", null)]
    [InlineData("{\"daily_units\":{\"temperature_2m_mean\":\"°C\"},\"daily\":{\"time\":[\"2026-04-03T00:00\",\"2026-04-04T00:00\"],\"temperature_2m_mean\":[4,5]}}", null)]
    [InlineData(Place + "time,temperature_2m (°C)\n2026-04-03T00:00,1\n2026-04-03T01:00,2\n\ntime,temperature_2m_mean (°C)\n2026-04-03,4\n2026-04-04,5\n", null)]
    public void Days_with_one_time_of_day_are_days(string text, string? dates)
    {
        var days = Read(text, new() { Dates = dates }).Days.Entries("green", "x", null, d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero));
        Assert.Equal([("2026-04-03", 4.0), ("2026-04-04", 5.0)], days.Select(d => (d[WeatherEntry.Date], d[WeatherEntry.TMeanC])));
    }

    [Theory]
    [InlineData("00:00", "")]
    [InlineData("09:00", "Every row is of 09:00 --day-before")]
    [InlineData("23:00", "Every row is of 23:00")]
    public void What_a_constant_hour_means_is_said(string hour, string says)
    {
        var notes = string.Join('\n', Read($"date,Temp (C)\n2026-05-01 {hour},4\n2026-05-02 {hour},5\n", new()).Days.Notes);
        if (says.Length == 0) Assert.Equal("", notes);
        else Assert.Contains(says[.."Every row is of 09:00".Length], notes, StringComparison.Ordinal);
        Assert.Equal(says.Contains("--day-before", StringComparison.Ordinal), notes.Contains("--day-before", StringComparison.Ordinal));
    }

    [Fact]
    public void One_day_told_twice_is_a_slip_and_not_hours()
    {
        var read = Read("date,Temp (C)\n2026-05-01,4\n2026-05-02,5\n2026-05-02,6\n2026-05-03,6\n", new());
        Assert.Equal(3, read.Days.Count);
        Assert.Equal((1, 4), read.Days.Dropped["the day was there already with another value"]);
    }

    private static WeatherFileRead Read(string text, WeatherFileOptions options) => WeatherFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), options);
}
