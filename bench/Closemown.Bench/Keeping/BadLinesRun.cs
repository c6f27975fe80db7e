using System.Diagnostics;
using System.Globalization;
using System.Text;
using Closemown.Book;

namespace Closemown.Bench.Keeping;

/// <summary>Imports malformed lines without end, made as they are read: badlines --count N.</summary>
internal static class BadLinesRun
{
    public static int Print(string[] args)
    {
        var count = Options.Number(args, "--count", 1_000_000);
        var folder = Directory.CreateTempSubdirectory("closemown-badlines-").FullName;
        try
        {
            var watch = Stopwatch.StartNew();
            using var book = BookFile.Open(Path.Combine(folder, "book.closemown"));
            using var lines = new MadeLines(count);
            var report = Importer.Read(lines, book);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{report.Lines} lines, {lines.Bytes / 1e6:0} MB: {report.Bad} bad, {report.FaultCount} faults, {report.Added + report.AlreadyThere} taken, {report.Faults.Count} faults kept to show, {watch.Elapsed.TotalSeconds:0} s"));
            foreach (var (share, peak) in lines.Peaks) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"peak working set after {share} %: {peak / 1e6:0} MB"));
            return report.Lines == count && report.Bad == count ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>A line of one of many sorts, from its number alone.</summary>
    private static string Line(int n)
    {
        const string Good = """{"v":1,"id":"019d33ab-f280-78f7-9da1-494c73cf256d","at":"2026-03-28T10:00:00+01:00","kind":"clicks","unit":"mower","left":1}""";
        var random = new Random(n);
        string With(string old, string now) => Good.Replace(old, now, StringComparison.Ordinal);
        return (n % 14) switch
        {
            0 => Good[..random.Next(1, Good.Length)],
            1 => With("\"left\":1", $"\"left\":\"{random.Next()}\""),
            2 => n % 140 == 2 ? $"{{\"note\":\"{new string('x', 70_000 + random.Next(200_000))}\"}}" : "{\"note\":\"x\"}",
            3 => With("mower", "mo\uFFFFer"),                   // written as a byte that is no UTF-8
            4 => new string('[', random.Next(20, 3000)),
            5 => With("clicks", $"kind-{random.Next()}"),
            6 => With("2026-03-28", $"{random.Next()}"),
            7 => With("019d33ab-f280", $"{random.Next()}"),
            8 => With("\"unit\":\"mower\",", ""),
            9 => With("\"left\":1", "\"left\":1e400"),
            10 => Good + Good,
            11 => With("\"left\":1", "\"left\":1,\"left\":2"),
            12 => With("mower", "\\ud800"),
            _ => With("\"left\":1", string.Concat(Enumerable.Repeat("\"a\":{", 40)) + new string('}', 40)),
        };
    }

    private sealed class MadeLines(int count) : Stream
    {
        private byte[] now = [];
        private int at, next;

        public long Bytes { get; private set; }

        public List<(int Share, long Peak)> Peaks { get; } = [];

        public override int Read(Span<byte> buffer)
        {
            if (at == now.Length)
            {
                if (next == count / 10 || next == count / 2 || next == count) Peaks.Add(((int)(100L * next / count), Process.GetCurrentProcess().PeakWorkingSet64));
                if (next == count) return 0;
                (now, at) = (Encoding.UTF8.GetBytes(Line(next++) + "\n"), 0);
                // U+FFFF is EF BF BF: one byte less and it is no UTF-8.
                if (now.AsSpan().IndexOf("\uFFFF"u8) is >= 0 and var i) now[i + 2] = (byte)'x';
                Bytes += now.Length;
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
