using System.Text;
using Closemown.Book;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>Ten thousand lines made at random: nothing crashes, nothing is dropped in silence.</summary>
public sealed class BadLinesTests
{
    private const int Count = 10_000;

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
            var line = Encoding.UTF8.GetString(BrokenLines.Make(random, good));
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
            stream.Write(BrokenLines.Make(random, good));
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
