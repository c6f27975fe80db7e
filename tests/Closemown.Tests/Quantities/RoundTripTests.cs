using Closemown.Quantities;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>Laws: what is printed reads back, larger is never printed smaller, and no text makes a parser throw.</summary>
public sealed class RoundTripTests
{
    private static readonly Gen<WritingStyle> Style =
        Gen.OneOf(WritingStyle.Plain, WritingStyle.American, WritingStyle.British, WritingStyle.CommaMetric);

    private static readonly Gen<LengthUnit> AnyLengthUnit = Gen.Enum<LengthUnit>();

    private static readonly Gen<double> AnyDouble = Gen.OneOf(
        Gen.Double[-1000, 1000], Gen.Double[-1e-3, 1e-3], Gen.Double.Where(x => Math.Abs(x) < 1e290 && (x == 0 || Math.Abs(x) > 1e-290)));

    // Typed texts: pieces that parsers know, mixed with any characters.
    private static readonly Gen<string> AnyText = Gen.OneOf(
        Gen.String,
        Gen.OneOf(
            "1", "32", "/", " ", "-", "\u2212", "+", ".", ",", "e", "9999", "½", "mm", "in", "\"", "thou", "µm", "click",
            "out", "half a", ":", "h", "min", "°F", "m2", "%", "\t", "x", "0")
            .Array[0, 8].Select(parts => string.Concat(parts)));

    [Fact]
    public void A_length_printed_in_full_reads_back_bit_for_bit() => Gen.Select(AnyDouble, AnyLengthUnit, Style).Sample((mm, unit, style) =>
        Length.Parse(Length.PrintRoundTrip(mm, unit, style), style).Mm.Equals(mm == 0 ? 0 : mm), iter: 3000);

    [Fact]
    public void A_rounded_length_prints_the_same_after_reading() =>
        Gen.Select(Gen.Double[-500, 500], AnyLengthUnit, Style).Sample((mm, unit, style) =>
    {
        string printed = Length.Print(mm, unit, style);
        return Length.Print(Length.Parse(printed, style).Mm, unit, style) == printed;
    }, iter: 3000);

    [Fact]
    public void A_height_on_the_grid_reads_back_exactly() => Gen.Select(Gen.Int[-50000, 50000], Style).Sample((hundredths, style) =>
    {
        double mm = hundredths / 100.0;
        return Length.Parse(Length.Print(mm, LengthUnit.Mm, style), style).Mm == mm;
    }, iter: 3000);

    [Fact]
    public void Every_thirtysecond_of_an_inch_reads_back_exactly()
    {
        for (int parts = -640; parts <= 640; parts++)
        {
            double mm = parts * 25.4 / 32;
            string printed = LengthPrinting.InchFraction(mm);
            Assert.Equal(printed, LengthPrinting.InchFraction(Length.Parse(printed, WritingStyle.American).Mm));
            Assert.Equal(mm, Length.Parse(printed, WritingStyle.American).Mm, 1e-12);
        }
    }

    [Fact]
    public void A_gap_on_its_grid_reads_back() => Gen.Select(Gen.Int[-3000, 3000], Style).Sample((tenths, style) =>
    {
        double um = style.Gap switch { GapUnit.Thou => tenths * 2.54, GapUnit.HundredthMm => tenths, _ => tenths };
        return Math.Abs(Length.Parse(LengthPrinting.Gap(um, style), style).Um - um) < 1e-9;
    }, iter: 3000);

    [Fact]
    public void A_larger_length_never_prints_smaller() =>
        Gen.Select(Gen.Double[-500, 500], Gen.Double[0, 2], AnyLengthUnit, Style).Sample((mm, more, unit, style) =>
            Length.Parse(Length.Print(mm, unit, style), style).Mm <= Length.Parse(Length.Print(mm + more, unit, style), style).Mm,
                iter: 3000);

    [Fact]
    public void Clicks_read_back() => Gen.Select(Gen.Int[-100, 100], Style, Gen.Enum<ClickStep>()).Sample((halves, style, step) =>
    {
        var plain = Clicks.Parse(Clicks.Print(halves / 2.0, style, step), style);
        var directed = Clicks.Parse(Clicks.PrintDirected(halves / 2.0, style, step), style);
        return plain.Count == halves / 2.0 && directed.Count == plain.Count && plain.Step == step && directed.Step == step;
    });

    [Fact]
    public void A_clock_duration_reads_back_to_its_own_print() => Gen.Double[0, 5000].Sample(hours =>
    {
        string printed = Duration.PrintClock(hours);
        return Duration.PrintClock(Duration.Parse(printed, WritingStyle.Plain).Hours) == printed;
    });

