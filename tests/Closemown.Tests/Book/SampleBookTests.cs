using System.Text;
using Closemown.Book;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>Books written by earlier versions are read for ever: samples in tests/Checks/books, written by the program as it then was.</summary>
/// <remarks>The entries are the first 116 of the demo book of that time and eight made for this: voids, a void of a void, a void of what is not there, weather, a superseded forecast, corrected weather.</remarks>
public sealed class SampleBookTests
{
    // As `closemown book verify` printed it when the sample was made.
    private const string Head = "5fb8e53a54e668be5122c60a0a3df4ce659814778bafcdbefa149944eabc0426";

    private const string AllKindsHead = "7b1000cba87da56e589a9edcd23a3bf2981e9afdeaad5e7a54804e4ab99c6864";

    public static TheoryData<int> Versions { get; } = [1, 2];

    private static string Sample(int version, string ending) => Path.Combine(AppContext.BaseDirectory, "Checks", "books", $"format-{version}.{ending}");

    private static string Copy(TempFolder folder, int version)
    {
        File.Copy(Sample(version, "closemown"), folder.Book);
        return folder.Book;
    }

    private static string Export(string path, bool readOnly)
    {
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = readOnly });
        using var text = new StringWriter();
        Exporter.Write(book, text);
        return text.ToString();
    }

    [Fact]
    public void There_is_a_sample_of_every_version() => Assert.Equal(BookFormat.Version, Versions.Count);

    [Theory]
    [MemberData(nameof(Versions))]
    public void A_book_of_every_version_is_whole_and_says_what_it_said(int version)
    {
        using var folder = new TempFolder();
        var path = Copy(folder, version);
        var before = File.ReadAllBytes(path);
        var report = Verification.Run(path);
        Assert.Empty(report.Problems);
        Assert.Equal((version, 120L, 3L, Head), (report.Version, report.Entries, report.Weather, report.Head));
        var export = File.ReadAllText(Sample(1, "jsonl"), Encoding.UTF8);
        Assert.Equal(export, Export(path, readOnly: true));
        using (var book = BookFile.Open(path, new BookOptions { ReadOnly = true }))
        {
            var standing = StandingEntries.Of(book.ReadAll().Select(s => s.Entry));
            // Of 116 entries one corrects another; one is taken out, another taken out and restored.
            Assert.Equal(114, standing.Count);
            Assert.Equal(["15.25", "16"], book.ReadWeather().Select(e => e[WeatherEntry.TMaxC]!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }
        Assert.Equal(before, File.ReadAllBytes(path));             // reading changes no byte
        Assert.Equal([path], Directory.GetFiles(folder.Path));
    }

    [Theory]
    [MemberData(nameof(Versions))]
    public void A_book_of_every_version_is_brought_up_to_date_by_the_first_writing(int version)
    {
        using var folder = new TempFolder();
        var path = Copy(folder, version);
        Assert.Equal(File.ReadAllText(Sample(1, "jsonl"), Encoding.UTF8), Export(path, readOnly: false));
        var report = Verification.Run(path);
        Assert.Empty(report.Problems);
        Assert.Equal((BookFormat.Version, Head), (report.Version, report.Head));
        folder.Do("drop trigger weather_no_update; update weather set json = replace(json, '15.25', '15.75')");
        Assert.Contains(Verification.Run(path).Problems, p => p.Table == "weather" && p.Message.Contains("not what was written", StringComparison.Ordinal));
    }

    /// <summary>Every kind there is, made by all-kinds-generator.py: of format 1 by another program, of format 2 by this one.</summary>
    [Theory]
    [MemberData(nameof(Versions))]
    public void A_book_of_every_version_with_every_kind_in_it_is_read(int version)
    {
        using var folder = new TempFolder();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Checks", "books", $"format-{version}-all-kinds.closemown"), folder.Book);
        var report = Verification.Run(folder.Book);
        Assert.Empty(report.Problems);
        Assert.Equal((version, AllKindsHead), (report.Version, report.Head));
        var lines = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "books", "all-kinds.jsonl"), Encoding.UTF8);
        Assert.Equal(lines, Export(folder.Book, readOnly: true));
        using (var book = BookFile.Open(folder.Book, new BookOptions { ReadOnly = true }))
        {
            var kinds = book.ReadAll().Select(s => s.Entry).Concat(book.ReadWeatherKept()).Select(e => e.Kind.Name).ToHashSet();
            Assert.Equal(KindsThen.Order(StringComparer.Ordinal), kinds.Order(StringComparer.Ordinal));
            Assert.Empty(KindsThen.Except(Kinds.All.Select(k => k.Name)));
        }
        Assert.Equal(lines, Export(folder.Book, readOnly: false));
    }

    /// <summary>The kinds of the time when these samples were made; a kind that comes later needs a sample of its own.</summary>
    private static readonly string[] KindsThen =
    [
        "unit", "strip", "fit", "paper-cut", "paper-drag", "contact", "torch", "swath", "feeler", "clicks", "square-up", "lap", "stone", "grind", "rebuild", "strike", "gauge",
        "screw", "locked", "area", "mow", "canopy", "look", "clippings", "weather", "water", "feed", "treat", "work", "soil-test", "pace", "wish", "decline", "void",
    ];

    /// <summary>Kinds that came later, with the head of a book of them as `closemown book verify` printed it when the sample was made.</summary>
    private static readonly (string Sample, string Head, string[] Kinds)[] Later =
    [
        ("format-2-measure-service", "931a7b08e2215fb2197029beee0c235b57ecca61e63607460421bfeaa7e3d66c", ["measure", "service"]),
    ];

    [Fact]
    public void A_book_with_the_kinds_that_came_later_is_read()
    {
        foreach (var (sample, head, kinds) in Later)
        {
            using var folder = new TempFolder();
            File.Copy(Path.Combine(AppContext.BaseDirectory, "Checks", "books", sample + ".closemown"), folder.Book);
            var report = Verification.Run(folder.Book);
            Assert.Empty(report.Problems);
            Assert.Equal(head, report.Head);
            Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "books", sample + ".jsonl"), Encoding.UTF8), Export(folder.Book, readOnly: true));
            using var book = BookFile.Open(folder.Book, new BookOptions { ReadOnly = true });
            Assert.Equal(kinds, book.ReadAll().Select(s => s.Entry.Kind.Name).Distinct());
        }
    }

    [Fact]
    public void There_is_a_sample_of_every_kind() => Assert.Empty(Kinds.All.Select(k => k.Name).Except(KindsThen).Except(Later.SelectMany(l => l.Kinds)));
}
