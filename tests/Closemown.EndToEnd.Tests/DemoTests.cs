using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class DemoTests
{
    private static readonly string[] Needed =
    [
        "made up", "seen from behind", "░", "┃ in tolerance", "one click", "opening an hour mown", "Do now: ", "How sure", "Why", "Caution",
        "  closemown new ", "  closemown add ", "  closemown next",
    ];

    [Fact]
    public void The_demo_shows_drawing_step_reasons_and_how_to_start_and_never_varies()
    {
        using var bench = new Bench();
        var first = bench.Run("demo");
        var second = bench.Run(["demo"], null, new() { ["TZ"] = "Pacific/Auckland", ["CLOSEMOWN_BOOK"] = "/nowhere/else" });
        Assert.Equal(0, first.Exit);
        Assert.Equal(first.Out, second.Out);
        Assert.All(Needed, n => Assert.Contains(n, first.Out, StringComparison.Ordinal));
        Assert.All(first.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        Assert.DoesNotContain('\u001b', first.Out);
        Assert.Matches(@"lies at (.+?book\.closemown)", first.Error);
        Assert.False(File.Exists(bench.Book));
        Remove(first);
        Remove(second);
    }

    [Fact]
    public void The_demo_speaks_the_words_and_units_asked_for()
    {
        using var bench = new Bench();
        var uk = bench.Run("demo", "--words", "uk", "--gap", "thou");
        Assert.Contains("bottom blade, thou, seen from behind", uk.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("bedknife", uk.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("µm", uk.Out, StringComparison.Ordinal);
        Remove(uk);
    }

    private static void Remove(Ran demo)
    {
        var path = demo.Error.Split("lies at ")[1].Split(';')[0];
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
    }
}
