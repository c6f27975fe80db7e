using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>What every book does, in a file or in memory.</summary>
public sealed class StoreTests
{
    private static void OnBoth(Action<IEntryStore> test)
    {
        using (var memory = BookFile.Open(BookFile.InMemory)) test(memory);
        using var folder = new TempFolder();
        using var file = folder.Open();
        test(file);
    }

    [Fact]
    public void Entries_come_back_by_arrival() => OnBoth(book =>
    {
        var entries = Lines.Clicks(5).Reverse().ToArray();           // arrival, not time
        Assert.All(book.AppendAll(entries, allOrNone: true), r => Assert.Equal(AppendResult.Added, r));
        Assert.Equal(5, book.Count);
        var read = book.ReadAll();
        Assert.Equal([1, 2, 3, 4, 5], read.Select(s => s.Seq));
        Assert.Equal(entries.Select(e => e.Json), read.Select(s => s.Entry.Json));
        Assert.Equal(read.Take(3), book.ReadAll(3), (a, b) => a.Seq == b.Seq && a.Hash == b.Hash);
        Assert.Empty(book.ReadAll(0));
        Assert.Equal(entries[1].Json, book.Find(entries[1].Id)!.Json);
        Assert.Null(book.Find(Lines.Id(77)));
    });

    [Fact]
    public void Every_kind_can_be_kept() => OnBoth(book =>
    {
        var entries = Lines.EveryKind().Select(Lines.Read).ToArray();
        book.AppendAll(entries, allOrNone: true);
        Assert.Equal(entries.Where(e => !e.Is(WeatherEntry.Kind)).Select(e => e.Json), book.ReadAll().Select(s => s.Entry.Json));
        Assert.Equal(entries.Where(e => e.Is(WeatherEntry.Kind)).Select(e => e.Json), book.ReadWeather().Select(e => e.Json));
        Assert.All(entries, e => Assert.Equal(e.Json, book.Find(e.Id)!.Json));
    });

