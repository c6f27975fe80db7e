using Closemown.Entries;
using Closemown.Steel;
using Closemown.Tests.Entries;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>What holds for every book, whatever is in it.</summary>
public sealed class RandomBookTests
{
    [Fact]
    public void No_book_breaks_the_reckoning()
    {
        RandomBooks.OfUpTo(150).Sample(bodies =>
        {
            var track = new UnitTrack(SteelBook.Description(bodies));
            foreach (var e in SteelBook.Entries(bodies))
            {
                if (track.Add(e) is not { } surprise) continue;
                Assert.All(surprise.At, a => Assert.True(a.P is > 0 and <= 1, $"{a.P} at {a.Station}"));
                Assert.True(surprise.All is > 0 and <= 1, $"{surprise.All}");
            }
            Assert.All(track.Running.Mean, m => Assert.True(double.IsFinite(m)));
            var belief = SteelBelief.Of(track);
            foreach (var (name, q) in SteelBook.Shown(belief)) Assert.True(double.IsFinite(q.Mean) && q.Sd > 0 && q.Sd < 1000 && q.P05 < q.P50 && q.P50 < q.P95, $"{name}: {q}");
            var usable = belief.UsableGapUm();
            Assert.True(usable.P05 < usable.P95 && usable.Sd > 0);
        }, iter: 60, threads: 1);
    }

    [Fact]
    public void The_largest_usable_gap_is_never_expected_below_that_of_a_station()
    {
        RandomBooks.OfUpTo(30).Sample(bodies =>
        {
            var belief = SteelBook.Belief(bodies);
            var usable = belief.UsableGapUm();
            for (var s = 0; s < 3; s++)
            {
                var (m, v) = Stations3.UsableGap(belief.Last, belief.Track.Unit, s);
                // 2000 draws: five spreads of their mean.
                Assert.True(usable.Mean >= m - (5 * Math.Sqrt(v / 2000)), $"{usable.Mean} < {m} at {s}");
            }
        }, iter: 40, threads: 1);
    }

    [Fact]
    public void A_mirrored_record_gives_a_mirrored_answer()
    {
        RandomBooks.OfUpTo(40).Sample(bodies =>
        {
            var one = SteelBook.Belief(bodies);
            var two = SteelBook.Belief([.. bodies.Select(RandomBooks.Mirrored)]);
            for (var s = 0; s < 3; s++)
            {
                Near(one.ClearanceUm(s), two.ClearanceUm(2 - s), $"clearance {s}");
                Near(one.EdgeUm(s), two.EdgeUm(2 - s), $"edge {s}");
            }
            for (var side = 0; side < 2; side++)
            {
                Near(one.ClickUm(side), two.ClickUm(1 - side), $"click {side}");
                Near(one.OpeningUmPerHour(side), two.OpeningUmPerHour(1 - side), $"opening {side}");
                Near(one.OpeningUmPerOuting(side), two.OpeningUmPerOuting(1 - side), $"opening an outing {side}");
                Near(one.LostMotionUm(side), two.LostMotionUm(1 - side), $"lost motion {side}");
            }
            Near(one.BowUm, two.BowUm, "bow");
            Near(one.LapUmPerMinute, two.LapUmPerMinute, "lap");
            Near(one.DullingUmPerHour, two.DullingUmPerHour, "dulling");
        }, iter: 60, threads: 1);
    }

    private static void Near(Estimate a, Estimate b, string what)
    {
        Assert.True(Math.Abs(a.Mean - b.Mean) <= 1e-6 * a.Sd, $"{what}: {a} and {b}");
        Assert.True(Math.Abs(a.Sd - b.Sd) <= 1e-6 * a.Sd, $"{what}: {a} and {b}");
    }

    [Fact]
    public void The_same_entries_give_the_same_bits()
    {
        RandomBooks.OfUpTo(40).Sample(bodies => Assert.Equal(SteelBook.Shown(SteelBook.Belief(bodies)), SteelBook.Shown(SteelBook.Belief(bodies))), iter: 25, threads: 1);
    }

    [Fact]
    public void Another_unit_teaches_nothing()
    {
        Gen.Select(RandomBooks.OfUpTo(25), RandomBooks.OfUpTo(25), Gen.Int[0, int.MaxValue - 1]).Sample((mine, theirs, seed) =>
        {
            // Work done to the turf concerns both units, so it counts as mine.
            Entry Foreign(string body, int n, int minute) => Lines.Read(Lines.Whole(body, n, minute).Replace("\"unit\":\"cylinder\"", "\"unit\":\"other\"", StringComparison.Ordinal));
            var own = mine.Select((b, i) => Lines.Entry(b, i + 1, 10 * i)).ToList();
            var random = new Random(seed);
            var other = theirs.Where(b => !b.Contains("\"work\"", StringComparison.Ordinal)).Select((b, i) => Foreign(b, 1000 + i, random.Next(300)));
            Entry[] mixed = [.. own.Concat(other).Order(EntryOrder.Instance)];
            Assert.Equal(SteelBook.Shown(SteelBelief.Of(UnitTrack.Of(SteelBook.Unit, own))), SteelBook.Shown(SteelBelief.Of(UnitTrack.Of(SteelBook.Unit, mixed))));
        }, iter: 25, threads: 1);
    }

    [Fact]
    public void A_start_from_an_earlier_answer_agrees_with_a_fresh_start()
    {
        RandomBooks.OfUpTo(30).Sample(bodies =>
        {
            var earlier = SteelBook.Belief(bodies[..^1]);
            var track = SteelBook.Track(bodies);
            var warm = SteelBelief.Of(track, earlier);
            var cold = SteelBelief.Of(track);
            // The solver states an agreement of about 1e-6 posterior spreads; 1e-5 leaves room.
            foreach (var ((name, a), (_, b)) in SteelBook.Shown(warm).Zip(SteelBook.Shown(cold)))
                Assert.True(Math.Abs(a.Mean - b.Mean) <= 1e-5 * b.Sd && Math.Abs(a.Sd - b.Sd) <= 1e-5 * b.Sd, $"{name}: {a} and {b}");
        }, iter: 25, threads: 1);
    }
}
