using System.Globalization;
using Closemown.Entries;
using CsCheck;

namespace Closemown.Tests.Book.Model;

/// <summary>Random sequences of what happens to a book, done to a file and to lists in memory.</summary>
internal static class BookModel
{
    private const int Things = 48;

    private static readonly Entry[] Pool = [.. Enumerable.Range(0, Things).Select(Thing)];

    /// <summary>Tries so many sequences; throws with the shortest one that differs.</summary>
    /// <param name="sequences">How many.</param>
    /// <param name="seed">Where to begin; null anywhere.</param>
    /// <param name="threads">How many at a time.</param>
    /// <param name="tell">Takes the table of what was done how often; null for none.</param>
    public static void Check(long sequences, string? seed = null, int threads = 1, Action<string>? tell = null) =>
        Gen.Int[0, 8].Select(n => (Begun(n), BegunList(n))).SampleModelBased(Operations, equal: (file, model) => file.Is(model), seed: seed, iter: sequences, threads: threads,
            printActual: f => f.ToString(), printModel: m => $"{string.Join(" | ", m.Told)}; {string.Join(' ', m.Chain.Concat(m.Weather).Select(e => e.Id.ToString("D")[^3..]))}", classify: m => m.Chain.Count == 0 ? "empty" : "with entries", writeLine: tell);

    private static readonly Gen<Entry> One = Gen.Int[0, Things - 1].Select(n => Pool[n]);

    private static readonly Gen<Entry[]> Some = One.Array[1, 12];

    private static GenOperation<FileBook, ListBook>[] Operations =>
    [
        One.Operation<FileBook, ListBook>(e => $"append {Short(e)}", (f, e) => f.Append(e), (m, e) => m.Append(e)),
        One.Operation<FileBook, ListBook>(e => $"append {Short(e)}", (f, e) => f.Append(e), (m, e) => m.Append(e)),
        One.Operation<FileBook, ListBook>(e => $"beside {Short(e)}", (f, e) => f.Beside(e), (m, e) => m.Append(e)),
        Some.Operation<FileBook, ListBook>(s => $"import {Shorts(s)}", (f, s) => f.Import(s), (m, s) => m.Import(s)),
        Some.Select(Once).Operation<FileBook, ListBook>(s => $"merge {Shorts(s)}", (f, s) => f.Merge(s), (m, s) => m.Import(s)),
        Gen.Operation<FileBook, ListBook>("crash", f => f.Crash(), _ => { }),
        Gen.Operation<FileBook, ListBook>("restart", f => f.Restart(), _ => { }),
        Gen.Operation<FileBook, ListBook>("backup", f => f.Backup(), m => m.Backup()),
        Gen.Bool.Operation<FileBook, ListBook>(merge => $"restore {merge}", (f, merge) => f.Restore(merge), (m, merge) => m.Restore(merge)),
        Gen.Operation<FileBook, ListBook>("replaced", f => f.Replaced(Pool[0], writtenOver: false), m => m.Replaced(writtenOver: false)),
        Gen.Operation<FileBook, ListBook>("written over", f => f.Replaced(Pool[0], writtenOver: true), m => m.Replaced(writtenOver: true)),
        Gen.Operation<FileBook, ListBook>("moved away", f => f.MovedAway(Pool[0]), m => m.MovedAway()),
    ];

    private static FileBook Begun(int n)
    {
        var file = new FileBook();
        foreach (var e in Pool.Take(n)) file.Append(e);
        return file;
    }

    private static ListBook BegunList(int n)
    {
        var model = new ListBook();
        foreach (var e in Pool.Take(n)) model.Append(e);
        return model;
    }

    /// <summary>Without weather, which an export puts last, and each id once.</summary>
    private static Entry[] Once(Entry[] some) => [.. some.Where(e => !e.Is(WeatherEntry.Kind)).DistinctBy(e => e.Id)];

    private static string Short(Entry e) => $"{e.Kind.Name} {e.Id.ToString("D")[^3..]}";

    private static string Shorts(Entry[] some) => string.Join(", ", some.Select(Short));

    /// <summary>Readings, voids of earlier things, corrections, weather, and every ninth an id that another thing has.</summary>
    private static Entry Thing(int n)
    {
        var body = (n % 8) switch
        {
            1 => $"\"kind\":\"mow\",\"unit\":\"mower\",\"hours\":0.{1 + (n % 9)}",
            3 => $"\"kind\":\"void\",\"voids\":\"{Id(n - 1)}\"",
            4 => $"\"kind\":\"clicks\",\"unit\":\"mower\",\"left\":{(n % 5) + 1},\"voids\":\"{Id(n - 2)}\"",
            5 => $"\"kind\":\"weather\",\"area\":\"green\",\"date\":\"2026-05-0{1 + (n % 3)}\",\"source\":\"s\",\"tMaxC\":{10 + (n % 20)},\"forecast\":true",
            6 => $"\"kind\":\"weather\",\"area\":\"green\",\"date\":\"2026-05-0{1 + (n % 3)}\",\"source\":\"s\",\"tMaxC\":{10 + (n % 20)}",
            7 => $"\"kind\":\"locked\",\"unit\":\"mower\",\"note\":\"{new string('n', 40 * n)} – fein 🌱\"",
            _ => $"\"kind\":\"clicks\",\"unit\":\"mower\",\"left\":{(n % 9) + 1},\"note\":\"turn {n}\"",
        };
        var id = Id(n % 9 == 8 ? n - 4 : n);
        var at = new DateTimeOffset(2026, 5, 1, 8, 0, 0, TimeSpan.Zero).AddMinutes(n * 7 % 50).ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture);
        var line = $"{{\"v\":1,\"id\":\"{id}\",\"at\":\"{at}\",{body}}}";
        var faults = EntryReader.Read(line, EntryContext.Whole, out var entry);
        return entry ?? throw new InvalidOperationException($"{line}: {faults[0]}");
    }

    private static string Id(int n) => $"019de28d-3c00-7000-8000-{n:x12}";
}
