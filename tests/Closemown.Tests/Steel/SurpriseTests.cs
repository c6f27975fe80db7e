using Closemown.Entries;
using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>How odd a reading was, before it was seen.</summary>
public sealed class SurpriseTests
{
    private static ReadingSurprise Of(params string[] bodies)
    {
        var entries = SteelBook.Entries(bodies);
        var track = UnitTrack.Of(SteelBook.Unit, entries[..^1]);
        return track.Add(entries[^1])!;
    }

    [Theory]
    [InlineData("contact")]
    [InlineData("paper-cut")]
    [InlineData("paper-drag")]
    [InlineData("torch")]
    [InlineData("swath")]
    public void A_categorys_surprise_sums_all_that_are_no_more_probable(string kind)
    {
        // Straight from the contract, against the probabilities the track itself gives before the reading.
        string[] before = [SteelBook.Known(25), """{"kind":"strip","um":80,"sdUm":3}"""];
        // The person's scatter is not known yet: the probabilities are mixed over the factors of the grid by their prior.
        var track = SteelBook.Track(before);
        var check = Checks.Of(kind, 0, track.Unit, track.Strip);
        var weights = Scatter.Factors.Select(f => Math.Exp(Scatter.LogPrior(f))).ToArray();
        var p = new double[check.Words.Count];
        foreach (var (factor, weight) in Scatter.Factors.Zip(weights))
        {
            var one = SteelBelief.Of(track).Probabilities(check with { SdUm = check.SdUm * factor });
            for (var c = 0; c < p.Length; c++) p[c] += weight / weights.Sum() * one[c];
        }
        Assert.Equal(1, p.Sum(), 12);
        foreach (var word in check.Words)
        {
            var read = p[check.Words.ToList().IndexOf(word)];
            var expected = p.Where(q => q <= read).Sum();
            var s = Of([.. before, $$"""{"kind":"{{kind}}","left":"{{word}}"}"""]);
            Assert.Equal(expected, Assert.Single(s.At).P, 1e-6);
            Assert.Equal(expected, s.All, 1e-6);
        }
    }

    [Fact]
    public void Over_several_stations_the_least_counts_as_often_as_it_was_looked_for()
    {
        // The contract: 1 − (1 − p)ⁿ with p the least of n.
        var s = Of(SteelBook.Known(25), SteelBook.Three("paper-cut", "cuts", "folds", "cuts"));
        Assert.Equal([0, 1, 2], s.At.Select(a => a.Station));
        Assert.Equal(1 - Math.Pow(1 - s.At.Min(a => a.P), 3), s.All, 1e-12);
    }

    [Fact]
    public void What_was_most_probable_is_no_surprise_at_all() => Assert.Equal(1, Of(SteelBook.Known(60), SteelBook.Ends("contact", "none", "none")).All, 1e-9);

    [Fact]
    public void An_action_is_no_reading()
    {
        var entries = SteelBook.Entries(SteelBook.Clicks(1, 1), SteelBook.Mow(1), SteelBook.Lap(2), """{"kind":"rebuild"}""", """{"kind":"strip","um":80}""");
        var track = new UnitTrack(SteelBook.Description());
        Assert.All(entries, e => Assert.Null(track.Add(e)));
    }

    private static readonly string[] SettledRecord =
        [SteelBook.Known(25, 5), .. Enumerable.Repeat(SteelBook.Ends("contact", "none", "none"), 6)];

    [Fact]
    public void A_reading_that_does_not_fit_is_kept_as_unusual_and_believed_only_when_it_comes_again()
    {
        var odd = SteelBook.Ends("contact", "heavy", "heavy");
        var track = SteelBook.Track([.. SettledRecord, odd]);
        var (entry, p) = Assert.Single(track.Unusual);
        Assert.True(entry.Is(ContactEntry.Kind) && p < UnitTrack.UnusualBelow);
        Assert.NotNull(track.Memory.Unusual);
        var settled = SteelBook.Belief(SettledRecord).ClearanceUm(0).Mean;
        Assert.True(SteelBelief.Of(track).ClearanceUm(0).Mean > settled - 5);
        Assert.True(SteelBook.Belief([.. SettledRecord, odd, odd, odd]).ClearanceUm(0).Mean < settled - 15);
    }

    [Fact]
    public void Among_the_first_readings_nothing_is_called_unusual()
    {
        var track = SteelBook.Track(SteelBook.Known(25, 5), SteelBook.Ends("contact", "heavy", "heavy"));
        Assert.Empty(track.Unusual);
    }

    [Fact]
    public void A_usual_reading_is_not_kept_as_unusual() => Assert.Empty(SteelBook.Track(SettledRecord).Unusual);
}
