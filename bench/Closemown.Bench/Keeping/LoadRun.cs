using System.Globalization;
using Closemown.Advice;
using Closemown.Bench.Speed;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Microsoft.Data.Sqlite;

namespace Closemown.Bench.Keeping;

/// <summary>What it costs to check the chain while loading: book-load [--pairs N]. Each pair loads a book once with and once without, in turn.</summary>
internal static class LoadRun
{
    public static int Print(string[] args)
    {
        var pairs = Options.Number(args, "--pairs", 25);
        var folder = Directory.CreateTempSubdirectory("closemown-load-").FullName;
        try
        {
            Console.WriteLine("| entries | without the check, CPU ms | with it, CPU ms | ratio, median of pairs |\n|---|---|---|---|");
            foreach (var count in (int[])[1000, 10_000, 50_000]) Row(Path.Combine(folder, $"{count}"), count, pairs);
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Row(string path, int count, int pairs)
    {
        using (var book = BookFile.Open(path)) book.AppendAll(InventedBook.Of(count), allOrNone: true);
        List<double> with = [], without = [], ratios = [];
        for (var n = 0; n < pairs + 2; n++)
        {
            // The first two are for the compiler's sake; then one goes first as often as the other.
            double a, b;
            if (n % 2 == 0) (a, b) = (Cpu(() => Unchecked(path)), Cpu(() => Checked(path)));
            else (b, a) = (Cpu(() => Checked(path)), Cpu(() => Unchecked(path)));
            if (n < 2) continue;
            without.Add(a);
            with.Add(b);
            ratios.Add(b / a);
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {count} | {Median(without):0.0} | {Median(with):0.0} | {Median(ratios):0.000} |"));
    }

    private static double Cpu(Action load)
    {
        GC.Collect();
        var used = Environment.CpuUsage.TotalTime;
        load();
        return (Environment.CpuUsage.TotalTime - used).TotalMilliseconds;
    }

    private static double Median(List<double> of) => of.Order().ElementAt(of.Count / 2);

    private static void Checked(string path)
    {
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
        Loaded(new Conversation(book, AdviceSettings.Default, Phrasing.Plain, new SequentialIds().Next).Desk.Arrived.Count);
    }

    /// <summary>As it was loaded before the chain was checked: the same opening, and a loop over the rows.</summary>
    private static void Unchecked(string path)
    {
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
        using var raw = new SqliteConnection($"Data Source={path};Pooling=False");
        raw.Open();
        using var command = raw.CreateCommand();
        command.CommandText = "select seq, json, hash from entry order by seq";
        using var reader = command.ExecuteReader();
        var entries = new List<StoredEntry>();
        while (reader.Read())
        {
            EntryReader.Read(reader.GetString(1), EntryContext.Stored, out var entry);
            entries.Add(new(reader.GetInt64(0), entry!, reader.GetString(2)));
        }
        var desk = new Desk(AdviceSettings.Default.Learning, book.ReadWeather);
        var areas = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var stored in entries)
        {
            desk.Load(stored.Entry, stored.Hash);
            if (stored.Entry.Area is { } area) areas.Add(area);
        }
        Loaded(desk.Arrived.Count);
    }

    private static void Loaded(int count)
    {
        if (count == 0) throw new InvalidOperationException("Nothing was loaded.");
    }
}
