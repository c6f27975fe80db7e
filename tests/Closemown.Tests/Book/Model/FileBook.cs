using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Tests.Book.Model;

/// <summary>A book in a file, and what is done to it from within and without.</summary>
internal sealed class FileBook : IDisposable
{
    [ThreadStatic]
    private static FileBook? last;

    // What is tried is the order of things, not the disk: in memory where the system has a disk there, as each commit waits for a disk.
    private const string InMemory = "/dev/shm";
    private readonly string folder = Directory.Exists(InMemory)
        ? Directory.CreateDirectory(System.IO.Path.Combine(InMemory, "closemown-model-" + System.IO.Path.GetRandomFileName())).FullName
        : Directory.CreateTempSubdirectory("closemown-model-").FullName;
    private IEntryStore book;
    private string? copy;
    private string differs = "";
    private int copies;
    private int restores;

    /// <summary>A new book; the one before it on this thread is removed.</summary>
    public FileBook()
    {
        last?.Dispose();
        last = this;
        book = BookFile.Open(Path);
    }

    /// <summary>What became of each thing done, in words.</summary>
    public List<string> Told { get; } = [];

    private string Path => At("book.closemown");

    public static void RemoveLast()
    {
        last?.Dispose();
        last = null;
    }

    public void Append(Entry e) => Told.Add(book.Append(e).ToString());

    public void Import(IReadOnlyList<Entry> entries)
    {
        var report = Importer.Read(new StringReader(string.Join('\n', entries.Select(e => e.Json))), book);
        Told.Add($"{report.Added} of {report.Lines}, {report.Bad} bad");
    }

    /// <summary>Another book, with the same entries, is exported into this one.</summary>
    public void Merge(IReadOnlyList<Entry> entries)
    {
        using var other = BookFile.Open(At("other"));
        other.AppendAll(entries, allOrNone: false);
        using var lines = new StringWriter();
        Exporter.Write(other, lines);
        other.Dispose();
        File.Delete(At("other"));
        var report = Importer.Read(new StringReader(lines.ToString()), book);
        Told.Add($"{report.Added} of {entries.Count}, {report.Bad} bad");
    }

    /// <summary>Another program has it open as well and writes.</summary>
    public void Beside(Entry e)
    {
        using var other = BookFile.Open(Path);
        Told.Add(other.Append(e).ToString());
    }

    public void Restart()
    {
        book.Dispose();
        book = BookFile.Open(Path);
    }

    /// <summary>The file and its log as they lie there are all that is left.</summary>
    public void Crash()
    {
        foreach (var beside in new[] { "", "-wal" }) Copy(Path + beside, At("crash" + beside));
        book.Dispose();
        Remove(Path);
        foreach (var beside in new[] { "", "-wal" })
        {
            if (File.Exists(At("crash" + beside))) File.Move(At("crash" + beside), Path + beside);
        }
        book = BookFile.Open(Path);
    }

    public void Backup()
    {
        copy = Closemown.Book.Backup.Make(Path, At($"copy-{++copies}"), DateOnly.MinValue).Path;
        Told.Add($"copied {Verification.Run(copy).Entries}");
    }

    public void Replaced(Entry more, bool writtenOver)
    {
        if (copy is null || (writtenOver && Verification.Run(copy).Entries == book.Count))
        {
            Told.Add("nothing to replace it with");
            return;
        }
        if (writtenOver)
        {
            // The log is first written into the file, and that is seen, as the server does each second: else the copy could be newer than the file by itself.
            using (var raw = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path};Pooling=False"))
            {
                raw.Open();
                using var command = raw.CreateCommand();
                command.CommandText = "pragma wal_checkpoint(passive)";
                command.ExecuteNonQuery();
            }
            _ = book.Stamp;
            Thread.Sleep(12);       // the time of a file goes by steps of some milliseconds
            File.WriteAllBytes(Path, File.ReadAllBytes(copy));
        }
        else
        {
            File.Copy(copy, At("coming"));
            File.Move(At("coming"), Path, overwrite: true);
        }
        Told.Add(Refused(more));
        book.Dispose();
        // What a person is told to do: the file is the right one, the log is moved away.
        foreach (var beside in new[] { "-wal", "-shm" }) File.Delete(Path + beside);
        book = BookFile.Open(Path);
    }

    public void MovedAway(Entry more)
    {
        File.Move(Path, At("away"));
        Told.Add(Refused(more));
        book.Dispose();
        File.Move(At("away"), Path);
        book = BookFile.Open(Path);
    }

    public void Restore(bool merge)
    {
        if (copy is null)
        {
            Told.Add("no backup");
            return;
        }
        book.Dispose();
        var report = Closemown.Book.Restore.Make(copy, Path, new DateTime(2026, 5, 1).AddSeconds(++restores), merge);
        Told.Add($"restored, {report.Lacking} lacking, {report.Merged} merged");
        book = BookFile.Open(Path);
    }

    /// <summary>Whether the file, as read anew and as this program goes on reading it, is what it ought to be.</summary>
    public bool Is(ListBook model)
    {
        differs = Difference(model);
        return differs.Length == 0;
    }

    private string Difference(ListBook model)
    {
        if (!Told.SequenceEqual(model.Told)) return "told otherwise";
        if (!Same(book, model)) return $"as it goes on: {Shown(book)}";
        using (var anew = BookFile.Open(Path, new BookOptions { ReadOnly = true }))
        {
            if (!Same(anew, model)) return $"as opened anew: {Shown(anew)}";
        }
        var report = Verification.Run(Path);
        return !report.Ok ? report.Problems[0].ToString()
            : (report.Entries, report.Weather) != (model.Chain.Count, model.Weather.Count) ? $"{report.Entries} entries, {report.Weather} of weather" : "";
    }

    private static string Shown(IEntryStore book) => string.Join(' ', book.ReadAll().Select(s => s.Entry).Concat(book.ReadWeatherKept()).Select(e => e.Id.ToString("D")[^3..]));

    public override string ToString() => $"{string.Join(" | ", Told)}; {differs}";

    public void Dispose()
    {
        book.Dispose();
        if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
    }

    private static bool Same(IEntryStore book, ListBook model)
    {
        var (hash, entries) = (HashChain.Genesis, book.ReadAll());
        if (!entries.Select(s => s.Entry.Json).SequenceEqual(model.Chain.Select(e => e.Json))) return false;
        if (!book.ReadWeatherKept().Select(e => e.Json).SequenceEqual(model.Weather.Select(e => e.Json))) return false;
        return entries.All(s => s.Hash == (hash = HashChain.Next(hash, s.Entry.Json)));
    }

    private string Refused(Entry more)
    {
        try
        {
            return book.Append(more).ToString();
        }
        catch (BookException e)
        {
            return e.Trouble.ToString();
        }
    }

    private string At(string name) => System.IO.Path.Combine(folder, name);

    private static void Copy(string from, string to)
    {
        if (File.Exists(from)) File.Copy(from, to);
    }

    private static void Remove(string path)
    {
        foreach (var beside in new[] { "", "-wal", "-shm" }) File.Delete(path + beside);
    }
}
