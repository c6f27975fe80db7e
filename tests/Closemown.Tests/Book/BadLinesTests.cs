using System.Text;
using Closemown.Book;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>Tests that look at the memory of the whole process: nothing else runs beside them.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class AloneInTheProcess
{
    public const string Name = "alone in the process";
}

/// <summary>Malformed lines without end leave an import as small as it was.</summary>
[Collection(AloneInTheProcess.Name)]
public sealed class BadLinesTests
{
    [Fact]
    public void Fifty_thousand_malformed_lines_are_all_counted_in_flat_memory()
    {
        const int Count = 50_000;
        var good = Lines.Clicks(100);
        var source = new LineStream(Count + good.Length, n => n % 500 == 250 ? Encoding.UTF8.GetBytes(good[n / 500 % 100].Json) : MalformedLines.Line(n));
        using var folder = new TempFolder();
        using var book = folder.Open();
        var heap = new List<long>();
        source.Every(5_000, () => heap.Add(GC.GetTotalMemory(forceFullCollection: true)));
        var report = Importer.Read(source, book);
        var taken = Enumerable.Range(0, Count + good.Length).Count(n => n % 500 == 250);
        Assert.Equal((Count + good.Length, 0L), (report.Lines, report.Blank));
        Assert.Equal((Count + good.Length - taken, 100L), (report.Bad, report.Added));
        Assert.Equal(taken - 100L, report.AlreadyThere);
        Assert.True(report.FaultCount >= report.Bad);
        Assert.Equal(100, report.Faults.Count);
        Assert.InRange(heap.Count, 9, 11);
        Assert.True(heap[^1] < heap[1] + 4_000_000, $"the heap grew: {string.Join(", ", heap)}");
    }

    [Fact]
    public void Every_sort_of_malformed_line_is_refused_with_a_code_and_a_remedy()
    {
        for (var sort = 0; sort < MalformedLines.Sorts; sort++)
        {
            using var book = new MemoryBook();
            var report = Importer.Read(new MemoryStream([.. MalformedLines.Line(sort), (byte)'\n']), book);
            Assert.True(report is { Lines: 1, Bad: 1 } && report.Faults[0].Fault is { Code.Length: > 0, Remedy.Length: > 0 }, $"sort {sort}");
        }
    }

    /// <summary>A stream of lines that are made when they are read.</summary>
    private sealed class LineStream(int count, Func<int, byte[]> line) : Stream
    {
        private byte[] now = [];
        private int at, next, every = int.MaxValue;
        private Action look = () => { };

        public void Every(int lines, Action act) => (every, look) = (lines, act);

        public override int Read(Span<byte> buffer)
        {
            if (at == now.Length)
            {
                if (next == count) return 0;
                if (next > 0 && next % every == 0) look();
                (now, at) = ([.. line(next++), (byte)'\n'], 0);
            }
            var n = Math.Min(buffer.Length, now.Length - at);
            now.AsSpan(at, n).CopyTo(buffer);
            at += n;
            return n;
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
