using Closemown.Entries;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Entries;

public sealed class EntryIdsTests
{
    [Fact]
    public void The_layout_is_that_of_the_standards_own_example()
    {
        // RFC 9562, appendix A.6: 2022-02-22T14:22:22-05:00, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
        var id = EntryIds.Make(new DateTimeOffset(2022, 2, 22, 14, 22, 22, TimeSpan.FromHours(-5)), 0xCC3, 0x18C4DC0C0C07398F);
        Assert.Equal("017f22e2-79b0-7cc3-98c4-dc0c0c07398f", id.ToString("D"));
        Assert.True(EntryIds.IsVersion7(id));
    }

    [Fact]
    public void Other_versions_and_variants_are_told_apart()
    {
        Assert.False(EntryIds.IsVersion7(Guid.Empty));
        Assert.False(EntryIds.IsVersion7(Guid.Parse("017f22e2-79b0-4cc3-98c4-dc0c0c07398f")));
        Assert.False(EntryIds.IsVersion7(Guid.Parse("017f22e2-79b0-7cc3-18c4-dc0c0c07398f")));
    }

    [Fact]
    public void Ids_ascend_by_time_then_bits_as_their_text_does() =>
        Gen.Select(Gen.Select(Gen.Long[0, 4_000_000_000_000], Gen.Int[0, 4095], Gen.ULong[0, (1UL << 62) - 1]),
            Gen.Select(Gen.Long[0, 4_000_000_000_000], Gen.Int[0, 4095], Gen.ULong[0, (1UL << 62) - 1])).Sample((a, b) =>
        {
            Guid Id((long Ms, int High, ulong Low) p) => EntryIds.Make(DateTimeOffset.FromUnixTimeMilliseconds(p.Ms), p.High, p.Low);
            var wanted = Math.Sign(a.CompareTo(b));
            Assert.Equal(wanted, Math.Sign(EntryOrder.CompareIds(Id(a), Id(b))));
            Assert.Equal(wanted, Math.Sign(string.CompareOrdinal(Id(a).ToString("D"), Id(b).ToString("D"))));
        });

    [Fact]
    public void Times_before_1970_count_as_1970() =>
        Assert.Equal(EntryIds.Make(DateTimeOffset.UnixEpoch, 1, 1), EntryIds.Make(DateTimeOffset.UnixEpoch.AddYears(-10), 1, 1));
}
