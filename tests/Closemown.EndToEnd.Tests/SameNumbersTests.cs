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

    private const string Today = """{"ask":"today"}""";

    private static readonly Lazy<string> Plain = new(() => Said(Lines() + Today, []));

    [Fact]
    public void F9_The_same_book_gives_the_same_bytes_with_wide_registers_with_narrow_ones_and_with_none()
    {
        Assert.Contains("\"today\":", Plain.Value, StringComparison.Ordinal);
        Assert.Equal(Plain.Value, Said(Lines() + Today, new() { ["DOTNET_EnableAVX2"] = "0" }));
        // The planner takes its time without registers, so it is asked for once only: what is left out is the last line.
        var none = Said(Lines(), new() { ["DOTNET_EnableHWIntrinsic"] = "0" });
        Assert.Equal(Plain.Value[..Math.Min(none.Length, Plain.Value.Length)], none);
    }

    /// <summary>glibc has other code for exp, log and their like where the processor cannot fuse product and sum; here it must take it.</summary>
    [Fact]
    public void F9_Another_way_of_the_C_library_to_reckon_exp_and_log_shows_in_no_text_and_not_in_nine_digits()
    {
        var other = Said(Lines() + Today, new() { ["GLIBC_TUNABLES"] = "glibc.cpu.hwcaps=-AVX2,-FMA,-FMA4" });
        Assert.Equal(Number().Replace(Plain.Value, "#"), Number().Replace(other, "#"));
        foreach (var (a, b) in Numbers(Plain.Value).Zip(Numbers(other)))
            Assert.True(a.Equals(b) || Math.Abs(a - b) <= Holds * Math.Max(1, Math.Abs(a)), $"{a} and {b}");
    }

    /// <summary>What the program says to lines, on a book that is not kept: ids and times are alike in every run.</summary>
    private static string Said(string lines, Dictionary<string, string?> more)
    {
        using var bench = new Bench();
        var ran = bench.Run(["pipe", "--book", ":memory:"], lines, more);
        Assert.Equal(0, ran.Exit);
        Assert.DoesNotContain("\"ok\":false", ran.Out, StringComparison.Ordinal);
        return ran.Out;
    }

    /// <summary>The first weeks of the demo's season, a unit made up at random from a seed, and the questions.</summary>
    private static string Lines()
    {
        var random = new Random(20260501);
        var lines = new StringBuilder();
        foreach (var line in File.ReadLines(Path.Combine(Bench.Root, "demo", "ferncombe.jsonl")).Take(50)) lines.AppendLine(line);
        string Word(params string[] words) => words[random.Next(words.Length)];
        for (var i = 0; i < 16; i++)
        {
            var at = $"\"unit\":\"seeded\",\"at\":\"2026-09-{1 + (i / 2):00}T{8 + (i % 2 * 4):00}:00:00Z\"";
            lines.AppendLine(random.Next(5) switch
            {
                0 => $$"""{"kind":"contact","left":"{{Word("none", "light", "heavy")}}","right":"{{Word("none", "light")}}",{{at}}}""",
                1 => $$"""{"kind":"paper-cut","left":"{{Word("cuts", "nicks")}}","centre":"{{Word("cuts", "folds")}}","right":"cuts",{{at}}}""",
                2 => $$"""{"kind":"clicks","left":{{random.Next(-2, 3)}},"right":{{random.Next(1, 3)}},{{at}}}""",
                3 => $$"""{"kind":"mow","hours":{{random.Next(1, 5) / 2.0:0.0}},"area":"green",{{at}}}""",
                _ => $$"""{"kind":"gauge","leftMm":{{4 + (random.Next(20) / 10.0):0.0}},"rightMm":5.1,{{at}}}""",
            });
        }
        foreach (var unit in (string[])["ten-blade", "seeded"])
            lines.AppendLine($$"""{"ask":"steel","unit":"{{unit}}"}""").AppendLine($$"""{"ask":"height","unit":"{{unit}}"}""");
        return lines.AppendLine("""{"ask":"next","unit":"seeded","ahead":true}""")
            .AppendLine("""{"ask":"next","unit":"seeded","aim":{"benchMm":5}}""")
            .AppendLine("""{"ask":"turf","area":"green"}""").AppendLine("""{"ask":"plan","area":"green","days":2}""").ToString();
    }

    private static IEnumerable<double> Numbers(string text) =>
        Number().Matches(text).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture));

    [GeneratedRegex(@"-?\d+(\.\d+)?([eE][-+]?\d+)?")]
    private static partial Regex Number();
}
