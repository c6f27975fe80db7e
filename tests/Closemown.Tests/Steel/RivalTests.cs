using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>What may lie behind readings that do not fit, and what that does to the belief.</summary>
public sealed class RivalTests
{
    private static readonly string[] Settled =
    [
        SteelBook.Known(20, 5),
        .. Enumerable.Repeat(SteelBook.All("contact", "none"), 4),
        SteelBook.Three("swath", "clean", "clean", "clean"),
    ];

    private static void Near(Estimate expected, Estimate actual, double shareOfSd)
    {
        Assert.InRange(actual.Mean, expected.Mean - (shareOfSd * expected.Sd), expected.Mean + (shareOfSd * expected.Sd));
        Assert.InRange(actual.Sd, (1 - shareOfSd) * expected.Sd, (1 + shareOfSd) * expected.Sd);
    }

    [Fact]
    public void Explanations_of_an_odd_reading_add_up_to_no_more_than_one_and_chance_is_among_them()
    {
        var track = SteelBook.Track([.. Settled, SteelBook.All("contact", "heavy")]);
        var all = Assert.Single(track.Unusual).Explanations;
        Assert.Contains(all, e => e.Kind == RivalKind.Chance);
        Assert.True(all.Count > 1);
        Assert.InRange(all.Sum(e => e.Probability), 0.5, 1 + 1e-9);
        Assert.All(all.Where(e => e.Kind != RivalKind.Chance), e => Assert.NotNull(e.About));
    }

    [Fact]
    public void A_mistaken_reading_is_forgotten_once_others_contradict_it()
    {
        var again = Enumerable.Repeat("""{"kind":"contact","left":"none"}""", 3);
        var with = SteelBook.Belief([.. Settled, """{"kind":"contact","left":"heavy"}""", .. again]);
        var without = SteelBook.Belief([.. Settled, .. again]);
        for (var s = 0; s < 3; s++) Near(without.ClearanceUm(s), with.ClearanceUm(s), 0.1);
        Assert.Equal(RivalKind.MistakenReading, with.Track.Unusual[0].Explanations.MaxBy(e => e.Probability)!.Kind);
    }

    [Fact]
    public void A_mistake_right_at_the_start_is_found_by_what_follows()
    {
        string[] again = [.. Enumerable.Repeat("""{"kind":"contact","left":"none"}""", 3)];
        var with = SteelBook.Belief(["""{"kind":"contact","left":"heavy"}""", .. again]);
        var without = SteelBook.Belief(again);
        Near(without.ClearanceUm(0), with.ClearanceUm(0), 0.2);
    }

    [Fact]
    public void An_unseen_strike_is_told_from_a_mistaken_reading_by_reading_again()
    {
        string[] season = [.. Settled, SteelBook.Mow(1), SteelBook.Three("swath", "uncut", "clean", "clean")];
        string[] bench = [SteelBook.Three("paper-cut", "folds", "cuts", "cuts"), SteelBook.Three("paper-cut", "folds", "cuts", "cuts")];
        var b = SteelBook.Belief([.. season, .. bench]);
        Assert.True(b.ClearanceUm(0).Mean + b.EdgeUm(0).Mean > 45, $"{b.ClearanceUm(0)} {b.EdgeUm(0)}");
        Assert.True(b.ClearanceUm(2).Mean < 35, $"{b.ClearanceUm(2)}");
        Assert.Equal(RivalKind.Strike, b.Track.Unusual[0].Explanations.MaxBy(e => e.Probability)!.Kind);
    }

    [Fact]
    public void Where_odd_readings_are_not_heeded_nothing_is_unusual()
    {
        var track = UnitTrack.Of(SteelBook.Unit, SteelBook.Entries([.. Settled, SteelBook.All("contact", "heavy")]), new LearningOptions(Rivals: false));
        Assert.Empty(track.Unusual);
        Assert.Null(track.Memory.Unusual);
    }
}