    [Fact]
    public void Other_quantities_printed_in_full_read_back_bit_for_bit() => Gen.Select(Gen.Double[0, 1e5], Style).Sample((x, s) =>
    {
        foreach (SpeedUnit unit in Enum.GetValues<SpeedUnit>())
            Assert.Equal(x, Speed.Parse(Speed.PrintRoundTrip(x, unit, s), s).MetresPerSecond);
        foreach (RotationUnit unit in Enum.GetValues<RotationUnit>())
            Assert.Equal(x, Rotation.Parse(Rotation.PrintRoundTrip(x, unit, s), s).PerMinute);
        foreach (TemperatureUnit unit in Enum.GetValues<TemperatureUnit>())
            Assert.Equal(-x, Temperature.Parse(Temperature.PrintRoundTrip(-x, unit, s), s).Celsius);
        foreach (AreaUnit unit in Enum.GetValues<AreaUnit>())
            Assert.Equal(x, Area.Parse(Area.PrintRoundTrip(x, unit, s), s).SquareMetres);
        foreach (DurationUnit unit in Enum.GetValues<DurationUnit>())
            Assert.Equal(x, Duration.Parse(Duration.PrintRoundTrip(x, unit, s), s).Hours);
        foreach (TurnsUnit unit in Enum.GetValues<TurnsUnit>())
            Assert.Equal(-x, Turns.Parse(Turns.PrintRoundTrip(-x, unit, s), s).Count);
        foreach (NumberUnit unit in Enum.GetValues<NumberUnit>())
            Assert.Equal(-x, Number.Parse(Number.PrintRoundTrip(-x, unit, s), s).Value);
        foreach (VolumeUnit unit in Enum.GetValues<VolumeUnit>())
            Assert.Equal(x, Volume.Parse(Volume.PrintRoundTrip(x, unit, s), s).Litres);
        foreach (SpreadRateUnit unit in Enum.GetValues<SpreadRateUnit>())
            Assert.Equal(x, SpreadRate.Parse(SpreadRate.PrintRoundTrip(x, unit, s), s).GramsPerSquareMetre);
        Assert.Equal(x, Grammage.Parse(Grammage.PrintRoundTrip(x, GrammageUnit.GramPerSquareMetre, s), s).Gsm);
    }, iter: 300);

    [Fact]
    public void No_text_makes_TryParse_throw_and_a_fault_points_inside_the_text() => Gen.Select(AnyText, Style).Sample((text, style) =>
    {
        foreach (ParseFault? fault in Faults(text, style))
        {
            if (fault is null)
                continue;
            Assert.Equal(text, fault.Text);
            Assert.NotEqual("", fault.Message);
            Assert.NotEqual("", fault.Remedy);
            if (text.Length == 0)
                Assert.Equal((0, 0), (fault.Start, fault.Length));
            else
                Assert.True(fault.Start >= 0 && fault.Length >= 1 && fault.Start + fault.Length <= text.Length, fault.Render());
            Assert.Equal(2, fault.Render().Split('\n').Length);
        }
    }, iter: 20000);

    [Fact]
    public void Parse_throws_exactly_where_TryParse_fails() => Gen.Select(AnyText, Style).Sample((text, style) =>
    {
        bool read = Length.TryParse(text, style, LengthUnit.Mm, out Length value, out ParseFault? fault);
        try
        {
            return Length.Parse(text, style, LengthUnit.Mm) == value && read;
        }
        catch (QuantityFormatException thrown)
        {
            return !read && thrown.Fault == fault;
        }
    }, iter: 1000);

    [Fact]
    public void A_very_long_text_is_refused_quickly()
    {
        Assert.False(Length.TryParse(new string('9', 100_000) + " mm", WritingStyle.Plain, null, out _, out ParseFault? fault));
        Assert.Equal("The text is too long.", fault.Message);
    }

    private static IEnumerable<ParseFault?> Faults(string text, WritingStyle style)
    {
        Length.TryParse(text, style, null, out _, out ParseFault? length);
        yield return length;
        Length.TryParse(text, style, LengthUnit.Mm, out _, out ParseFault? bare);
        yield return bare;
        Clicks.TryParse(text, style, out _, out ParseFault? clicks);
        yield return clicks;
        Duration.TryParse(text, style, DurationUnit.Minute, out _, out ParseFault? duration);
        yield return duration;
        Speed.TryParse(text, style, null, out _, out ParseFault? speed);
        yield return speed;
        Rotation.TryParse(text, style, null, out _, out ParseFault? rotation);
        yield return rotation;
        Temperature.TryParse(text, style, null, out _, out ParseFault? temperature);
        yield return temperature;
        Area.TryParse(text, style, null, out _, out ParseFault? area);
        yield return area;
        Grammage.TryParse(text, style, null, out _, out ParseFault? grammage);
        yield return grammage;
        Volume.TryParse(text, style, null, out _, out ParseFault? volume);
        yield return volume;
        SpreadRate.TryParse(text, style, null, out _, out ParseFault? rate);
        yield return rate;
        Turns.TryParse(text, style, null, out _, out ParseFault? turns);
        yield return turns;
        Number.TryParse(text, style, null, out _, out ParseFault? number);
        yield return number;
    }
}
