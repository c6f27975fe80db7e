using System.Text;
using Closemown.Book;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>Ten thousand lines made at random: nothing crashes, nothing is dropped in silence.</summary>
public sealed class BadLinesTests
{
    private const int Count = 10_000;

    private static readonly string[] Snippets =
    [
        "null", "true", "-0", "1e400", "1e-400", "\"\"", "[]", "{}", "\\ud800", "\\u0000", "\"\\udc00x\"", "NaN", ",", ":", "}", "{", "\"kind\"", "\"kind\":\"void\"",
        "\uFEFF", "\u2028", "\0", "𝄞", "99999999999999999999", "\"2026-13-01\"", "[[[[[[[[[[[[[[[[[[[[", "/*", "'", "\t", "\"unit\":\"x\",",
    ];

    private static byte[] Make(Random random, string[] good)
    {
        if (random.Next(10) == 0)
        {
            var noise = new byte[random.Next(0, 200)];
            random.NextBytes(noise);
            return noise;
        }
        var bytes = Encoding.UTF8.GetBytes(good[random.Next(good.Length)]).ToList();
        for (var n = random.Next(1, 5); n > 0 && bytes.Count > 0; n--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(6))
            {
                case 0:
                    bytes.RemoveAt(at);
                    break;
                case 1:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 2:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Snippets[random.Next(Snippets.Length)]));
                    break;
                case 3:
                    bytes.RemoveRange(at, Math.Min(bytes.Count - at, random.Next(1, 30)));
                    break;
                case 4:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(bytes.Count - at, random.Next(1, 30))));
                    break;
                default:
                    var end = bytes.FindIndex(at, b => b is (byte)',' or (byte)'}');
                    if (end > at) bytes.RemoveRange(at, end - at);
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Snippets[random.Next(Snippets.Length)]));
                    break;
            }
        }
        return [.. bytes];
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_line_is_an_entry_or_has_a_fault(int seed)
    {
        var random = new Random(seed);
        var good = Lines.EveryKind();
        var (entries, refused) = (0, 0);
        for (var i = 0; i < Count; i++)
        {
            var line = Encoding.UTF8.GetString(Make(random, good));
            if (i % 50 == 0) line += (char)0xD800;            // half a pair, as a faulty program hands it over
            var faults = EntryReader.Read(line, EntryContext.Whole, out var entry);
            Assert.NotEqual(entry is null, faults.Count == 0);
            Assert.All(faults, f => Assert.True(f.Code.Length > 0 && f.Message.Length > 0 && f.Remedy.Length > 0));
            if (entry is null)
            {
                refused++;
                continue;
            }
            entries++;
            Assert.Equal(entry.Json, Lines.Read(entry.Json).Json);
        }
        Assert.Equal(Count, entries + refused);
        Assert.InRange(entries, 50, Count / 2);              // the mutations reach both sides
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void An_import_of_them_accounts_for_every_line(int seed)
    {
        var random = new Random(seed);
        var good = Lines.EveryKind();
        using var stream = new MemoryStream();
        for (var i = 0; i < Count; i++)
        {
            stream.Write(Make(random, good));
            stream.WriteByte((byte)'\n');
        }
        var lines = stream.ToArray().Count(b => b == (byte)'\n');
        stream.Position = 0;
        using var book = new MemoryBook();
        var report = Importer.Read(stream, book, new ImportOptions { MaxFaultsKept = 50 });
        Assert.Equal(lines, report.Lines);
        Assert.Equal(report.Lines, report.Blank + report.Bad + report.Added + report.AlreadyThere + report.Superseded);
        Assert.True(report.FaultCount >= report.Bad);
        Assert.True(report.Bad > Count / 3 && report.Added > 0);
        Assert.Equal(50, report.Faults.Count);
        Assert.All(report.Faults, f => Assert.InRange(f.Line, 1, lines));
        Assert.Equal(report.Added, book.Count + book.ReadWeatherKept().Count + 0L);
    }
}
