using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>The green base: learned from scalps, followed by the height kept.</summary>
public sealed class GreenBaseTests
{
    private static AreaTrack After(params string[] looks) => After(5, looks);

    private static AreaTrack After(int cutMm, params string[] looks)
    {
        var book = new AreaBook().Weather(-20, 60, 9, 17);
        for (var m = 0; m < looks.Length; m++) book.Add(m * 3, 10, $"\"kind\":\"mow\",\"hours\":0.5,\"cutMm\":{cutMm}").Add((m * 3) + 1, 9, looks[m]);
        return book.Track();
    }

    [Fact]
    public void Scalps_seen_raise_the_probability_and_none_seen_lower_it()
    {
        const string None = "\"kind\":\"look\",\"scalpPct\":0", Some = "\"kind\":\"look\",\"scalpPct\":10";
        // From 8 down to 3: a drop below what the height kept would let stand.
        AreaTrack Dropped(params string[] looks)
        {
            var book = new AreaBook().Weather(-20, 60, 9, 17).Add(0, 10, "\"kind\":\"mow\",\"hours\":0.5,\"cutMm\":8");
            for (var m = 0; m < looks.Length; m++) book.Add(m + 1, 10, "\"kind\":\"mow\",\"hours\":0.5,\"cutMm\":4").Add(m + 1, 11, looks[m]);
            return book.Track();
        }
        Assert.True(Dropped(None, None).Base.Scalps(4, 0.1) < Dropped("\"kind\":\"look\",\"tips\":\"clean\"", "\"kind\":\"look\",\"tips\":\"clean\"").Base.Scalps(4, 0.1) - 0.05);
        var (plain, seen) = (After("\"kind\":\"look\",\"tips\":\"clean\"").Base, After(Some, Some).Base);
        Assert.True(plain.Scalps(4, 0.1) < seen.Scalps(4, 0.1));
        Assert.True(seen.Scalps(5, 0.1) > 0.25);
    }

    [Fact]
    public void A_lower_cut_scalps_more_whatever_share_it_takes()
    {
        var green = After("\"kind\":\"look\",\"scalpPct\":2").Base;
        for (var cut = 2.0; cut < 7; cut += 0.25) Assert.True(green.Scalps(cut, 0.12) >= green.Scalps(cut + 0.25, 0.12));
        Assert.True(green.Scalps(3, 0.12) > green.Scalps(6, 0.12) + 0.5);
    }

    [Fact]
    public void Soft_turf_scalps_more()
    {
        var (firm, soft) = (After("\"kind\":\"look\",\"soft\":false").Base, After("\"kind\":\"look\",\"soft\":true").Base);
        Assert.True(soft.Scalps(3.5, 0.1) > firm.Scalps(3.5, 0.1));
    }
}
