using System.Text;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

public sealed class ImportTests
{
    private static readonly string[] Three = [.. Lines.Clicks(3).Select(e => e.Json)];

    private static ImportReport Import(IEntryStore book, string text, ImportOptions? options = null, bool bytes = true)
    {
        if (!bytes) return Importer.Read(new StringReader(text), book, options);
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return Importer.Read(stream, book, options);
    }

    [Fact]
    public void An_export_imported_into_a_new_book_is_the_same_book_and_imported_twice_adds_nothing()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll([.. Lines.EveryKind().Select(Lines.Read).Reverse(), Lines.Forecast(80, 11), Lines.Forecast(81, 12)], allOrNone: true);
        using var text = new StringWriter();
        var export = Exporter.Write(book, text);
        Assert.Equal((Kinds.All.Count - 1, 2), (export.Entries, export.Weather));
        Assert.Equal(export.Lines, text.ToString().Count(c => c == '\n'));
        Assert.DoesNotContain('\r', text.ToString());

        using var other = new MemoryBook();
        var first = Import(other, text.ToString());
        Assert.True(first.Ok);
        Assert.Equal((export.Lines, export.Lines), (first.Lines, first.Added));
        Assert.Equal(book.ReadAll().Select(s => (s.Seq, s.Entry.Json, s.Hash)), other.ReadAll().Select(s => (s.Seq, s.Entry.Json, s.Hash)));
        Assert.Equal(book.ReadWeatherKept().Select(e => e.Json), other.ReadWeatherKept().Select(e => e.Json));
        var second = Import(other, text.ToString());
        Assert.Equal((0L, export.Lines), (second.Added, second.AlreadyThere));
        Assert.Equal(book.Count, other.Count);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Bad_lines_are_reported_by_number_and_the_others_enter(bool bytes)
    {
        using var book = new MemoryBook();
        var text = string.Join("\r\n", "\uFEFF" + Three[0], "", "nonsense", "  \t", Three[1], """{"kind":"lap","at":"x"}""", Three[0], Three[2].Replace("turn 3", "turn 9", StringComparison.Ordinal), Three[2]);
        var report = Import(book, text, bytes: bytes);
        Assert.Equal((9L, 2L, 3L, 1L, 3L), (report.Lines, report.Blank, report.Added, report.AlreadyThere, report.Bad));
        Assert.Equal([(3L, "bad-json", ""), (6, "bad-value", "at"), (6, "missing", "unit"), (6, "missing", "id"), (6, "missing", "minutes"), (9, "conflict", "id")],
            report.Faults.Select(f => (f.Line, f.Fault.Code, f.Fault.Field)));
        Assert.Equal(6, report.FaultCount);
        Assert.All(report.Faults, f => Assert.NotEmpty(f.Fault.Remedy));
        Assert.StartsWith("line 3: The line is not JSON", report.Faults[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("turn 9", book.ReadAll()[2].Entry.Json, StringComparison.Ordinal);
    }

    [Fact]
    public void A_preview_writes_nothing_and_says_what_would_happen()
    {
        var text = string.Join('\n', [Three[1], .. Three, "nonsense", Three[0].Replace("turn 1", "turn 8", StringComparison.Ordinal),
            Lines.Forecast(61, 1).Json, Lines.Forecast(60, 2).Json, Lines.Forecast(62, 2).Json, Lines.Forecast(61, 1).Json]);
        using var folder = new TempFolder();
        using var book = folder.Open();
        book.Append(Lines.Read(Three[2]));
        var preview = Import(book, text, new ImportOptions { Preview = true });
        Assert.True(preview.Preview);
        Assert.Equal(1, book.Count);
        Assert.Empty(book.ReadWeatherKept());
        var real = Import(book, text);
        Assert.Equal((4L, 2L, 2L, 2L), (real.Added, real.AlreadyThere, real.Superseded, real.Bad));
        Assert.Equal(real with { Preview = true, Faults = [] }, preview with { Faults = [] });
        Assert.Equal(real.Faults, preview.Faults);
    }

    [Fact]
    public void All_or_none_lets_nothing_in_for_one_bad_line_or_conflict()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        var options = new ImportOptions { AllOrNone = true };
        var bad = Import(book, string.Join('\n', [.. Three, "nonsense"]), options);
        Assert.Equal((0L, 3L, 1L, 0L), (bad.Added, bad.Withheld, bad.Bad, book.Count));
        var conflict = Import(book, string.Join('\n', [.. Three, Three[0].Replace("turn 1", "turn 8", StringComparison.Ordinal)]), options);
        Assert.Equal((0L, 3L, 1L, 0L), (conflict.Added, conflict.Withheld, conflict.Bad, book.Count));
        Assert.Equal((4L, FaultCodes.Conflict), (conflict.Faults[0].Line, conflict.Faults[0].Fault.Code));
        var preview = Import(book, string.Join('\n', [.. Three, "nonsense"]), options with { Preview = true });
        Assert.Equal((0L, 3L), (preview.Added, preview.Withheld));
        var good = Import(book, string.Join('\n', Three), options);
        Assert.Equal((3L, 0L, 3L), (good.Added, good.Withheld, book.Count));
    }

    [Fact]
    public void Faults_are_all_counted_and_the_first_kept()
    {
        using var book = new MemoryBook();
        var report = Import(book, string.Concat(Enumerable.Repeat("nonsense\n", 5000)), new ImportOptions { MaxFaultsKept = 7 });
        Assert.Equal((5000L, 5000L), (report.Bad, report.FaultCount));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], report.Faults.Select(f => (int)f.Line));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_long_line_is_reported_and_skipped_without_being_held(bool bytes)
    {
        // 64 MB in one line, made while it is read: a reader that held it would allocate at least as much.
        const long Length = 64L << 20;
        using var book = new MemoryBook();
        var before = GC.GetAllocatedBytesForCurrentThread();
        using var endless = new LongLine(Length, "\n" + Three[0] + "\n");
        using var reader = new StreamReader(endless);
        var report = bytes ? Importer.Read(endless, book) : Importer.Read(reader, book);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4L << 20);
        Assert.Equal((2L, 1L, 1L), (report.Lines, report.Added, report.Bad));
        Assert.Equal(1, report.Faults[0].Line);
        Assert.Contains("longer than 65536", report.Faults[0].Fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_limit_is_counted_in_characters_and_holds_exactly(bool bytes)
    {
        using var book = new MemoryBook();
        var line = Lines.Entry("""{"kind":"locked","note":"fünf € 𝄞"}""", 1).Json;
        Assert.Equal(1, Import(book, line + "\r\n", new ImportOptions { MaxLineLength = line.Length }, bytes).Added);
        Assert.Equal(1, Import(book, line + "\r\n", new ImportOptions { MaxLineLength = line.Length - 1 }, bytes).Bad);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_reported_not_replaced()
    {
        using var book = new MemoryBook();
        var latin = Encoding.Latin1.GetBytes(Three[0].Replace("turn", "fünf", StringComparison.Ordinal) + "\n");
        using var stream = new MemoryStream([.. latin, .. Encoding.UTF8.GetBytes(Three[1])]);
        var report = Importer.Read(stream, book);
        Assert.Equal((1L, 1L), (report.Bad, report.Added));
        Assert.Contains("UTF-8", report.Faults[0].Fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("\uFEFF")]
    public void Nothing_is_nothing(string text)
    {
        using var book = new MemoryBook();
        var report = Import(book, text);
        Assert.True(report.Ok);
        Assert.Equal(report.Lines, report.Blank);
        Assert.Equal(0, book.Count);
    }

    [Fact]
    public void Many_entries_enter_in_batches_by_arrival()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        var entries = Lines.Clicks(1201);
        Assert.Equal(1201, Import(book, string.Join('\n', entries.Select(e => e.Json))).Added);
        Assert.Equal(entries.Select(e => e.Id), book.ReadAll().Select(s => s.Entry.Id));
    }

    /// <summary>A stream of one very long line and an ending, never held.</summary>
    private sealed class LongLine(long length, string ending) : Stream
    {
        private readonly byte[] tail = Encoding.UTF8.GetBytes(ending);
        private long at;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => at; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            var n = (int)Math.Min(buffer.Length, at < length ? length - at : length + tail.Length - at);
            if (at < length) buffer[..n].Fill((byte)'x');
            else tail.AsSpan((int)(at - length), n).CopyTo(buffer);
            at += n;
            return n;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