    [Fact]
    public void The_same_entry_twice_is_one_and_another_under_its_id_is_refused() => OnBoth(book =>
    {
        var first = Lines.Entry("""{"kind":"lap","minutes":2}""", 1);
        Assert.Equal(AppendResult.Added, book.Append(first));
        Assert.Equal(AppendResult.AlreadyThere, book.Append(Lines.Read(first.Json)));
        Assert.Equal(AppendResult.Conflict, book.Append(Lines.Entry("""{"kind":"lap","minutes":3}""", 1)));
        Assert.Equal(AppendResult.Conflict, book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01"}""", 1)));
        Assert.Equal(1, book.Count);
        Assert.Empty(book.ReadWeatherKept());
        Assert.Equal(first.Json, book.ReadAll()[0].Entry.Json);
    });

    [Fact]
    public void The_chain_is_what_the_document_says() => OnBoth(book =>
    {
        // Reckoned apart, with Python 3: h = bytes(32); for each line h = hashlib.sha256(h + line.encode()).digest().
        book.Append(Lines.Read("""{"v":1,"id":"019de28d-3c00-7000-8000-000000000001","at":"2026-05-01T08:00:00Z","kind":"locked","unit":"ü"}"""));
        book.Append(Lines.Read("""{"v":1,"id":"019de28d-3c00-7000-8000-000000000002","at":"2026-05-01T08:01:00Z","kind":"locked","unit":"ü"}"""));
        Assert.Equal(HashChain.Genesis, book.HashAt(0));
        Assert.Equal("bbc5e5e1e7018f1bb26f602543e2225703aa46cb3c2150cd7f98991db06c9e2c", book.HashAt(1));
        Assert.Equal("eff69df99831c7b6d29e83ec9d4ce2ace234ff42af990a8215730e19c0618dad", book.HashAt(2));
        Assert.Equal(["bbc5e5e1e7018f1bb26f602543e2225703aa46cb3c2150cd7f98991db06c9e2c", "eff69df99831c7b6d29e83ec9d4ce2ace234ff42af990a8215730e19c0618dad"], book.ReadAll().Select(s => s.Hash));
        Assert.Throws<ArgumentOutOfRangeException>(() => book.HashAt(3));
        Assert.Throws<ArgumentOutOfRangeException>(() => book.HashAt(-1));
    });

    [Fact]
    public void All_or_none_keeps_all_out_for_one_conflict() => OnBoth(book =>
    {
        book.Append(Lines.Entry("""{"kind":"lap","minutes":2}""", 2));
        Entry[] batch = [Lines.Entry("""{"kind":"locked"}""", 1), Lines.Entry("""{"kind":"lap","minutes":9}""", 2), Lines.Entry("""{"kind":"locked"}""", 3)];
        Assert.Equal([AppendResult.Withheld, AppendResult.Conflict, AppendResult.Withheld], book.AppendAll(batch, allOrNone: true));
        Assert.Equal(1, book.Count);
        Assert.Equal([AppendResult.Added, AppendResult.Conflict, AppendResult.Added], book.AppendAll(batch, allOrNone: false));
        Assert.Equal(3, book.Count);
    });

    [Fact]
    public void A_batch_that_repeats_or_contradicts_itself_is_told_so() => OnBoth(book =>
    {
        var one = Lines.Entry("""{"kind":"locked"}""", 1);
        Assert.Equal([AppendResult.Added, AppendResult.AlreadyThere, AppendResult.Conflict],
            book.AppendAll([one, one, Lines.Entry("""{"kind":"locked","note":"again"}""", 1)], allOrNone: false));
    });

    [Fact]
    public void Weather_lies_outside_the_chain_and_a_later_forecast_takes_the_place_of_an_earlier() => OnBoth(book =>
    {
        book.AppendAll(Lines.Clicks(2), allOrNone: true);
        var head = book.HashAt(2);
        Assert.Equal(AppendResult.Added, book.Append(Lines.Forecast(11, 15)));
        Assert.Equal(AppendResult.Added, book.Append(Lines.Forecast(13, 17)));
        Assert.Equal(AppendResult.Superseded, book.Append(Lines.Forecast(12, 16)));
        Assert.Equal(AppendResult.Superseded, book.Append(Lines.Forecast(11, 15)));
        Assert.Equal(AppendResult.AlreadyThere, book.Append(Lines.Forecast(13, 17)));
        Assert.Equal(AppendResult.Added, book.Append(Lines.Forecast(10, 9, "2026-05-02")));
        Assert.Equal((2L, head), (book.Count, book.HashAt(book.Count)));
        Assert.Equal([13, 10], book.ReadWeatherKept().Select(Number));
        Assert.Equal([10, 13], book.ReadWeather().Select(Number));
        Assert.Null(book.Find(Lines.Id(11)));
    });

    [Fact]
    public void Recorded_weather_is_kept_and_the_latest_that_stands_counts() => OnBoth(book =>
    {
        Entry Day(int n, double rain, string more = "") => Lines.Entry($$"""{"kind":"weather","date":"2026-05-01","rainMm":{{rain}},"source":"own gauge"{{more}}}""", n);
        book.AppendAll([Day(22, 2), Day(21, 1)], allOrNone: true);
        book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01","rainMm":7}""", 23));
        book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01","rainMm":8,"area":"tee"}""", 24));
        Assert.Equal(4, book.ReadWeatherKept().Count);
        Assert.Equal([23, 22, 24], book.ReadWeather().Select(Number));
        book.Append(Lines.Void(22, 25, 25));
        Assert.Equal([23, 21, 24], book.ReadWeather().Select(Number));
        book.Append(Lines.Void(25, 26, 26));
        Assert.Equal([23, 22, 24], book.ReadWeather().Select(Number));
    });

    [Fact]
    public void A_forecast_that_corrects_another_entry_is_kept() => OnBoth(book =>
    {
        book.Append(Lines.Forecast(1, 10, "2026-05-09"));
        book.Append(Lines.Forecast(2, 12, more: $$""","voids":"{{Lines.Id(1):D}}" """));
        book.Append(Lines.Forecast(3, 13));
        Assert.Equal([1, 2, 3], book.ReadWeatherKept().Select(Number));
        Assert.Equal([3], book.ReadWeather().Select(Number));
    });

    [Fact]
    public void A_book_in_memory_and_a_book_in_a_file_agree_on_everything()
    {
        // Random arrivals with clashing ids, forecasts for two days, and batches with and without all-or-none.
        var row = Gen.Select(Gen.Int[1, 8], Gen.Int[0, 3], Gen.Int[0, 2]);
        Gen.Select(row.Array[1, 8], Gen.Bool).Array[1, 4].Sample(batches =>
        {
            using var folder = new TempFolder();
            using var file = folder.Open();
            using var memory = new MemoryBook();
            foreach (var (rows, allOrNone) in batches)
            {
                var batch = rows.Select(r => r.Item2 switch
                {
                    0 => Lines.Forecast(r.Item1, r.Item3, "2026-05-02"),
                    1 => Lines.Forecast(r.Item1, r.Item3),
                    2 => Lines.Entry($$"""{"kind":"weather","date":"2026-05-03","tMaxC":{{r.Item3}}}""", r.Item1),
                    _ => Lines.Entry($$"""{"kind":"lap","minutes":{{r.Item3 + 1}}}""", r.Item1),
                }).ToArray();
                Assert.Equal(file.AppendAll(batch, allOrNone), memory.AppendAll(batch, allOrNone));
            }
            Assert.Equal(file.ReadAll().Select(s => (s.Seq, s.Entry.Json, s.Hash)), memory.ReadAll().Select(s => (s.Seq, s.Entry.Json, s.Hash)));
            Assert.Equal(file.ReadWeatherKept().Select(e => e.Json), memory.ReadWeatherKept().Select(e => e.Json));
            Assert.Equal(file.ReadWeather().Select(e => e.Json), memory.ReadWeather().Select(e => e.Json));
            Assert.True(Verification.Run(folder.Book).Ok);
        }, iter: 60, threads: 1);
    }

    private static int Number(Entry e) => Enumerable.Range(1, 99).First(n => Lines.Id(n) == e.Id);
}
