using Closemown.Advice;
using Closemown.Entries;
using Closemown.Height;
using Closemown.Steel;
using Closemown.Tests.Entries;
using Closemown.Tests.Steel;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>What is believed depends on the standing entries alone, not on how and when they arrived.</summary>
public sealed class DeskTests
{
    private static IEnumerable<(string Name, Estimate Value)> Shown(Desk desk) => SteelBook.Shown(desk.Belief(SteelBook.Unit)).Concat(Heights(desk.Height(SteelBook.Unit)));

    private static IEnumerable<(string Name, Estimate Value)> Rebuilt(IEnumerable<Entry> entries)
    {
        var standing = StandingEntries.Of(entries);
        return SteelBook.Shown(SteelBelief.Of(UnitTrack.Of(SteelBook.Unit, standing))).Concat(Heights(HeightBelief.Of(HeightTrack.Of(SteelBook.Unit, standing))));
    }

    private static IEnumerable<(string Name, Estimate Value)> Heights(HeightBelief b) => new (string Name, HeightEstimate Value)[]
    {
        ("bench left", b.BenchMm(0)), ("bench right", b.BenchMm(1)), ("cut", b.CutMm()), ("sink", b.SinkMm()), ("turn", b.ScrewMmPerTurn(0)), ("gauge", b.GaugeSdMm),
    }.Select(x => (x.Name, Estimate.Normal(x.Value.Mean, x.Value.Sd * x.Value.Sd)));

    [Fact]
    public void Entries_that_come_in_order_give_the_same_bits_as_all_at_once()
    {
        Gen.Select(RandomBooks.OfUpTo(30), Gen.Int[1, 7]).Sample((bodies, every) =>
        {
            var entries = SteelBook.Entries(bodies);
            var desk = new Desk();
            var fresh = new UnitTrack(SteelBook.Description(bodies));
            for (var i = 0; i < entries.Length; i++)
            {
                desk.Add(entries[i], $"{i}");
                if (i % every == 0) Assert.NotEmpty(Shown(desk));       // a question in between changes nothing
            }
            Assert.Equal(Rebuilt(entries), Shown(desk));
        }, iter: 25, threads: 1);
    }

    [Fact]
    public void The_oddness_of_a_reading_is_that_of_the_record_so_far()
    {
        RandomBooks.OfUpTo(25).Sample(bodies =>
        {
            var entries = SteelBook.Entries(bodies);
            var desk = new Desk();
            for (var i = 0; i < entries.Length; i++)
            {
                var said = desk.Add(entries[i], $"{i}");
                ReadingSurprise? expected = null;
                var track = new UnitTrack(UnitDescription.Of(SteelBook.Unit, entries.Take(i + 1).Where(e => e.Is(UnitEntry.Kind))));
                foreach (var e in entries.Take(i + 1)) expected = track.Add(e);
                var heights = new HeightTrack(HeightUnit.Of(SteelBook.Unit, entries.Take(i + 1).Where(e => e.Is(UnitEntry.Kind))));
                HeightSurprise? height = null;
                foreach (var e in entries.Take(i + 1)) height = heights.Add(e);
                if (height is not null) expected = new([.. height.At.Select(a => (a.Station == "left" ? 0 : 2, a.P))], height.All);
                Assert.Equal(expected?.All, said?.All);
                Assert.Equal(expected?.At, said?.At);
            }
        }, iter: 15, threads: 1);
    }

    [Fact]
    public void Entries_that_arrive_in_any_order_with_voids_among_them_give_the_same_bits()
    {
        Gen.Select(RandomBooks.OfUpTo(20), Gen.Int[0, int.MaxValue - 1]).Sample((bodies, seed) =>
        {
            var random = new Random(seed);
            var entries = SteelBook.Entries(bodies).ToList();
            for (var n = random.Next(4); n > 0; n--) entries.Add(Lines.Void(1 + random.Next(entries.Count), 500 + n, random.Next(400)));
            var expected = Rebuilt(entries);
            var arriving = entries.ToArray();
            random.Shuffle(arriving);
            var desk = new Desk();
            foreach (var e in arriving)
            {
                desk.Add(e, e.Id.ToString());
                if (random.Next(3) == 0) Assert.NotEmpty(Shown(desk));
            }
            Assert.Equal(expected, Shown(desk));
        }, iter: 25, threads: 1);
    }

    [Fact]
    public void A_voided_reading_has_no_effect()
    {
        Gen.Select(RandomBooks.OfUpTo(20), Gen.Int[0, 19]).Sample((bodies, at) =>
        {
            var entries = SteelBook.Entries(bodies);
            var gone = entries[at % entries.Length];
            var desk = new Desk();
            foreach (var e in entries) desk.Add(e, e.Id.ToString());
            desk.Add(Lines.Read(Lines.Whole($$"""{"kind":"void","voids":"{{gone.Id:D}}"}""", 900, 900)), "void");
            Assert.Equal(Rebuilt(entries.Where(e => e != gone)), Shown(desk));
        }, iter: 20, threads: 1);
    }

    [Fact]
    public void Work_on_the_turf_that_names_the_unit_counts_once()
    {
        string[] before = [SteelBook.Known(30), SteelBook.Mow(1)];
        Entry Work(string unit) => Lines.Read(Lines.Whole($$"""{"kind":"work","what":"topdress"{{unit}}}""", 50, 50));
        Entry Mown() => Lines.Entry(SteelBook.Mow(1), 51, 51);
        foreach (var unit in (string[])["", ",\"unit\":\"cylinder\"", ",\"unit\":\"other\""])
        {
            var desk = new Desk();
            foreach (var e in SteelBook.Entries(before)) desk.Add(e, "x");
            Assert.NotEmpty(Shown(desk));
            desk.Add(Work(unit), "x");
            desk.Add(Mown(), "x");
            Assert.Equal(4, desk.Track(SteelBook.Unit).Entries);
            Assert.Equal(Rebuilt([.. SteelBook.Entries(before), Work(unit), Mown()]), Shown(desk));
        }
    }

    [Fact]
    public void A_desk_as_it_was_knows_only_the_first_entries()
    {
        var entries = SteelBook.Entries(SteelBook.Known(30), SteelBook.Clicks(1, 1), SteelBook.Ends("contact", "none", "none"));
        var desk = new Desk();
        foreach (var e in entries) desk.Add(e, $"hash {e.Id}");
        Assert.Equal(Rebuilt(entries.Take(2)), Shown(desk.Before(2)));
        Assert.Equal(desk.HashAfter(2), desk.Before(2).HashAfter(2));
    }
}
