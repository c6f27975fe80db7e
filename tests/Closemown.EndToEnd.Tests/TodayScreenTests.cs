using System.Text.RegularExpressions;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>Today on the invented season of the demo.</summary>
public sealed class TodayScreenTests
{
    private const int Rows = 24, Columns = 80;

    [Fact]
    public void Today_fits_one_screen_and_tells_in_words_what_it_tells_in_JSON()
    {
        using var bench = new Bench();
        var book = DemoBook(bench);
        string[] at = ["--at", "2026-08-22T08:36:00+01:00", "--book", book];
        var told = bench.Run(["today", .. at]);
        Assert.Equal((0, ""), (told.Exit, told.Error));
        Assert.InRange(told.Out.TrimEnd('\n').Split('\n').Length, 8, Rows);
        Assert.All(told.Out.Split('\n'), line => Assert.InRange(line.Length, 0, Columns));

        var words = Flat(told.Out);
        var json = bench.Run(["today", "--json", .. at]).Json["today"]!;
        Assert.StartsWith($"Do now: {Flat((string)json["now"]!["say"]!)}", words, StringComparison.Ordinal);
        var (next, unusual) = (words.IndexOf(" Next ", StringComparison.Ordinal), words.IndexOf(" Unusual ", StringComparison.Ordinal));
        Assert.InRange(next, 1, unusual);
        var place = next;
        foreach (var task in json["next"]!.AsArray())
        {
            place = words.IndexOf(Flat((string)task!["say"]!), place, StringComparison.Ordinal);
            Assert.InRange(place, next, unusual);
        }
        Assert.All(json["now"]!["cautions"]!.AsArray(), c => Assert.Contains(Flat((string)c!), words, StringComparison.Ordinal));
        Assert.Empty(json["unusual"]!.AsArray());
        Assert.Contains("Unusual Nothing", words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_unusual_is_told_in_words_and_in_JSON()
    {
        using var bench = new Bench();
        var book = DemoBook(bench);
        // Heavy at all places, just after a strip that folds at the right.
        Assert.Equal(0, bench.Run("add", "contact", "heavy", "heavy", "heavy", "--at", "2026-08-22T08:40:00+01:00", "--book", book).Exit);
        string[] at = ["--at", "2026-08-22T08:41:00+01:00", "--book", book];
        var odd = Assert.Single(bench.Run(["today", "--json", .. at]).Json["today"]!["unusual"]!.AsArray())!;
        Assert.Contains(Flat((string)odd["say"]!), Flat(bench.Run(["today", .. at]).Out), StringComparison.Ordinal);
    }

    private static string DemoBook(Bench bench)
    {
        var book = (string)bench.Run("demo", "--json").Json["book"]!;
        var own = Path.Combine(bench.Folder, "demo.closemown");
        Assert.Equal(0, bench.Run("book", "backup", own, "--book", book).Exit);
        Directory.Delete(Path.GetDirectoryName(book)!, recursive: true);
        return own;
    }

    private static string Flat(string text) => Regex.Replace(text, @"\s+", " ").Trim();
}
