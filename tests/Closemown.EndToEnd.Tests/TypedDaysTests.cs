using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>Days as people say them, and what is kept where they leave something out. It is Monday, 30 November 2026.</summary>
public sealed class TypedDaysTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 10, 0, 0, TimeSpan.Zero);

    private static Inside Started()
    {
        var inside = new Inside(Now);
        Assert.Equal("", inside.Type("add area green cool --at 2026-05-01").Error);
        Assert.Equal("", inside.Type("new --unit mower --at 2026-05-01").Error);
        return inside;
    }

    [Theory]
    [InlineData("-5..4 --date 2026-11-29", "weather of green on 29 Nov 2026: -5 °C to 4 °C.")]
    [InlineData("--date=2026-11-29 -5..4", "weather of green on 29 Nov 2026: -5 °C to 4 °C.")]
    [InlineData("-5..4 --date yesterday", "weather of green on 29 Nov 2026: -5 °C to 4 °C.")]
    [InlineData("--tMinC -5 --tMaxC 4 --date \"29 Nov\"", "weather of green on 29 Nov 2026: -5 °C to 4 °C.")]
    public void F22_A_field_of_the_weather_may_be_an_option(string typed, string told)
    {
        using var inside = Started();
        var ran = inside.Type("add weather " + typed);
        Assert.Equal(("", $"Taken: {told}\n"), (ran.Error, ran.Out));
    }

    [Fact]
    public void F21_A_forecast_older_than_the_one_that_is_kept_is_said_not_to_be_kept()
    {
        using var inside = Started();
        Assert.Equal(0, inside.Type("add weather 2026-07-06 18..33 forecast=yes --at 2026-07-06T08:00").Exit);
        var ran = inside.Type("add weather 2026-07-06 18..33 dry forecast=yes --at 2026-07-05T08:00");
        Assert.Equal(1, ran.Exit);
        Assert.Contains("A later forecast for that day is in the book: this one is not kept.", ran.Error, StringComparison.Ordinal);
        Assert.Equal(0, inside.Type("book verify").Exit);
    }

    [Theory]
    [InlineData("1 Dec -3..4 forecast", "1 Dec 2026: -3 °C to 4 °C, a forecast")]
    [InlineData("1 Dec -3..4", "1 Dec 2026: -3 °C to 4 °C, a forecast")]
    [InlineData("tomorrow -3..4", "1 Dec 2026: -3 °C to 4 °C, a forecast")]
    [InlineData("-3..4 date=tomorrow", "1 Dec 2026: -3 °C to 4 °C, a forecast")]
    [InlineData("2026-12-03 -3..4", "3 Dec 2026: -3 °C to 4 °C, a forecast")]
    [InlineData("fri -3..4 forecast", "4 Dec 2026: -3 °C to 4 °C, a forecast")]
    [InlineData("fri -3..4", "27 Nov 2026: -3 °C to 4 °C")]
    [InlineData("29 Nov -3..4", "29 Nov 2026: -3 °C to 4 °C")]
    [InlineData("2 Jan -3..4 forecast", "2 Jan 2027: -3 °C to 4 °C, a forecast")]
    public void F23_The_weathers_day_is_the_nearest_and_one_to_come_is_a_forecast(string typed, string told)
    {
        using var inside = Started();
        var ran = inside.Type("add weather " + typed);
        Assert.Equal(("", $"Taken: weather of green on {told}.\n"), (ran.Error, ran.Out));
    }

    [Fact]
    public void F23_A_day_to_come_is_no_record()
    {
        using var inside = Started();
        var ran = inside.Type("add weather tomorrow -3..4 forecast=no");
        Assert.Equal(1, ran.Exit);
        Assert.Contains("1 Dec 2026 has not been yet", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("add mow 20min fri", "2026-11-27T12:00:00Z")]
    [InlineData("add mow 20min friday --at 9:30", "2026-11-27T09:30:00Z")]
    [InlineData("add mow 20min mon", "2026-11-30T10:00:00Z")]
    [InlineData("add water 5mm 9 Nov", "2026-11-09T12:00:00Z")]
    [InlineData("add mow 20min --at \"9 Nov\"", "2026-11-09T12:00:00Z")]
    [InlineData("add mow 20min --at \"9 Nov 14:30\"", "2026-11-09T14:30:00Z")]
    [InlineData("add mow 20min --at \"fri 14:30\"", "2026-11-27T14:30:00Z")]
    [InlineData("add mow 20min --at yesterday", "2026-11-29T12:00:00Z")]
    [InlineData("add contact none light sun", "2026-11-30T10:00:00Z")]      // read in the sun, not last Sunday
    public void F23_What_was_done_lies_behind(string typed, string at)
    {
        using var inside = Started();
        Assert.Equal("", inside.Type(typed).Error);
        Assert.Equal(at, (string)inside.Last["at"]!);
    }

    [Theory]
    [InlineData("add mow 20min tomorrow", "1 Dec 2026 lies ahead", "2025-12-01")]
    [InlineData("add mow 20min 1 Dec", "1 Dec 2026 lies ahead", "2025-12-01")]
    [InlineData("add weather 15..4", "tMinC, 15, is above tMaxC, 4", "4..15")]
    [InlineData("add weather 3..55", "tMaxC is doubtful and was not kept", "--confirm tMaxC")]
    public void F23_What_cannot_be_meant_is_refused_with_a_remedy(string typed, string says, string remedy)
    {
        using var inside = Started();
        var ran = inside.Type(typed);
        Assert.Equal(1, ran.Exit);
        Assert.Contains(says, ran.Error, StringComparison.Ordinal);
        Assert.Contains(remedy, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void F24_The_one_area_of_the_book_is_the_one_that_was_mown()
    {
        using var inside = Started();
        Assert.Equal("Taken: green mown for 20 min.\n", inside.Type("add mow 20min").Out);
        Assert.Equal("green", (string)inside.Last["area"]!);
        inside.Type("add area lawn cool");
        Assert.Contains("It counts for none of the areas", inside.Type("add mow 20min").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void F25_A_correction_keeps_the_time_of_what_it_corrects_unless_another_is_given()
    {
        using var inside = Started();
        inside.Type("add gauge 5.1 5.2 --at 2026-11-01T09:00Z");
        var wrong = (string)inside.Last["id"]!;
        JsonObject Correction(double right) => inside.Run("book", "list", "--json").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => JsonNode.Parse(l)!.AsObject()).Single(e => (string?)e["voids"] == wrong && (double?)e["rightMm"] == right);
        var ran = inside.Run("add", "gauge", "5.1", "5.3", "--voids", wrong);
        Assert.Contains("It replaces the other and keeps its time, 1 Nov 2026, 09:00.", ran.Out, StringComparison.Ordinal);
        Assert.Equal("2026-11-01T09:00:00Z", (string)Correction(5.3)["at"]!);
        // Corrected again before it was looked at: the second word counts, whatever its id.
        inside.Run("add", "gauge", "5.1", "5.35", "--voids", wrong);
        Assert.Equal("2026-11-01T09:00:00.001Z", (string)Correction(5.35)["at"]!);
        ran = inside.Run("add", "gauge", "5.1", "5.4", "--voids", wrong, "--at", "2026-11-02T09:00Z");
        Assert.Contains("It replaces the other; its time is 2 Nov 2026, 09:00.", ran.Out, StringComparison.Ordinal);
        Assert.Equal("2026-11-02T09:00:00Z", (string)Correction(5.4)["at"]!);
    }

    [Fact]
    public void F26_Turf_plan_and_today_name_the_same_next_mowing_however_many_days_are_shown()
    {
        using var inside = new Inside(new(2026, 6, 10, 8, 0, 0, TimeSpan.Zero));
        inside.Type("add area green cool 120m2 lat=51.5 --at 2026-05-01");
        for (var day = 1; day <= 40; day += 3) inside.Type($"add mow 20min green cut 5mm --at {new DateOnly(2026, 5, 1).AddDays(day):yyyy-MM-dd}");
        inside.Type("add wish green 4mm");
        string? First(int days) => (string?)inside.Type($"plan --days {days} --json").Json["plan"]!.AsArray().FirstOrDefault(d => (bool)d!["mow"]!)?["date"];
        string? Reached(int days) => (string?)inside.Type($"plan --days {days} --json").Json["wish"]!["reached"];
        var today = (string?)inside.Type("today --json").Json["today"]!["turf"]![0]!["nextMow"]!["date"];
        Assert.NotNull(today);
        Assert.All((int[])[8, 14, 21, 28], days => Assert.Equal((today, Reached(28)), (First(days), Reached(days))));
        var day2 = DateOnly.Parse(today, System.Globalization.CultureInfo.InvariantCulture);
        var said = day2 == new DateOnly(2026, 6, 10) ? "Mow today" : $"Next mowing {day2.ToString("ddd d MMM", System.Globalization.CultureInfo.InvariantCulture)}";
        Assert.Contains(said, inside.Type("turf").Out, StringComparison.Ordinal);
        Assert.Contains(said, inside.Type("plan --days 10").Out, StringComparison.Ordinal);
    }
}
