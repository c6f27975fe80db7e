using System.Globalization;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>Limits hold at their very edge: what lies on it is taken, what lies beyond is not.</summary>
public sealed class BoundaryTests
{
    private static string? Fault(string line) => EntryReader.Read(Lines.Whole(line, 1), EntryContext.Whole, out _) is [var first, ..] ? first.Message : null;

    [Theory]
    [InlineData("lap", "minutes")]
    [InlineData("mow", "hours")]
    [InlineData("clippings", "litres")]
    [InlineData("look", "scalpPct")]
    public void The_least_and_the_most_of_a_range_are_taken_and_nothing_beyond(string kind, string field)
    {
        var spec = Kinds.Get(kind).Fields[Kinds.Get(kind).IndexOf(field)];
        string Line(double x) => $$"""{"kind":"{{kind}}","{{field}}":{{x.ToString("R", CultureInfo.InvariantCulture)}},"confirmed":["{{field}}"]}""";
        Assert.Null(Fault(Line(spec.Low)));
        Assert.Null(Fault(Line(spec.High)));
        Assert.Contains("is outside", Fault(Line(spec.Low - 0.001))!, StringComparison.Ordinal);
        Assert.Contains("is outside", Fault(Line(spec.High + 0.001))!, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thousand_items_are_a_list_and_one_more_is_not()
    {
        string Spots(int n) => $$"""{"kind":"canopy","when":"after","mm":[{{string.Join(',', Enumerable.Repeat("5", n))}}]}""";
        Assert.Null(Fault(Spots(1000)));
        Assert.Contains("a list of 1 to 1000 numbers", Fault(Spots(1001))!, StringComparison.Ordinal);
        string Days(int n) => $$"""{"kind":"wish","area":"green","fixtures":[{{string.Join(',', Enumerable.Repeat("\"2026-05-03\"", n))}}]}""";
        Assert.Null(Fault(Days(1000)));
        Assert.Contains("a list of 1 to 1000", Fault(Days(1001))!, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_limits_may_be_the_same_but_not_crossed()
    {
        Assert.Null(Fault("""{"kind":"canopy","lowMm":5,"highMm":5,"when":"after"}"""));
        Assert.Contains("lowMm is above highMm", Fault("""{"kind":"canopy","lowMm":5.1,"highMm":5,"when":"after"}""")!, StringComparison.Ordinal);
        Assert.Null(Fault("""{"kind":"strip","um":80,"cutsToUm":40,"foldsFromUm":40}"""));
        Assert.Contains("cutsToUm is above foldsFromUm", Fault("""{"kind":"strip","um":80,"cutsToUm":41,"foldsFromUm":40}""")!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, true)]
    [InlineData(81, false)]
    public void A_name_has_eighty_characters_at_most(int length, bool taken) =>
        Assert.Equal(taken, Fault($$"""{"kind":"locked","unit":"{{new string('n', length)}}"}""") is null);

    [Fact]
    public void A_long_text_is_cut_at_forty_characters_in_a_message()
    {
        Assert.Equal(new string('a', 40), Spelling.Clip(new string('a', 40)));
        Assert.Equal(new string('a', 37) + "...", Spelling.Clip(new string('a', 41)));
    }

    [Fact]
    public void A_coarse_card_reads_an_interval_of_one_step_around_its_mark()
    {
        // A card in steps of 2 mm against a ruler's scatter of well under that: 6 means 5 to 7.
        var spot = Assert.Single(SpotHeights.Of(Lines.Entry("""{"kind":"canopy","when":"after","how":"ruler","stepMm":2,"mm":6}""", 1)));
        Assert.Equal((5.0, 7.0), (spot.LowMm, spot.HighMm));
    }
}
