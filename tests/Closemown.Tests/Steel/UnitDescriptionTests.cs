using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>Unit entries one after the other: a later one changes only the fields it names.</summary>
public sealed class UnitDescriptionTests
{
    [Fact]
    public void A_unit_nobody_described_has_the_defaults()
    {
        var u = SteelBook.Description();
        Assert.Null(u.Blades);
        Assert.Null(u.ToldClickUm);
        Assert.Equal(SteelDefaults.BandUm, u.BandUm);
        Assert.Equal(SteelDefaults.CleanUm, u.CleanUm);
        Assert.Equal(SteelDefaults.ClickUm, u.ClickStart);
        Assert.Equal(["gauge", "strip", "torch"], u.Owns.Order(StringComparer.Ordinal));
        Assert.Null(u.Relief);
    }

    [Fact]
    public void A_second_description_changes_only_what_it_names()
    {
        const string First = """{"kind":"unit","blades":10,"reelMm":125,"widthMm":500,"clickUm":18,"adjusterStep":"flat","inTurns":"clockwise","relief":"yes","grits":[80,120],"owns":["strip","feeler"]}""";
        var u = SteelBook.Description(First, """{"kind":"unit","widthMm":600,"relief":"no"}""");
        Assert.Equal(SteelBook.Description(First) with { WidthMm = 600, Relief = false }, u with { Grits = SteelBook.Description(First).Grits, Owns = SteelBook.Description(First).Owns },
            DescriptionsEqual);
        Assert.Equal([80, 120], u.Grits);
        Assert.Equal(["feeler", "strip"], u.Owns.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_relief_that_was_ground_counts_from_then_on_as_one_that_was_told()
    {
        static Estimate Edge(string relief, string grind) => SteelBook.Belief(
            $$"""{"kind":"unit","relief":"{{relief}}"}""", grind, SteelBook.Mow(4), SteelBook.Lap(2)).EdgeUm(1);
        const string Plain = """{"kind":"grind","what":"both"}""", Relieved = """{"kind":"grind","what":"both","reliefDone":true}""";
        Assert.Equal(Edge("yes", Plain), Edge("no", Relieved));
        Assert.NotEqual(Edge("no", Plain), Edge("no", Relieved));
        Assert.Equal(Edge("no", Plain), Edge("no", """{"kind":"grind","what":"both","reliefDone":false}"""));
    }

    private static bool DescriptionsEqual(UnitDescription a, UnitDescription b) =>
        (a.Blades, a.WidthMm, a.ToldClickUm, a.ToldClickSdUm, a.AdjusterStep, a.InTurns) == (b.Blades, b.WidthMm, b.ToldClickUm, b.ToldClickSdUm, b.AdjusterStep, b.InTurns)
        && (a.BandUm, a.CleanUm, a.Relief) == (b.BandUm, b.CleanUm, b.Relief)
        && a.AdjusterAtMm.SequenceEqual(b.AdjusterAtMm) && a.StationAtMm.SequenceEqual(b.StationAtMm);

    [Theory]
    [InlineData("light-contact", -8, 15)]
    [InlineData("clear", 10, 50)]
    public void The_makers_setting_gives_the_band(string setting, double low, double high) =>
        Assert.Equal((low, high), SteelBook.Description($$"""{"kind":"unit","setting":"{{setting}}"}""").BandUm);

    [Fact]
    public void A_band_of_the_persons_own_comes_before_the_setting() =>
        Assert.Equal((0, 20), SteelBook.Description("""{"kind":"unit","setting":"clear","bandUm":[0,20]}""").BandUm);

    [Fact]
    public void A_later_setting_takes_the_place_of_an_earlier_band() =>
        Assert.Equal((10, 50), SteelBook.Description("""{"kind":"unit","bandUm":[0,20]}""", """{"kind":"unit","setting":"clear"}""").BandUm);

    [Fact]
    public void A_band_stays_when_something_else_is_told() =>
        Assert.Equal((0, 20), SteelBook.Description("""{"kind":"unit","bandUm":[0,20]}""", """{"kind":"unit","blades":8}""").BandUm);

    [Fact]
    public void A_told_click_is_known_to_5_in_100() => Assert.Equal(new(18, 0.9), SteelBook.Description("""{"kind":"unit","clickUm":18}""").ClickStart);

    [Fact]
    public void A_told_click_with_its_spread_is_taken_so() =>
        Assert.Equal(new(18, 2), SteelBook.Description("""{"kind":"unit","clickUm":18,"clickSdUm":2}""").ClickStart);

    [Fact]
    public void A_starting_value_of_the_persons_own_comes_before_a_told_click() =>
        Assert.Equal(new(22, 4), SteelBook.Description("""{"kind":"unit","clickUm":18,"priors":{"clickUm":[22,4]}}""").ClickStart);

    [Fact]
    public void A_second_list_of_starting_values_changes_only_those_it_names()
    {
        var u = SteelBook.Description("""{"kind":"unit","priors":{"bowUm":[5,4],"edgeUm":[8,3]}}""", """{"kind":"unit","priors":{"edgeUm":[9,2]}}""");
        Assert.Equal(new(5, 4), u.Start("bowUm", SteelDefaults.BowUm));
        Assert.Equal(new(9, 2), u.Start("edgeUm", SteelDefaults.EdgeUm));
        Assert.Equal(SteelDefaults.TouchUm, u.Start("touchUm", SteelDefaults.TouchUm));
    }

    [Fact]
    public void The_clean_limit_and_its_spread_can_be_told_apart()
    {
        Assert.Equal(new(30, 8), SteelBook.Description("""{"kind":"unit","cleanUm":30}""").CleanUm);
        Assert.Equal(new(30, 5), SteelBook.Description("""{"kind":"unit","cleanUm":30}""", """{"kind":"unit","cleanSdUm":5}""").CleanUm);
    }

    [Fact]
    public void Adjusters_that_stand_almost_in_one_place_are_not_believed() =>
        Assert.Equal(SteelDefaults.AdjusterAtMm, SteelBook.Description("""{"kind":"unit","adjusterAtMm":[0,10]}""").AdjusterAtMm);

    [Theory]
    [InlineData("clearanceUm", 33)]
    [InlineData("edgeUm", 7)]
    [InlineData("bowUm", 4)]
    [InlineData("lostMotionUm", 9)]
    [InlineData("openingUmPerHour", 2)]
    [InlineData("openingUmPerOuting", 1)]
    [InlineData("dullingUmPerHour", 0.5)]
    [InlineData("lapUmPerMinute", 3)]
    [InlineData("clickUm", 25)]
    public void A_starting_value_of_the_persons_own_is_what_a_new_unit_shows(string name, double mean)
    {
        var b = SteelBook.Belief(FormattableString.Invariant($$"""{"kind":"unit","priors":{"{{name}}":[{{mean}},1]} }"""));
        var shown = name switch
        {
            "clearanceUm" => b.ClearanceUm(0),
            "edgeUm" => b.EdgeUm(1),
            "bowUm" => b.BowUm,
            "lostMotionUm" => b.LostMotionUm(0),
            "openingUmPerHour" => b.OpeningUmPerHour(1),
            "openingUmPerOuting" => b.OpeningUmPerOuting(0),
            "dullingUmPerHour" => b.DullingUmPerHour,
            "lapUmPerMinute" => b.LapUmPerMinute,
            _ => b.ClickUm(0),
        };
        Assert.Equal(mean, shown.Mean, 6);
        Assert.InRange(shown.Sd, 0.9, 1.2);
    }
}
