using Closemown.Book;

namespace Closemown.Fuzzing;

/// <summary>Lines brought into a book and out again.</summary>
internal sealed class ImportTarget() : FuzzTarget("import")
{
    private const int Most = 20_000;

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes([string.Join('\n', GoodLines.Whole.Take(6)), string.Join("\r\n", GoodLines.Whole.Skip(20).Take(6)) + "\n\n", .. GoodLines.Whole]);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(GoodLines.Whole.Select(l => $"\n{l}\n"));

    public override int Longest => Most;

    public override int Weight => 2;

    public override void Run(byte[] input)
    {
        using var book = new MemoryBook();
        var preview = Import(input, book, new ImportOptions { Preview = true });
        Laws.Must(book.Count == 0 && book.ReadWeatherKept().Count == 0, "a preview writes nothing", preview.ToString());
        var report = Import(input, book, new());
        Laws.Must((preview.Added, preview.Bad, preview.AlreadyThere, preview.Superseded) == (report.Added, report.Bad, report.AlreadyThere, report.Superseded), "a preview says what would happen", $"{preview} {report}");
        Laws.Must(Import(input, book, new()).Added == 0 || report.Superseded > 0, "importing twice is importing once", report.ToString());
        OutAndIn(book);
        using var strict = new MemoryBook();
        var none = Import(input, strict, new ImportOptions { AllOrNone = true });
        Laws.Must(none.Ok || strict.Count == 0, "all or none", none.ToString());
    }

    private static ImportReport Import(byte[] input, MemoryBook book, ImportOptions options)
    {
        var report = Importer.Read(new MemoryStream(input), book, options);
        Laws.Must(report.Lines == report.Blank + report.Added + report.AlreadyThere + report.Superseded + report.Withheld + report.Bad, "every line is counted once", report.ToString());
        foreach (var fault in report.Faults) Laws.Told(fault.Fault.Message, fault.Fault.Remedy);
        return report;
    }

    /// <summary>An export makes the same chain in another book, and the same export.</summary>
    private static void OutAndIn(MemoryBook book)
    {
        var text = Export(book);
        using var other = new MemoryBook();
        var report = Importer.Read(new StringReader(text), other);
        Laws.Must(report.Ok, "an export can be imported", report.Ok ? "" : report.Faults[0].ToString());
        Laws.Must(other.HashAt(other.Count) == book.HashAt(book.Count), "an export makes the same chain", text);
        Laws.Must(Export(other) == text, "an export of an import is the same", text);
    }

    private static string Export(MemoryBook book)
    {
        using var text = new StringWriter();
        Exporter.Write(book, text);
        return text.ToString();
    }
}
