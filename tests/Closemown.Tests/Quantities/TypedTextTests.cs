using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>What may be typed. Factors of units: NIST SP 811 (2008) appendix B; the texts are of our own.</summary>
public sealed class TypedTextTests
{
    private static readonly WritingStyle Plain = WritingStyle.Plain;

    [Theory]
    [InlineData("5/32\"", 3.96875, LengthUnit.Inch)]
    [InlineData("5 / 32 in.", 3.96875, LengthUnit.Inch)]
    [InlineData("1 1/4 in", 31.75, LengthUnit.Inch)]
    [InlineData("1-1/4\"", 31.75, LengthUnit.Inch)]
    [InlineData("1¼ inches", 31.75, LengthUnit.Inch)]
    [InlineData("-1 1/4 in", -31.75, LengthUnit.Inch)]
    [InlineData("\u22121-1/4\u2033", -31.75, LengthUnit.Inch)]
    [InlineData("0.156\"", 3.9624, LengthUnit.Inch)]
    [InlineData(".156 in", 3.9624, LengthUnit.Inch)]
    [InlineData("+4 MM", 4, LengthUnit.Mm)]
    [InlineData("  4mm ", 4, LengthUnit.Mm)]
    [InlineData("2 thou", 0.0508, LengthUnit.Thou)]
    [InlineData("2 mil", 0.0508, LengthUnit.Thou)]
    [InlineData("25 \u00B5m", 0.025, LengthUnit.Um)]
    [InlineData("25 \u03BCm", 0.025, LengthUnit.Um)]
    [InlineData("25um", 0.025, LengthUnit.Um)]
    [InlineData("1.8 hundredths of a mm", 0.018, LengthUnit.HundredthMm)]
    [InlineData("0.4 cm", 4, LengthUnit.Cm)]
    [InlineData("half an inch", 12.7, LengthUnit.Inch)]
    [InlineData("1/2", 0.5, LengthUnit.Mm)]
    [InlineData("4", 4, LengthUnit.Mm)]
    [InlineData("4e-1", 0.4, LengthUnit.Mm)]
    public void A_length(string typed, double mm, LengthUnit unit)
    {
        Length length = Length.Parse(typed, Plain, LengthUnit.Mm);
        Assert.Equal((mm, unit, typed), (length.Mm, length.Unit, length.Typed));
    }

    [Fact]
    public void A_bare_fraction_takes_inches_as_default() => Assert.Equal(3.96875, Length.Parse("5/32", Plain, LengthUnit.Inch).Mm);

    [Fact]
    public void A_mil_is_told_to_be_a_thousandth_of_an_inch()
    {
        Assert.Contains("thousandth of an inch", Length.Parse("2 mil", Plain).Note!, StringComparison.Ordinal);
        Assert.Null(Length.Parse("2 thou", Plain).Note);
    }

    [Theory]
    [InlineData("4,0 mm", 4)]
    [InlineData("0,156 in", 3.9624)]
    [InlineData(",5 mm", 0.5)]
    public void A_decimal_comma(string typed, double mm) => Assert.Equal(mm, Length.Parse(typed, WritingStyle.CommaMetric).Mm);

    [Theory]
    [InlineData("3 clicks", 3, ClickStep.Click)]
    [InlineData("1 click", 1, ClickStep.Click)]
    [InlineData("2.5 clicks", 2.5, ClickStep.Click)]
    [InlineData("half a click", 0.5, ClickStep.Click)]
    [InlineData("1/2 click", 0.5, ClickStep.Click)]
    [InlineData("1½ clicks", 1.5, ClickStep.Click)]
    [InlineData("1 1/2 flats", 1.5, ClickStep.Flat)]
    [InlineData("two notches out", -2, ClickStep.Notch)]
    [InlineData("1 click in", 1, ClickStep.Click)]
    [InlineData("2 out", -2, ClickStep.Click)]
    [InlineData("-2", -2, ClickStep.Click)]
    [InlineData("no clicks", 0, ClickStep.Click)]
    [InlineData("0 clicks out", 0, ClickStep.Click)]
    public void Clicks_are_whole_or_half_steps(string typed, double count, ClickStep step)
    {
        Clicks clicks = Clicks.Parse(typed, Plain);
        Assert.Equal((count, step, typed), (clicks.Count, clicks.Step, clicks.Typed));
    }

