using System.Collections.Concurrent;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

public sealed class IdMakerTests
{
    private static void Ascend(IReadOnlyList<Guid> ids) =>
        Assert.All(ids.Zip(ids.Skip(1)), p => Assert.True(EntryOrder.CompareIds(p.First, p.Second) < 0));

    [Fact]
    public void Ids_carry_their_time_and_ascend_within_a_millisecond()
    {
        var maker = new IdMaker();
        var ids = Enumerable.Range(0, 5000).Select(_ => maker.Next(Lines.Start)).ToArray();
        Ascend(ids);
        Assert.All(ids, id => Assert.True(EntryIds.IsVersion7(id)));
        Assert.StartsWith(Lines.Start.ToUnixTimeMilliseconds().ToString("x12", null), ids[0].ToString("N"), StringComparison.Ordinal);
        Assert.True(EntryOrder.CompareIds(maker.Next(Lines.Start.AddMilliseconds(-1)), ids[0]) < 0);
        Assert.True(EntryOrder.CompareIds(maker.Next(Lines.Start), ids[^1]) > 0);     // also after another time came between
    }

    [Fact]
    public void Many_makers_on_many_threads_do_not_meet()
    {
        var all = new ConcurrentBag<Guid>();
        var shared = new IdMaker();
        Parallel.For(0, 200, i =>
        {
            var own = new IdMaker();
            for (var n = 0; n < 100; n++)
            {
                all.Add(own.Next(Lines.Start));
                all.Add(shared.Next(Lines.Start));
            }
        });
        Assert.Equal(40_000, all.Distinct().Count());
    }

    [Fact]
    public void Running_numbers_are_the_same_at_each_run_and_ascend_for_equal_times()
    {
        Guid[] Run()
        {
            var ids = new SequentialIds();
            return [.. Enumerable.Range(0, 100).Select(_ => ids.Next(Lines.Start))];
        }
        Assert.Equal(Run(), Run());
        Ascend(Run());
        Assert.Equal(Lines.Id(1), Run()[0]);
    }

    [Fact]
    public void Running_numbers_go_on_after_those_of_the_book()
    {
        using var book = new MemoryBook();
        Assert.Equal(0, SequentialIds.After(book).Last);
        book.AppendAll([.. Lines.Clicks(3), Lines.Forecast(9, 12)], allOrNone: true);
        book.Append(Lines.Read($$"""{"id":"{{new IdMaker().Next(Lines.Start):D}}","at":"2026-05-01T08:00:00Z","kind":"locked","unit":"a"}"""));
        var ids = SequentialIds.After(book);
        Assert.Equal(9, ids.Last);
        Assert.Equal(Lines.Id(10), ids.Next(Lines.Start));
    }

    [Fact]
    public void A_canonical_order_of_arrival_is_the_order_of_the_book()
    {
        using var book = new MemoryBook();
        var ids = new SequentialIds();
        var context = new EntryContext { NewId = ids.Next, Now = () => Lines.Start, OnlyUnit = () => "a" };
        for (var i = 1; i <= 300; i++)
        {
            Assert.Empty(EntryReader.Read($$"""{"kind":"clicks","left":{{i % 9}},"right":1}""", context, out var entry));
            book.Append(entry!);
        }
        var arrived = book.ReadAll().Select(s => s.Entry.Id).ToArray();
        Assert.Equal(arrived, book.ReadAll().Select(s => s.Entry).Order(EntryOrder.Instance).Select(e => e.Id));
    }
}
