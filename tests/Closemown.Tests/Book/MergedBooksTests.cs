using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Closemown.Tests.Pipe;
using Closemown.Tests.Steel;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>Two devices' books, merged in any order, say the same: the same entries stand, and from a cold solution the same bits come out.</summary>
public sealed class MergedBooksTests
{
    /// <summary>How many pairs of books are tried: a few with every run of the tests, more on request.</summary>
    private static readonly int Pairs = int.TryParse(Environment.GetEnvironmentVariable("CLOSEMOWN_MERGES"), out var n) && n > 0 ? n : 6;

    private sealed record State(IReadOnlyList<string> Standing, IReadOnlyList<string> Weather, IReadOnlyList<string> Kept, double[] Mean, double[] Covariance, string Next);

    private static State Of(IEntryStore book)
    {
        var desk = new Desk();
        foreach (var s in book.ReadAll()) desk.Add(s.Entry, s.Hash);
        var last = desk.Belief(SteelBook.Unit).Last;
        var next = new Talk(book: book).Say($$"""{"ask":"next","unit":"{{SteelBook.Unit}}"}""");
        return new([.. desk.Standing.Select(e => e.Json)], [.. book.ReadWeather().Select(e => e.Json)], [.. book.ReadWeatherKept().Select(e => e.Json).Order(StringComparer.Ordinal)],
            [.. last.Mean], [.. last.Covariance], next.ToJsonString());
    }

    private static void Same(State a, State b)
    {
        Assert.Equal(a.Standing, b.Standing);
        Assert.Equal(a.Weather, b.Weather);
        Assert.Equal(a.Kept, b.Kept);
        Assert.Equal(a.Mean.Select(BitConverter.DoubleToInt64Bits), b.Mean.Select(BitConverter.DoubleToInt64Bits));
        Assert.Equal(a.Covariance.Select(BitConverter.DoubleToInt64Bits), b.Covariance.Select(BitConverter.DoubleToInt64Bits));
        Assert.Equal(a.Next, b.Next);
    }

    private static void MergeInto(IEntryStore book, IEntryStore other)
    {
        using var text = new StringWriter();
        Exporter.Write(other, text);
        Assert.True(Importer.Read(new StringReader(text.ToString()), book).Ok);
    }

    /// <summary>A unit's entries, with voids, voids of voids, voids of what no book holds, and weather, some of it corrected.</summary>
    private static List<Entry> Everything(string[] bodies, Random random)
    {
        var entries = SteelBook.Entries(bodies).ToList();
        for (var n = random.Next(5); n > 0; n--)
        {
            var target = random.Next(bodies.Length);
            entries.Add(Lines.Void(1 + target, 500 + n, random.Next(400)));
        }
        var voids = entries.Where(e => e.Is(VoidEntry.Kind)).ToList();
        for (var n = voids.Count > 0 ? random.Next(3) : 0; n > 0; n--)
            entries.Add(Lines.Read(Lines.Whole($$"""{"kind":"void","voids":"{{voids[random.Next(voids.Count)].Id:D}}"}""", 600 + n, random.Next(400))));
        if (random.Next(3) == 0) entries.Add(Lines.Void(4000, 700, 50));
        for (var n = random.Next(6); n > 0; n--)
        {
            entries.Add(Lines.Entry(FormattableString.Invariant($$"""{"kind":"weather","date":"2026-05-0{{1 + random.Next(3)}}","tMaxC":{{random.Next(10, 20)}},"source":"forecaster","forecast":{{(random.Next(3) > 0 ? "true" : "false")}}}"""), 800 + n, random.Next(400)));
            if (random.Next(4) == 0) entries.Add(Lines.Void(800 + n, 900 + n, random.Next(400)));
        }
        return entries;
    }

    [Fact]
    public void In_any_order_of_arrival()
    {
        Gen.Select(RandomBooks.OfUpTo(18), Gen.Int[0, int.MaxValue - 1]).Sample((bodies, seed) =>
        {
            var random = new Random(seed);
            var entries = Everything(bodies, random).ToArray();
            using var folder = new TempFolder();
            IEntryStore Book(string name, IEnumerable<Entry> arriving)
            {
                var book = BookFile.Open(folder.At(name));
                foreach (var e in arriving) book.Append(e);
                return book;
            }
            var side = entries.Select(_ => random.Next(3)).ToArray();          // this device's, the other's, both
            Entry[] Of(int other)
            {
                var some = entries.Where((_, i) => side[i] != other).ToArray();
                random.Shuffle(some);
                return some;
            }
            using var a = Book("a", Of(1));
            using var b = Book("b", Of(0));
            using var alone = Book("alone", entries.Order(EntryOrder.Instance));
            using var a2 = Book("a2", a.ReadAll().Select(s => s.Entry).Concat(a.ReadWeatherKept()));
            MergeInto(a, b);
            MergeInto(b, a2);
            random.Shuffle(entries);
            using var shuffled = Book("shuffled", entries);
            var expected = MergedBooksTests.Of(alone);
            Same(expected, MergedBooksTests.Of(a));
            Same(expected, MergedBooksTests.Of(b));
            Same(expected, MergedBooksTests.Of(shuffled));
            foreach (var name in (string[])["a", "b", "shuffled"]) Assert.True(Verification.Run(folder.At(name)).Ok);
        }, iter: Pairs, threads: 1);
    }

    [Fact]
    public void A_void_that_bears_an_earlier_time_than_its_target_and_arrives_before_it()
    {
        Entry[] entries = [.. SteelBook.Entries(SteelBook.Known(30), SteelBook.Mow(1), SteelBook.Clicks(3, 3)), Lines.Void(3, 500, 5)];
        using var inOrder = new MemoryBook();
        inOrder.AppendAll([.. entries.Order(EntryOrder.Instance)], allOrNone: true);
        using var voidLast = new MemoryBook();
        voidLast.AppendAll(entries, allOrNone: true);
        Same(Of(voidLast), Of(inOrder));
    }
}
