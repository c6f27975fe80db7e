using System.Globalization;
using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Civil days over the change to and from summer time.</summary>
/// <remarks>
/// The United Kingdom changes at 01:00 UTC on the last Sundays of March and October (The Summer Time Order 2002, S.I. 2002/262); the United States at 02:00 local time on the
/// second Sunday of March and the first of November (Energy Policy Act of 2005, section 110). Both from memory.
/// </remarks>
public sealed class CivilDayTests
{
    private const string London = "Europe/London", NewYork = "America/New_York";

    [Theory]
    [InlineData(London, "2026-03-28", 24)]
    [InlineData(London, "2026-03-29", 23)]
    [InlineData(London, "2026-10-25", 25)]
    [InlineData(London, "2026-10-26", 24)]
    [InlineData(NewYork, "2026-03-08", 23)]
    [InlineData(NewYork, "2026-11-01", 25)]
    public void A_day_of_the_change_is_an_hour_shorter_or_longer(string zone, string day, int hours)
    {
        var midnight = DateTime.Parse(day, CultureInfo.InvariantCulture);
        Assert.Equal(hours, (CivilDay.At(midnight.AddDays(1), zone, default) - CivilDay.At(midnight, zone, default)).TotalHours);
    }

    [Theory]
    [InlineData("2026-03-28T23:59:00Z", "2026-03-28 23:59")]
    [InlineData("2026-03-29T00:59:00Z", "2026-03-29 00:59")]
    [InlineData("2026-03-29T01:00:00Z", "2026-03-29 02:00")]
    [InlineData("2026-03-29T23:30:00Z", "2026-03-30 00:30")]
    [InlineData("2026-10-24T23:30:00Z", "2026-10-25 00:30")]
    [InlineData("2026-10-25T00:59:00Z", "2026-10-25 01:59")]
    [InlineData("2026-10-25T01:00:00Z", "2026-10-25 01:00")]
    [InlineData("2026-10-25T23:59:00Z", "2026-10-25 23:59")]
    public void An_instant_belongs_to_the_day_of_the_clock_on_the_wall(string instant, string local) =>
        Assert.Equal(DateTime.Parse(local, CultureInfo.InvariantCulture), CivilDay.LocalTime(DateTimeOffset.Parse(instant, CultureInfo.InvariantCulture), London));

    [Fact]
    public void A_time_that_is_skipped_is_as_much_later_and_one_that_comes_twice_is_the_first()
    {
        Assert.Equal(new(2026, 3, 29, 2, 30, 0, TimeSpan.FromHours(1)), CivilDay.At(new(2026, 3, 29, 1, 30, 0), London, default));
        var twice = CivilDay.At(new(2026, 10, 25, 1, 30, 0), London, default);
        Assert.Equal((new DateTime(2026, 10, 25, 0, 30, 0), TimeSpan.FromHours(1)), (twice.UtcDateTime, twice.Offset));
    }

    [Theory]
    [InlineData(London)]
    [InlineData(NewYork)]
    [InlineData("Africa/Cairo")]          // skips midnight itself
    [InlineData("Australia/Lord_Howe")]   // by half an hour
    [InlineData("Pacific/Auckland")]
    public void No_day_of_a_year_is_lost_or_told_twice(string zone)
    {
        var area = new TurfArea { Name = "green", Zone = zone };
        var days = Enumerable.Range(0, 365).Select(d => new DateOnly(2026, 1, 1).AddDays(d)).ToList();
        foreach (var hour in (int[])[0, 12, 23]) Assert.Equal(days, days.Select(d => area.LocalDate(area.At(d, TimeSpan.FromHours(hour), default))));
    }

    [Fact]
    public void Without_a_zone_an_entrys_own_offset_counts()
    {
        var at = new DateTimeOffset(2026, 3, 29, 23, 30, 0, TimeSpan.Zero);
        Assert.Equal(29, CivilDay.LocalTime(at, null).Day);
        Assert.Equal(30, CivilDay.LocalTime(at.ToOffset(TimeSpan.FromHours(1)), null).Day);
        Assert.Equal(TimeSpan.FromHours(2), CivilDay.At(new(2026, 3, 29), null, TimeSpan.FromHours(2)).Offset);
    }
}
