using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Every row of the published values, against the code.</summary>
public sealed class CheckRowTests
{
    public static TheoryData<string> Ids => [.. CheckRow.All.Select(r => r.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_published_value_comes_out(string id)
    {
        var row = CheckRow.Of(id);
        var reckon = Reckoners.For(id);
        Assert.True(reckon is not null, $"no formula goes with {id}");
        var actual = reckon(row);
        var expected = row.Expected;
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.True(Math.Abs(actual[i] - expected[i]) <= row.Tolerance(expected[i]), $"{id}: {actual[i]:R} is not {expected[i]:R} ± {row.Tolerance(expected[i]):g3} ({row.Source})");
        }
    }

    public static TheoryData<string> FullIds => [.. CheckRow.All.Where(r => r.Full is not null).Select(r => r.Id)];

    [Theory]
    [MemberData(nameof(FullIds))]
    public void The_exact_value_behind_a_printed_one_comes_out(string id)
    {
        var row = CheckRow.Of(id);
        var actual = Assert.Single(Reckoners.For(id)!(row));
        Assert.True(Math.Abs(actual - row.Full!.Value) <= row.FullTolerance, $"{id}: {actual:R} is not {row.Full.Value:R}");
    }

    [Fact]
    public void Every_row_names_a_source_and_a_known_mark()
    {
        string[] marks = ["published example", "computed from published formula", "common practice, no source", "from memory"];
        Assert.All(CheckRow.All, r =>
        {
            Assert.NotEqual("", r.Source);
            Assert.Contains(r.Mark, marks);
        });
    }

    [Fact]
    public void No_reckoner_lies_idle() =>
        Assert.All(Reckoners.All, r => Assert.Contains(CheckRow.All, row => Reckoners.For(row.Id) == r.Of));
}
