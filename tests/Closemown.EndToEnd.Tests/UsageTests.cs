using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class UsageTests
{
    public static TheoryData<string, int, string> Mistyped => new()
    {
        { "nxt", 2, "Did you mean \"next\"?" },
        { "next --ahed", 2, "Did you mean \"--ahead\"?" },
        { "book lst", 2, "Did you mean \"list\"?" },
        { "book", 2, "where | verify | backup" },
        { "book list --last many", 2, "--last" },
        { "add", 2, "closemown add --help" },
        { "add papercut cuts", 1, "Did you mean \"paper-cut\"?" },
        { "add paper-cut cuts cust folds", 1, "Did you mean \"cuts\"?" },
        { "add clicks lefft=1", 1, "Did you mean \"left\"?" },
        { "add clicks 1", 1, "left then right" },
        { "add strip 80", 1, "80gsm" },
        { "add lap grit=80", 1, "closemown add lap 2 min" },
        { "add canopy 5/32 before", 1, "5/32 in" },
        { "add clicks 1.3 1", 1, "whole or half steps" },
        { "add lap two bananas", 1, "no place" },
        { "add mow 3 parsecs", 1, "parsecs" },
        { "next", 1, "closemown new" },
        { "why next-1-nothing-here", 1, "closemown new" },
        { "settings set gapp thou", 1, "Did you mean \"gap\"?" },
        { "settings set gap inches", 1, "um, thou or hundredth" },
        { "reckon clp", 1, "Did you mean \"clip\"?" },
        { "reckon clip blades=10", 1, "needs speed" },
        { "add paper-cut cuts --at noonish", 1, "Write 10:30" },
    };

    [Theory]
    [MemberData(nameof(Mistyped))]
    public void A_mistyped_command_gets_a_hint_on_standard_error_and_an_exit_code(string typed, int exit, string hint)
    {
        using var bench = new Bench();
        var ran = bench.Run(typed.Split(' '));
        Assert.Equal((exit, ""), (ran.Exit, ran.Out));
        Assert.StartsWith("closemown: ", ran.Error, StringComparison.Ordinal);
        Assert.Contains(hint, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_has_examples_first_and_the_exit_codes()
    {
        using var bench = new Bench();
        foreach (var typed in (string[][])[["--help"], ["add", "--help"], ["book", "import", "--help"]])
        {
            var help = bench.Run(typed).Out;
            var examples = help.IndexOf("Examples\n", StringComparison.Ordinal);
            Assert.InRange(examples, 1, help.IndexOf("Written\n", StringComparison.Ordinal));
            Assert.Contains("130 interrupted", help, StringComparison.Ordinal);
        }
        var kind = bench.Run("add", "paper-cut", "--help").Out;
        Assert.Contains("closemown add paper-cut cuts cuts folds", kind, StringComparison.Ordinal);
        Assert.Contains("cuts / nicks / folds", kind, StringComparison.Ordinal);
    }

    [Fact]
    public void The_command_reference_is_not_stale()
    {
        using var bench = new Bench();
        var path = Path.Combine(Bench.Root, "docs", "commands.md");
        var made = bench.Run("docs").Out;
        if (Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_DOCS") == "1") File.WriteAllText(path, made);
        Assert.True(File.ReadAllText(path) == made, "docs/commands.md is stale: run the tests with CLOSEMOWN_WRITE_DOCS=1.");
        Assert.Contains("## closemown book import", made, StringComparison.Ordinal);
    }
}
