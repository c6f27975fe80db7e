using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The same book gives the same numbers, whatever registers the processor has.</summary>
public sealed partial class SameNumbersTests
{
    /// <summary>Digits that hold where the C library itself reckons otherwise.</summary>
    private const double Holds = 1e-9;

    private static readonly string Season = Path.Combine(Bench.Root, "demo", "ferncombe.jsonl");

    [Fact]
    public void F9_The_same_book_gives_the_same_bytes_with_wide_registers_with_narrow_ones_and_with_none()
    {
        using var bench = new Bench();
        var plain = Said(bench, []);
        Assert.Contains("\"today\":", plain, StringComparison.Ordinal);
        Assert.Equal(plain, Said(bench, new() { ["DOTNET_EnableAVX2"] = "0" }));
        Assert.Equal(plain, Said(bench, new() { ["DOTNET_EnableHWIntrinsic"] = "0" }));
    }

    /// <summary>glibc has other code for exp, log and their like where the processor cannot fuse multiplying and adding; this makes it take it.</summary>
    [Fact]
    public void F9_Another_way_of_the_C_library_to_reckon_exp_and_log_shows_in_no_text_and_not_in_nine_digits()
    {
        using var bench = new Bench();
        var plain = Said(bench, []);
        var other = Said(bench, new() { ["GLIBC_TUNABLES"] = "glibc.cpu.hwcaps=-AVX2,-FMA,-FMA4" });
        Assert.Equal(Number().Replace(plain, "#"), Number().Replace(other, "#"));
        foreach (var (a, b) in Numbers(plain).Zip(Numbers(other)))
            Assert.True(Math.Abs(a - b) <= Holds * Math.Max(1, Math.Abs(a)), $"{a} and {b}");
    }

    /// <summary>All answers on a season and on a unit made up at random, seeded: read from a copy of one book, so that the season is entered only once.</summary>
    private static string Said(Bench bench, Dictionary<string, string?> more)
    {
        var season = Path.Combine(bench.Folder, "season.closemown");
        if (!File.Exists(season)) Assert.Equal(0, bench.Run("book", "import", Season, "--book", season).Exit);
        var copy = Path.Combine(bench.Folder, Guid.NewGuid() + ".closemown");
        File.Copy(season, copy);
        var ran = bench.Run(["pipe", "--book", copy], Lines(), more);
        Assert.Equal(0, ran.Exit);
        Assert.DoesNotContain("\"ok\":false", ran.Out, StringComparison.Ordinal);
        return SeededId().Replace(ran.Out, "id");
    }

    private static string Lines()
    {
        var random = new Random(20260501);
        var lines = new StringBuilder();
        string Word(params string[] words) => words[random.Next(words.Length)];
        for (var i = 0; i < 24; i++)
        {
            var at = $"\"unit\":\"seeded\",\"at\":\"2026-09-{1 + (i / 2):00}T{8 + (i % 2 * 4):00}:00:00Z\"";
            lines.AppendLine(random.Next(5) switch
            {
                0 => $$"""{"kind":"contact","left":"{{Word("none", "light", "heavy")}}","right":"{{Word("none", "light")}}",{{at}}}""",
                1 => $$"""{"kind":"paper-cut","left":"{{Word("cuts", "nicks")}}","centre":"{{Word("cuts", "folds")}}","right":"{{Word("cuts", "nicks")}}",{{at}}}""",
                2 => $$"""{"kind":"clicks","left":{{random.Next(-2, 3)}},"right":{{random.Next(1, 3)}},{{at}}}""",
                3 => $$"""{"kind":"mow","hours":{{random.Next(1, 5) / 2.0:0.0}},"area":"green",{{at}}}""",
                _ => $$"""{"kind":"gauge","leftMm":{{4 + (random.Next(20) / 10.0):0.0}},"rightMm":5.1,{{at}}}""",
            });
        }
        foreach (var unit in (string[])["ten-blade", "seeded"])
        {
            lines.AppendLine($$"""{"ask":"steel","unit":"{{unit}}"}""").AppendLine($$"""{"ask":"next","unit":"{{unit}}","ahead":true}""")
                .AppendLine($$"""{"ask":"next","unit":"{{unit}}","aim":{"benchMm":5} }""").AppendLine($$"""{"ask":"height","unit":"{{unit}}"}""");
        }
        return lines.AppendLine("""{"ask":"turf","area":"green"}""").AppendLine("""{"ask":"plan","area":"green"}""").AppendLine("""{"ask":"today"}""").ToString();
    }

    private static IEnumerable<double> Numbers(string text) => Number().Matches(text).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture));

    [GeneratedRegex(@"-?\d+(\.\d+)?([eE][-+]?\d+)?")]
    private static partial Regex Number();

    [GeneratedRegex("(?<=\"ok\":true,\"id\":\")[0-9a-f-]+")]
    private static partial Regex SeededId();
}
