using Closemown.Steel;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>The loop from the turf back to the bench: tips after mowing are a reading of the pair that cut them.</summary>
public sealed class LeafTipsTests
{
    private static double Gap(params string[] bodies)
    {
        var entries = bodies.Select((b, i) => Lines.Entry(b, i + 1, 60 * i)).ToList();
        return SteelBelief.Of(UnitTrack.Of("mower", entries)).UsableGapUm().Mean;
    }

    private const string Mow = """{"kind":"mow","unit":"mower","area":"green","hours":0.5}""";

    private static string Look(string tips, string area = "green", string more = "") => $$"""{"kind":"look","area":"{{area}}","tips":"{{tips}}"{{more}}}""";

    [Fact]
    public void Ragged_tips_widen_what_is_believed_and_clean_ones_close_it()
    {
        var nothing = Gap(Mow);
        Assert.True(Gap(Mow, Look("clean")) < nothing - 1);
        Assert.True(Gap(Mow, Look("ragged")) > nothing + 1);
        Assert.Equal(Gap(Mow, Look("ragged")), Gap(Mow, Look("white")));
    }

    [Fact]
    public void Wet_or_wilting_turf_counts_for_less() => Assert.True(Gap(Mow, Look("ragged", more: ",\"wet\":true")) < Gap(Mow, Look("ragged")));

    [Fact]
    public void Tips_of_another_area_or_before_any_mowing_say_nothing()
    {
        Assert.Equal(Gap(Mow), Gap(Mow, Look("ragged", "lawn")));
        const string Unit = """{"kind":"unit","unit":"mower","blades":10}""";
        Assert.Equal(Gap(Unit), Gap(Unit, Look("ragged")));
    }

    [Fact]
    public void Tips_after_the_screws_were_turned_say_nothing_of_what_stands_now()
    {
        const string Clicks = """{"kind":"clicks","unit":"mower","left":1,"right":1}""";
        Assert.Equal(Gap(Mow, Clicks), Gap(Mow, Clicks, Look("ragged")), 1e-9);
    }
}
