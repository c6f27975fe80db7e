using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>A person's scatter is learned from how their readings scatter, person by person.</summary>
public sealed class ScatterTests
{
    private static readonly string[] Steady = ["light", "light", "light", "light", "light", "light", "light", "light", "light", "light", "light", "light"];
    private static readonly string[] Wild = ["none", "heavy", "light", "none", "heavy", "none", "light", "heavy", "none", "heavy", "light", "none"];

    /// <summary>A unit of whose clearance nothing is known; repeats are fresh evidence, as in <see cref="SteelBook.Known"/>.</summary>
    private const string Fresh = """{"kind":"unit","priors":{"repeatShare":[0,1]}}""";

    private static string[] Readings(string[] words, string by = "") =>
        [SteelBook.Known(4, 5), .. words.Select(w => $$"""{"kind":"contact","left":"{{w}}","right":"{{w}}"{{(by.Length > 0 ? $",\"by\":\"{by}\"" : "")}}}""")];

    private static PersonScatter Of(params string[] bodies) => Assert.Single(SteelBook.Track(bodies).People);

    [Fact]
    public void Before_any_reading_nobody_is_known() => Assert.Empty(SteelBook.Track(SteelBook.Known(4, 5)).People);

    [Fact]
    public void Readings_that_jump_about_teach_a_wider_scatter_than_steady_ones()
    {
        var (steady, wild) = (Of(Readings(Steady)), Of(Readings(Wild)));
        Assert.True(wild.Mean > 1.5 && steady.Mean < 1.1, $"{wild.Mean} and {steady.Mean}");
        Assert.Equal(24, wild.Readings);
        Assert.Equal(1, wild.Weights.Sum(), 12);
    }

    [Fact]
    public void The_belief_after_wild_readings_is_wider()
    {
        var learned = SteelBook.Belief([Fresh, .. Readings(Wild)[1..]]);
        var entries = SteelBook.Entries([Fresh, .. Readings(Wild)[1..]]);
        var fixedScatter = SteelBelief.Of(UnitTrack.Of(SteelBook.Unit, entries, new LearningOptions(Rivals: false, Scatter: false)));
        Assert.True(learned.ClearanceUm(0).Sd > fixedScatter.ClearanceUm(0).Sd);
        Assert.True(learned.ScatterFactor > 1.3);
        Assert.Equal(1, fixedScatter.ScatterFactor);
    }

    [Fact]
    public void Two_people_are_told_apart()
    {
        var people = SteelBook.Track([.. Readings(Steady, "Ann"), .. Readings(Wild, "Ben")[1..]]).People.ToDictionary(p => p.By);
        Assert.True(people["Ben"].Mean > people["Ann"].Mean + 0.3, $"{people["Ann"].Mean} and {people["Ben"].Mean}");
    }
}
