using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>Published formulas of weather and turf through the command; sources stand beside the values in tests/Checks/turf.</summary>
public sealed class TurfReckonTests
{
    [Theory]
    [InlineData("et0 tmin=12.3 tmax=21.5 rhmin=63 rhmax=84% wind=10km/h windheight=10 sun=9.25 lat=50.8 date=2026-07-06 altitude=100", 3.88, 0.005)]   // FAO-56 example 18
    [InlineData("growth t=8 grass=cool", 0.0925, 5e-5)]      // exp(−½(12/5.5)²) by hand
    [InlineData("growth t=95F grass=warm", 1, 1e-12)]
    [InlineData("gdd tmin=4 tmax=20 base=10", 2, 1e-12)]
    [InlineData("gdd tmin=4 tmax=20 base=10 method=capped", 5, 1e-12)]
    [InlineData("gdd tmin=7 tmax=14 base=12 method=sine", 0.47, 5e-3)]
    [InlineData("dew t=25 rh=60", 16.7, 0.05)]
    [InlineData("dollar-spot t5=20 rh5=80", 0.404, 5e-4)]
    [InlineData("colour r=76 g=115 b=51", 0.534, 5e-4)]
    [InlineData("uniformity cans=6,8,10,12,8,10,10,8", 7.0 / 9, 1e-12)]       // by hand: (6 + 8)/2 over 72/8
    [InlineData("speed-slope up=9 down=14", 10.957, 1e-3)]
    [InlineData("speed-slope up=2.05m down=390cm", 2.687395, 1e-6)]
    [InlineData("uniformity cans=6mm,8mm,10mm,12mm,8mm,10mm,10,8", 7.0 / 9, 1e-12)]
    public void A_published_value_comes_out(string typed, double expected, double within)
    {
        using var bench = new Bench();
        var json = bench.Run(["reckon", .. typed.Split(' '), "--json"]).Json;
        Assert.Equal(expected, (double)json["value"]!, within);
        Assert.Equal(typed.Split(' ')[0], (string)json["name"]!);
        Assert.NotEqual("", (string)json["source"]!);
        Assert.Null(json["outside"]);
    }

    [Theory]
    [InlineData("up=2.05m down=3.9m", 2.687395, "m")]
    [InlineData("up=9 down=14", 10.956522, "")]
    [InlineData("up=9ft down=14ft", 10.956522, "ft")]
    [InlineData("up=9 down=14ft", 10.956522, "ft")]
    [InlineData("up=205cm down=3.9m", 268.7395, "cm")]
    public void F28_A_roll_is_freed_of_its_slope_in_any_unit_of_length(string typed, double value, string unit)
    {
        using var inside = new Inside(new(2026, 5, 20, 10, 0, 0, TimeSpan.Zero));
        var json = inside.Type($"reckon speed-slope {typed} --json").Json;
        Assert.Equal((value, unit), (Math.Round((double)json["value"]!, unit == "cm" ? 4 : 6), (string)json["unit"]!));
    }

    [Fact]
    public void F28_What_is_no_length_is_refused_with_its_name()
    {
        using var inside = new Inside(new(2026, 5, 20, 10, 0, 0, TimeSpan.Zero));
        var ran = inside.Type("reckon speed-slope up=2.05m down=3.9kg");
        Assert.Equal(1, ran.Exit);
        Assert.Contains("down: ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Outside_the_published_range_it_is_reckoned_with_a_mark()
    {
        using var bench = new Bench();
        Assert.Contains("10 to 35", (string)bench.Run("reckon", "dollar-spot", "t5=5", "rh5=90", "--json").Json["outside"]!, StringComparison.Ordinal);
        Assert.Contains("Outside the published range", bench.Run("reckon", "dollar-spot", "t5=5", "rh5=90").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("et0 tmin=12 tmax=21 lat=50 date=6.7.2026", "2026-07-06")]
    [InlineData("et0 tmin=12 tmax=21 date=2026-07-06", "needs lat")]
    [InlineData("growth t=8 grass=blue", "cool, warm")]
    [InlineData("dew t=25 rh=0", "above 0")]
    [InlineData("uniformity cans=1,2", "at least 4")]
    [InlineData("gdd tmin=20 tmax=4 base=10", "highest temperature is not below")]
    public void A_mistake_is_refused_with_what_to_do(string typed, string hint)
    {
        using var bench = new Bench();
        var ran = bench.Run(["reckon", .. typed.Split(' ')]);
        Assert.Equal((1, ""), (ran.Exit, ran.Out));
        Assert.Contains(hint, ran.Error, StringComparison.OrdinalIgnoreCase);
    }
}
