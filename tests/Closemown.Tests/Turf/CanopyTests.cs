using System.Globalization;
using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>The canopy's chain: growth, mowing, what readings teach.</summary>
public sealed class CanopyTests
{
    private const string Mow = "\"kind\":\"mow\",\"hours\":0.5,\"cutMm\":5";

    private static string Stands(double mm, string when) => string.Create(CultureInfo.InvariantCulture, $"\"kind\":\"canopy\",\"mm\":[{mm:0.###},{mm + 0.01:0.###},{mm - 0.01:0.###}],\"when\":\"{when}\"");

    [Fact]
    public void A_mowing_brings_the_turf_to_the_cut_whatever_it_stood_at()
    {
        Gen.Double[5.5, 12].Sample(before =>
        {
            var belief = AreaBelief.Of(new AreaBook().Weather(0, 5, 8, 16).Add(1, 9, Stands(before, "before")).Add(1, 10, Mow).Track());
            var (mean, sd) = AreaBelief.CanopyMm(belief.At(AreaBook.At(1, 10)));
            Assert.InRange(mean, 4.9, 5.1);
            Assert.InRange(sd, 0.2, 0.4);                 // told to 0.3, made to 0.12
        }, iter: 20);
    }

    [Fact]
    public void It_grows_with_warmth_and_not_in_frost()
    {
        double Grown(double tMin, double tMax)
        {
            var belief = AreaBelief.Of(new AreaBook().Weather(-50, 20, tMin, tMax).Add(1, 10, Mow).Track());
            return AreaBelief.CanopyMm(belief.At(AreaBook.At(8, 10))).Mean - AreaBelief.CanopyMm(belief.At(AreaBook.At(1, 10))).Mean;
        }
        var (frozen, cool, warm) = (Grown(-6, 1), Grown(5, 13), Grown(14, 24));
        Assert.InRange(frozen, 0, 0.05);
        Assert.True(frozen < cool && cool < warm);
        Assert.InRange(warm, 4, 8);                       // seven days near the full rate of 1 mm
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(1.0)]
    [InlineData(1.7)]
    public void The_record_teaches_the_growth_of_this_area(double perDay)
    {
        // 14 and 26 °C: potential 1, so what it grows in a day is its full rate.
        var book = new AreaBook().Weather(-50, 60, 14, 26, 6);
        for (var m = 0; m < 12; m++)
        {
            book.Add(m * 3, 10, Mow);
            book.Add((m * 3) + 3, 9.5, Stands(5 + (perDay * (3 - (0.5 / 24))), "before"));
        }
        var (mean, sd) = AreaBelief.Of(book.Track()).FullRateMm;
        Assert.InRange(mean, perDay - (2 * sd), perDay + (2 * sd));
        Assert.InRange(sd, 0.02, 0.3);
    }

    [Fact]
    public void Readings_before_entered_just_after_the_mowing_are_of_the_time_before()
    {
        var early = AreaBelief.Of(new AreaBook().Weather(0, 9, 8, 18).Add(1, 10, Mow).Add(5, 10, Stands(7.2, "before")).Add(5, 10.2, Mow).Track());
        var late = AreaBelief.Of(new AreaBook().Weather(0, 9, 8, 18).Add(1, 10, Mow).Add(5, 10.2, Mow).Add(5, 11, Stands(7.2, "before")).Track());
        Assert.Equal(early.FullRateMm.Mean, late.FullRateMm.Mean, 0.02);
        Assert.Equal(AreaBelief.CanopyMm(early.At(AreaBook.At(6))).Mean, AreaBelief.CanopyMm(late.At(AreaBook.At(6))).Mean, 0.05);
    }

    [Fact]
    public void Much_in_the_box_and_much_to_the_eye_mean_that_it_grew_more()
    {
        double Rate(string? look, double? litres)
        {
            var book = new AreaBook().Weather(-20, 40, 10, 18);
            for (var m = 0; m < 4; m++) book.Add(m * 3, 10, Mow).Add(m * 3, 10.5, "\"kind\":\"clippings\",\"litres\":8,\"areaM2\":200");
            book.Add(14, 10, Mow);
            if (look is not null) book.Add(14, 11, $"\"kind\":\"look\",\"cameOff\":\"{look}\"");
            if (litres is { } l) book.Add(14, 11, string.Create(CultureInfo.InvariantCulture, $"\"kind\":\"clippings\",\"litres\":{l},\"areaM2\":200"));
            return AreaBelief.Of(book.Track()).FullRateMm.Mean;
        }
        Assert.True(Rate("little", null) < Rate("usual", null) && Rate("usual", null) < Rate("much", null));
        Assert.True(Rate(null, 2) < Rate(null, 8) && Rate(null, 8) < Rate(null, 25));
    }

