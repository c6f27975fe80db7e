using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>How much of a check's error comes back when it is done again is learned from the repeats in the book, within bounds.</summary>
public sealed class RepeatShareTests
{
    private const string Unit = """{"kind":"unit","priors":{"clearanceUm":[4,2],"edgeUm":[5,2],"bowUm":[0,1]}}""";

    /// <summary>Each spell's touches at both ends, then a short mowing.</summary>
    private static UnitTrack After(int spells, params string[][] touches) =>
        SteelBook.Track([Unit, .. Enumerable.Range(0, spells).SelectMany(i => touches[i % touches.Length].Select(w => SteelBook.Ends("contact", w, w)).Append(SteelBook.Mow(0.02)))]);

    [Fact]
    public void Without_repeats_it_stays_where_it_began()
    {
        Assert.Equal(SteelDefaults.RepeatShare, After(0, [[]]).RepeatShare, 0.02);
        Assert.Equal(After(0, [[]]).RepeatShare, After(9, ["none"], ["light"]).RepeatShare, 12);
    }

    [Fact]
    public void A_hand_that_feels_the_same_again_and_again_shares_more_than_one_that_changes_its_mind()
    {
        var same = After(10, ["none", "none", "none"], ["light", "light", "light"]).RepeatShare;
        var changing = After(10, ["none", "light", "none"], ["light", "none", "light"]).RepeatShare;
        Assert.True(same > SteelDefaults.RepeatShare + 0.02, $"{same}");
        Assert.True(changing < SteelDefaults.RepeatShare - 0.05, $"{changing}");
    }

    [Fact]
    public void It_never_leaves_its_bounds()
    {
        Assert.InRange(After(40, ["none", "light", "none", "light"]).RepeatShare, 0.5, 0.7);
        Assert.InRange(After(40, ["none", "none", "none", "none"], ["light", "light", "light", "light"]).RepeatShare, 0.75, 0.95);
    }

    [Fact]
    public void One_that_was_told_is_kept()
    {
        var told = SteelBook.Track([Unit.Replace("\"bowUm\"", "\"repeatShare\":[0.6,0.1],\"bowUm\"", StringComparison.Ordinal), .. Enumerable.Repeat(SteelBook.Ends("contact", "none", "light"), 6)]);
        Assert.Equal(0.6, told.RepeatShare, 12);
    }
}
