using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>Colour at a terminal, which <c>script</c> makes; where that is missing there is no terminal to test.</summary>
public sealed class ColourTests
{
    [Fact]
    public void A_terminal_gets_colour_and_the_drawing_unless_it_is_not_wanted()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/script"), "needs script of util-linux");
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        bench.Run("add", "paper-cut", "cuts", "cuts", "folds");
        Ran Terminal(string typed, Dictionary<string, string?> more)
        {
            more["TERM"] = "xterm-256color";
            return bench.Start("/usr/bin/script", ["-qec", $"stty cols 60; dotnet {Path.Combine(AppContext.BaseDirectory, "closemown.dll")} {typed}", "/dev/null"], null, more);
        }
        var coloured = Terminal("steel", []).Out;
        Assert.Contains("\u001b[1;38;5;67m", coloured, StringComparison.Ordinal);
        Assert.Contains("seen from behind", coloured, StringComparison.Ordinal);
        foreach (var plain in new[] { Terminal("steel", new() { ["NO_COLOR"] = "1" }), Terminal("steel --no-colour", []) })
        {
            Assert.DoesNotMatch("\u001b\\[[0-9;]*m", plain.Out);
            Assert.Contains("∩ folds", plain.Out, StringComparison.Ordinal);
            Assert.All(plain.Out.Split('\n'), line => Assert.InRange(line.Replace("\u001b[?1h\u001b=", "", StringComparison.Ordinal).TrimEnd('\r').Length, 0, 60));
        }
        var piped = bench.Run("steel");
        Assert.DoesNotContain("seen from behind", piped.Out, StringComparison.Ordinal);
        Assert.Contains("seen from behind", bench.Run("steel", "--draw").Out, StringComparison.Ordinal);
    }
}
