using Ical.Net;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The commands about the turf: weather in, turf, plan, today.</summary>
public sealed class TurfCommandTests
{
    private const string At = "2026-05-20T10:00+01:00";

    private static Bench Kept()
    {
        var bench = new Bench();
        var days = Path.Combine(Path.GetTempPath(), $"closemown-weather-{Guid.NewGuid():N}.csv");
        File.WriteAllLines(days, ["date,Min temp (C),Max temp (C),Rain (mm)", .. Enumerable.Range(0, 50).Select(d => $"{new DateOnly(2026, 4, 1).AddDays(d):yyyy-MM-dd},9,19,3")]);
        try
        {
            Assert.Equal(0, bench.Run("add", "area", "green", "--grass", "cool", "--m2", "200", "--lat", "51.5", "--at", "2026-04-01T08:00+01:00").Exit);
            Assert.Equal(0, bench.Run("add", "wish", "5mm", "weekdays=tue,fri", "--area", "green", "--at", "2026-04-01T08:10+01:00").Exit);
            var read = bench.Run("book", "weather", days, "--area", "green", "--at", At);
            Assert.Contains("50 new in the weather of green", read.Out, StringComparison.Ordinal);
            Assert.Contains("0 new", bench.Run("book", "weather", days, "--area", "green", "--at", At).Out, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(days);
        }
        for (var d = 0; d < 5; d++) bench.Run("add", "mow", "20", "min", "--cut", "5mm", "--area", "green", "--at", $"2026-05-{3 + (3 * d):00}T10:00+01:00");
        return bench;
    }

    [Fact]
    public void Turf_is_told_and_drawn_with_what_it_stands_at_and_what_a_mowing_would_take()
    {
        using var bench = Kept();
        var told = bench.Run("turf", "--draw", "--why", "--at", At);
        Assert.Equal(0, told.Exit);
        Assert.All((string[])["The standing height, in mm", "mown", "rain mm", "wished", "The turf stands at about", "would come off", "the label and local law decide", "Gelernter & Stowell 2005"], n => Assert.Contains(n, told.Out, StringComparison.Ordinal));
        Assert.All(told.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        var json = bench.Run("turf", "--json", "--at", At).Json["turf"]!;
        Assert.InRange((double)json["canopyMm"]!["mean"]!, 5, 9);
        Assert.Equal("recorded", (string)json["weather"]!);
    }

    [Fact]
    public void A_plan_is_told_and_its_calendar_can_be_read_back()
    {
        using var bench = Kept();
        var file = Path.Combine(Path.GetTempPath(), $"closemown-plan-{Guid.NewGuid():N}.ics");
        try
        {
            var told = bench.Run("plan", "--days", "21", "--calendar", file, "--at", At);
            Assert.Equal(0, told.Exit);
            Assert.Contains("Stand on it first", told.Out, StringComparison.Ordinal);
            var days = bench.Run("plan", "--days", "21", "--json", "--at", At).Json["plan"]!.AsArray();
            var mown = days.Where(d => (bool)d!["mow"]!).Select(d => (string)d!["date"]!).ToList();
            Assert.NotEmpty(mown);
            Assert.All(mown, d => Assert.Contains(DateOnly.Parse(d).DayOfWeek, (DayOfWeek[])[DayOfWeek.Tuesday, DayOfWeek.Friday]));
            var events = Calendar.Load(File.ReadAllText(file))!.Events.OrderBy(e => e.Uid).ToList();
            Assert.Equal(mown, events.Select(e => $"{e.Start!.Year:0000}-{e.Start.Month:00}-{e.Start.Day:00}"));
            Assert.All(events, e => Assert.False(e.Start!.HasTime));
            Assert.All(events, e => Assert.StartsWith("Mow green at", e.Summary, StringComparison.Ordinal));
            Assert.Contains("exists already", bench.Run("plan", "--calendar", file, "--at", At).Error, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void A_plan_can_be_asked_for_with_days_off_and_days_on()
    {
        using var bench = Kept();
        string First(params string[] more) => (string)bench.Run([.. (string[])["plan", "--days", "21", "--json", "--at", At], .. more]).Json["plan"]!.AsArray().First(d => (bool)d!["mow"]!)!["date"]!;
        var usual = First();
        Assert.NotEqual(usual, First("--off", usual));
        var days = bench.Run("plan", "--days", "21", "--json", "--at", At, "--on", usual).Json["plan"]!.AsArray();
        Assert.Equal(1, (double)days.Single(d => (string)d!["date"]! == usual)!["free"]!);
        var both = bench.Run("plan", "--at", At, "--on", usual, "--off", usual);
        Assert.Equal(2, both.Exit);
        Assert.Contains("Leave it in one of the two", both.Error, StringComparison.Ordinal);
        Assert.Contains("is no day", bench.Run("plan", "--at", At, "--on", "sometime").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Today_has_the_turf_too()
    {
        using var bench = Kept();
        Assert.Contains("The turf stands at about", bench.Run("today", "--at", At).Out, StringComparison.Ordinal);
        Assert.Equal("green", (string)bench.Run("today", "--json", "--at", At).Json["today"]!["turf"]![0]!["area"]!);
    }

    [Fact]
    public void A_days_weather_is_typed_as_it_is_said()
    {
        using var bench = Kept();
        Assert.Equal(0, bench.Run("add", "weather", "39F..59F", "rain", "0.1in", "yesterday", "--at", "2026-05-26T18:00+01:00").Exit);
        Assert.Equal(0, bench.Run("add", "weather", "4..15", "dry", "--at", "2026-05-26T18:00+01:00").Exit);
        var shown = bench.Run("book", "weather", "show", "--days", "2").Lines;
        Assert.Contains(shown, l => l.StartsWith("2026-05-25       3.9     15.0      2.5", StringComparison.Ordinal));
        Assert.Contains(shown, l => l.StartsWith("2026-05-26       4.0     15.0      0.0", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("turf --area gren", 1, "Did you mean \"green\"?")]
    [InlineData("turf --date soon", 1, "2026-05-03")]
    [InlineData("plan --days 100", 2, "1 to 60")]
    [InlineData("book weather get --area green", 1, "settings set weatherFetch on")]
    [InlineData("book weather missing.csv --area green", 1, "no file")]
    public void What_cannot_be_done_says_what_to_do(string typed, int exit, string says)
    {
        using var bench = Kept();
        var run = bench.Run(typed.Split(' '));
        Assert.Equal(exit, run.Exit);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
    }
}