    [Theory]
    [InlineData("2 min", 120)]
    [InlineData("90 s", 90)]
    [InlineData("1 h", 3600)]
    [InlineData("1:30", 5400)]
    [InlineData("1 h 20 min", 4800)]
    [InlineData("1h20min", 4800)]
    [InlineData("1.5 h", 5400)]
    [InlineData("20 minutes", 1200)]
    [InlineData("half an hour", 1800)]
    [InlineData("1 h .5 min", 3630)]
    [InlineData("3 weeks", 1814400)]
    [InlineData("15", 900)]
    public void A_duration(string typed, double seconds)
    {
        Duration duration = Duration.Parse(typed, Plain, DurationUnit.Minute);
        Assert.Equal((seconds, typed), (duration.Seconds, duration.Typed));
        Assert.Equal(seconds / 60, duration.Minutes);
        Assert.Equal(seconds / 3600, duration.Hours);
    }

    [Theory]
    [InlineData("4.8 km/h", 4.8 / 3.6)]
    [InlineData("4.8km/h", 4.8 / 3.6)]
    [InlineData("3 mph", 1.34112)]
    [InlineData("1.3 m/s", 1.3)]
    [InlineData("80 m/min", 80.0 / 60)]
    public void A_speed(string typed, double metresPerSecond) =>
        Assert.Equal(metresPerSecond, Speed.Parse(typed, Plain).MetresPerSecond, 1e-15);

    [Theory]
    [InlineData("2200 rpm")]
    [InlineData("2200 /min")]
    [InlineData("2200 1/min")]
    [InlineData("2200")]
    public void A_speed_of_rotation(string typed) => Assert.Equal(2200, Rotation.Parse(typed, Plain).PerMinute);

    [Theory]
    [InlineData("68F")]
    [InlineData("68 °F")]
    [InlineData("20 °C")]
    [InlineData("20C")]
    public void A_temperature(string typed) => Assert.Equal(20, Temperature.Parse(typed, Plain).Celsius);

    [Theory]
    [InlineData("120 m2", 120)]
    [InlineData("120 m²", 120)]
    [InlineData("1300 sq ft", 120.773952)]
    [InlineData("1300 sq. ft.", 120.773952)]
    [InlineData("1300 ft2", 120.773952)]
    public void An_area(string typed, double squareMetres) => Assert.Equal(squareMetres, Area.Parse(typed, Plain).SquareMetres);

    [Theory]
    [InlineData("80 gsm")]
    [InlineData("80 g/m2")]
    [InlineData("80 g/m²")]
    public void A_paper_weight(string typed) => Assert.Equal(80, Grammage.Parse(typed, Plain).Gsm);

    [Theory]
    [InlineData("12 l", 12)]
    [InlineData("12 litres", 12)]
    [InlineData("500 ml", 0.5)]
    public void A_volume(string typed, double litres) => Assert.Equal(litres, Volume.Parse(typed, Plain).Litres);

    [Theory]
    [InlineData("1.5 g/m2", 1.5)]
    [InlineData("15 kg/ha", 1.5)]
    [InlineData("1 kg/m²", 1000)]
    public void What_is_spread_on_a_surface(string typed, double gramsPerSquareMetre) => Assert.Equal(gramsPerSquareMetre, SpreadRate.Parse(typed, Plain).GramsPerSquareMetre);

    [Theory]
    [InlineData("1/4 turn", 0.25)]
    [InlineData("-1 1/2 turns", -1.5)]
    [InlineData("90°", 0.25)]
    [InlineData("half a turn", 0.5)]
    public void Turns_of_a_screw(string typed, double turns) => Assert.Equal(turns, Turns.Parse(typed, Plain).Count);

    [Theory]
    [InlineData("11", 11)]
    [InlineData("-0.25", -0.25)]
    [InlineData("1/4", 0.25)]
    [InlineData("33 %", 0.33)]
    public void A_plain_number(string typed, double value) => Assert.Equal(value, Number.Parse(typed, Plain).Value);
}
