using Closemown.Advice;
using Closemown.Cli;
using Closemown.Quantities;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The canopy drawn over time.</summary>
public sealed class CanopyDrawingTests
{
    [Theory]
    [InlineData(20, 0, "█", "█")]
    [InlineData(10, 0, " ", "█")]
    [InlineData(15, 0, "▄", "█")]
    [InlineData(5, 0, " ", "▄")]
    [InlineData(0.6, 0.5, " ", "▁")]
    [InlineData(0.4, 0.5, " ", " ")]
    public void A_bar_of_two_rows_tells_its_amount_in_sixteenths_of_its_scale(double amount, double least, string upper, string lower)
    {
        var bars = new SmallBars([20, amount], 2);
        var canvas = new Canvas(2, 2);
        bars.Draw(canvas, 0, 0, amount, least, Tone.Plain);
        canvas.Put(0, 1, '|');
        canvas.Put(1, 1, '|');
        Assert.Equal(("to 20", $"{upper}|", $"{lower}|"), (bars.Scale, canvas.Lines((_, t) => t).First(), canvas.Lines((_, t) => t).Last()));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1.2, 2)]
    [InlineData(4.4, 5)]
    [InlineData(5.1, 10)]
    [InlineData(31, 50)]
    public void A_scale_ends_at_a_round_number_no_less_than_the_most(double most, double top) => Assert.Equal(top, new SmallBars([0, most], 2).Top);

    [Fact]
    public void The_wished_height_stays_visible_over_the_band()
    {
        // The band reaches from 4 to 6 mm all along, over the wish at 4.5.
        var lines = Drawn([.. Enumerable.Range(0, 30).Select(d => Day(d, 5, 0.6))], 4.5);
        var wish = Assert.Single(lines, l => l.EndsWith("wished", StringComparison.Ordinal));
        var days = wish[8..38];
        Assert.All(Enumerable.Range(0, 30), c => Assert.Equal(c % 2 == 0 ? '╌' : '░', days[c]));
    }

    [Fact]
    public void Rain_and_what_the_weather_draws_are_bars_with_their_scale()
    {
        var lines = Drawn([.. Enumerable.Range(0, 10).Select(d => Day(d, 5, 0.3) with { RainMm = d == 3 ? 18 : 0, Et0Mm = 4 })], 4.5);
        var rain = Array.FindIndex(lines, l => l.StartsWith("rain mm", StringComparison.Ordinal));
        Assert.Equal("           █", lines[rain].Replace("rain mm", "       ", StringComparison.Ordinal));
        Assert.Contains("▆", lines[rain - 1], StringComparison.Ordinal);
        Assert.EndsWith("to 20", lines[rain - 1], StringComparison.Ordinal);
        var drawn = Array.FindIndex(lines, l => l.StartsWith("ET mm", StringComparison.Ordinal));
        Assert.Equal("ET mm   ██████████", lines[drawn]);
        Assert.EndsWith("to 5", lines[drawn - 1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80)]
    [InlineData(60)]
    public void However_many_days_are_asked_for_no_line_is_wider_than_the_screen(int width)
    {
        var lines = Drawn([.. Enumerable.Range(0, 67).Select(d => Day(d, 5, 0.3))], 4.5, width);
        Assert.All(lines, l => Assert.InRange(l.Length, 0, width));
        Assert.Contains(lines, l => l.Contains("today", StringComparison.Ordinal));
    }

    private static CanopyDay Day(int d, double mm, double sd) => new(new DateOnly(2026, 5, 25).AddDays(d), mm, sd, d % 3 == 0, 0, 3, 0, d >= 7);

    private static string[] Drawn(IReadOnlyList<CanopyDay> days, double wish, int width = 80)
    {
        using var output = new StringWriter();
        return [.. new CanopyDrawing(new Screen(output, output) { Width = width }, WritingStyle.Plain).Lines(days, wish)];
    }
}
