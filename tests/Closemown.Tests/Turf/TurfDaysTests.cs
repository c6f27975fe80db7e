using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>What the days bring: water, ground, frost, and days that nobody read.</summary>
public sealed class TurfDaysTests
{
    private static readonly TurfArea Area = new() { Name = AreaBook.Area, LatitudeDeg = 52 };

    private static TurfDays Days(AreaBook book) => new(Area, book.Record, [], AreaBook.Start);

    [Fact]
    public void A_dry_spell_empties_the_root_zone_and_rain_fills_it()
    {
        var book = new AreaBook().Weather(-50, 0, 10, 20, 4).Weather(1, 12, 14, 28, 0).Weather(13, 13, 12, 18, 30).Add(0, 8, "\"kind\":\"water\",\"mm\":1");
        var days = new TurfDays(Area, book.Record, book.Entries, AreaBook.Start);
        Assert.True(days.On(AreaBook.Day(12)).DepletionMm > days.On(AreaBook.Day(1)).DepletionMm + 5);
        Assert.True(days.On(AreaBook.Day(12)).Ks < 0.7);
        Assert.Equal(0, days.On(AreaBook.Day(13)).DepletionMm, 1e-9);
    }

    [Fact]
    public void Watered_on_by_habit_the_coming_days_are_watered_where_no_rain_takes_its_place_and_the_past_stays()
    {
        var book = new AreaBook().Weather(-50, 0, 10, 20, 4).Weather(1, 8, 14, 28, 0).Weather(9, 9, 14, 28, 10).Weather(10, 14, 14, 28, 0)
            .Add(0, 8, "\"kind\":\"water\",\"mm\":9");
        var days = new TurfDays(Area, book.Record, book.Entries, AreaBook.Start);
        var on = days.WateredOn(new(3, 9, AreaBook.Day(0)), AreaBook.Day(4));
        for (var d = 0; d <= 4; d++) Assert.Equal(days.On(AreaBook.Day(d)), on.On(AreaBook.Day(d)));
        // Three days and more after the last, so on day 5; then on day 8; the rain of day 9 lasts until 11.
        double Given(int d) => days.On(AreaBook.Day(d)).DepletionMm - on.On(AreaBook.Day(d)).DepletionMm;
        Assert.True(Given(5) > 5, $"{Given(5)}");
        Assert.True(on.On(AreaBook.Day(7)).DepletionMm > on.On(AreaBook.Day(6)).DepletionMm);
        Assert.True(on.On(AreaBook.Day(8)).DepletionMm < on.On(AreaBook.Day(7)).DepletionMm);
        Assert.True(on.On(AreaBook.Day(10)).DepletionMm > on.On(AreaBook.Day(9)).DepletionMm);
        Assert.True(on.On(AreaBook.Day(11)).DepletionMm < on.On(AreaBook.Day(10)).DepletionMm + 1);
    }

    [Fact]
    public void A_growth_regulator_holds_back_all_growth_alike_also_what_the_wider_bell_adds()
    {
        var book = new AreaBook().Weather(-50, 10, 5, 11, 4);
        var free = Days(book).On(AreaBook.Day(3));
        book = book.Add(1, 8, "\"kind\":\"treat\",\"what\":\"growth regulator\"");
        var held = new TurfDays(Area, book.Record, book.Entries, AreaBook.Start).On(AreaBook.Day(3));
        Assert.True(free.Wide > 0);
        Assert.Equal(LeafGrowth.RegulatedShare, held.Wide / free.Wide, 1e-12);
        Assert.Equal(LeafGrowth.RegulatedShare, held.Growth / free.Growth, 1e-12);
    }

    [Fact]
    public void In_frost_the_wider_bell_adds_nothing()
    {
        Assert.Equal(0, Days(new AreaBook().Weather(-50, 10, -6, 2, 1)).On(AreaBook.Day(3)).Wide);
    }

    [Fact]
    public void Where_no_watering_is_written_down_turf_is_taken_to_be_watered()
    {
        var days = Days(new AreaBook().Weather(-50, 0, 10, 20, 4).Weather(1, 20, 14, 28, 0));
        Assert.Equal(AreaDefaults.LeastUnsaidKs, days.On(AreaBook.Day(20)).Ks);
        Assert.False(days.On(AreaBook.Day(20)).Wilting);
    }

    [Fact]
    public void Frost_frozen_soil_thaw_and_flood_keep_off()
    {
        var days = Days(new AreaBook().Weather(-50, 0, 6, 14).Weather(1, 1, -1, 8).Weather(2, 6, -8, -2).Weather(7, 7, -3, 5).Weather(8, 40, 6, 14).Weather(41, 41, 8, 14, 45));
        Assert.Equal(KeepOff.None, days.On(AreaBook.Day(0)).KeepOff);
        Assert.Equal(KeepOff.Frost, days.On(AreaBook.Day(1)).KeepOff);
        Assert.True(days.On(AreaBook.Day(6)).KeepOff.HasFlag(KeepOff.FrozenSoil));
        Assert.True(days.On(AreaBook.Day(7)).KeepOff.HasFlag(KeepOff.ThawedOverFrozen));
        Assert.Equal(KeepOff.None, days.On(AreaBook.Day(20)).KeepOff);
        Assert.True(days.On(AreaBook.Day(41)).KeepOff.HasFlag(KeepOff.Saturated));
    }

    [Fact]
    public void Days_nobody_read_are_as_usual_and_said_to_be_uncertain()
    {
        var days = Days(new AreaBook().Weather(-10, 10, 9, 17));
        Assert.Equal(AreaDefaults.FormShareSd, days.On(AreaBook.Day(5)).GrowthSd, 1e-12);
        Assert.True(days.On(AreaBook.Day(15)).GrowthSd > days.On(AreaBook.Day(5)).GrowthSd + 0.02);
        Assert.False(days.On(AreaBook.Day(15)).Weather.Known);
    }

    [Fact]
    public void A_wet_spell_needs_no_water_and_a_dry_one_names_the_day()
    {
        Assert.Null(WaterNeed.Of(Days(new AreaBook().Weather(-50, 30, 8, 15, 5)), AreaBook.Day(0)).On);
        var dry = WaterNeed.Of(Days(new AreaBook().Weather(-50, 0, 8, 15, 5).Weather(1, 30, 15, 29, 0)), AreaBook.Day(0));
        Assert.NotNull(dry.On);
        Assert.InRange(dry.Mm, 2, 17);
        Assert.Equal(dry.Mm / 0.7, dry.GrossMm(0.7), 1e-12);
    }

    [Fact]
    public void In_spring_the_soil_is_behind_the_air()
    {
        var book = new AreaBook().Weather(-50, 0, 2, 8).Weather(1, 1, 15, 25);
        var spring = Days(book).On(AreaBook.Day(1)).Potential;
        Assert.True(spring < GrowthPotential.Of(20, TurfGrass.Cool) / 2);
    }

    [Fact]
    public void South_of_the_equator_the_plain_year_is_turned_round()
    {
        var (north, south) = (Climatology.Of(WeatherRecord.None, 50), Climatology.Of(WeatherRecord.None, -40));
        Assert.True(north.On(new(2026, 7, 15)).MeanC > north.On(new(2026, 1, 15)).MeanC + 10);
        Assert.True(south.On(new(2026, 7, 15)).MeanC < south.On(new(2026, 1, 15)).MeanC - 10);
    }
}