    [Fact]
    public void Feeding_quickens_growth_and_a_regulator_slows_it()
    {
        double After(string? care)
        {
            var book = new AreaBook().Weather(-20, 40, 12, 20).Add(1, 9, Mow);
            if (care is not null) book.Add(1, 10, care);
            return AreaBelief.CanopyMm(AreaBelief.Of(book.Track()).At(AreaBook.At(8))).Mean;
        }
        var plain = After(null);
        Assert.True(After("\"kind\":\"feed\",\"nGm2\":2") > plain + 0.2);
        Assert.True(After("\"kind\":\"treat\",\"what\":\"growth regulator\",\"label\":\"as printed\"") < plain - 0.2);
    }

    [Fact]
    public void Looks_order_stress()
    {
        double Stress(string colour) => AreaBelief.Stress(AreaBelief.Of(new AreaBook().Weather(-20, 9, 8, 18).Add(1, 9, Mow).Add(2, 9, $"\"kind\":\"look\",\"colour\":\"{colour}\"").Track()).At(AreaBook.At(2, 9))).Mean;
        Assert.True(Stress("green") < Stress("pale") && Stress("pale") < Stress("purple") && Stress("purple") < Stress("straw"));
        Assert.InRange(Stress("purple"), 1.0, 2.5);
    }

    [Fact]
    public void Nights_below_freezing_stress_and_warm_days_relieve()
    {
        var belief = AreaBelief.Of(new AreaBook().Weather(-30, 20, 9, 17, 4).Weather(21, 30, -5, 3).Weather(31, 70, 9, 17, 5).Add(1, 9, Mow).Track());
        double On(int day) => AreaBelief.Stress(belief.At(AreaBook.At(day))).Mean;
        Assert.InRange(On(30) - On(20), 0.7, 3);
        Assert.InRange(On(30) - On(60), 0.5, 3);
    }

    [Fact]
    public void Growth_far_under_its_pattern_is_odd_and_says_what_may_lie_behind_it()
    {
        var book = new AreaBook().Weather(-50, 60, 14, 26, 6);
        for (var m = 0; m < 12; m++)
        {
            book.Add(m * 3, 10, Mow);
            book.Add((m * 3) + 3, 9.5, Stands(8, "before"));
        }
        book.Add(36, 10, Mow).Add(46, 9, Stands(5.2, "before"));
        var track = book.Track();
        Assert.True(book.Odd < 0.01);
        var odd = Assert.Single(track.Unusual);
        Assert.True(odd.Under);
        Assert.Equal(GrowthCause.Hungry, odd.Likely[0]);
        Assert.Contains(GrowthCause.MownUnsaid, odd.Likely);
    }

    [Fact]
    public void Ordinary_readings_are_not_odd()
    {
        var book = new AreaBook().Weather(-50, 60, 14, 26, 6);
        for (var m = 0; m < 14; m++) book.Add(m * 3, 10, Mow).Add((m * 3) + 3, 9.5, Stands(7.9 + (0.2 * (m % 3)), "before"));
        Assert.Empty(book.Track().Unusual);
    }

    [Fact]
    public void A_mowing_over_the_tips_takes_nothing()
    {
        var belief = AreaBelief.Of(new AreaBook().Weather(0, 5, 8, 16).Add(1, 9, Stands(5, "before")).Add(1, 10, "\"kind\":\"mow\",\"hours\":0.5,\"cutMm\":7").Track());
        Assert.InRange(AreaBelief.CanopyMm(belief.At(AreaBook.At(1, 11))).Mean, 4.7, 5.3);
    }

    [Fact]
    public void The_running_belief_and_the_whole_record_agree_where_all_is_linear()
    {
        Gen.Select(Gen.Int[1, 5], Gen.Double[5.5, 8]).Array[2, 8].Sample(acts =>
        {
            var book = new AreaBook().Weather(-20, 60, 9, 19);
            var day = 0;
            foreach (var (gap, stood) in acts)
            {
                day += gap;
                book.Add(day, 9, Stands(stood, "before")).Add(day, 10, Mow);
            }
            var track = book.Track();
            if (track.Unusual.Count > 0) return;
            var whole = AreaBelief.Of(track).At(AreaBook.At(day, 10));
            for (var i = 0; i < whole.Size; i++)
            {
                var sd = Math.Sqrt(whole.Covariance[(i * whole.Size) + i]);
                Assert.Equal(whole.Mean[i], track.Running.Mean[i], 1e-6 * Math.Max(1, sd));
            }
        }, iter: 20);
    }
}
