using Closemown.Cli;
using Closemown.Fuzzing;
using Closemown.Tests.Book;
using Xunit;

namespace Closemown.Tests.Hard;

/// <summary>The commands, run within the test, end with an exit code and words whatever was typed.</summary>
public sealed class CommandAnswersAllTests
{
    private static readonly string[][] Asking =
    [
        ["next"], ["next", "--cut", "4.5mm"], ["steel"], ["height"], ["turf"], ["turf", "--date", "9999-12-31"], ["plan", "--from", "9999-12-01", "--days", "60"], ["plan"], ["step-down", "4mm"], ["today"], ["score"], ["why"], ["book", "list"], ["book", "verify"], ["undo"],
    ];

    public static TheoryData<string> Names => [.. HardLines.Names.Select(n => n.Replace("\0", "", StringComparison.Ordinal)).Select(Uri.EscapeDataString)];

    [Theory]
    [MemberData(nameof(Names))]
    public void F2_F12_F31_Every_kind_and_question_with_a_bad_name_ends_in_words(string escaped)
    {
        var name = Uri.UnescapeDataString(escaped);
        using var folder = new TempFolder();
        foreach (var example in ShortForms.Examples.Values)
        {
            var words = example.Split(' ');
            Ends(folder, ["add", .. words, "--unit", name, "--area", name, "--by", name, "--note", name]);
        }
        Ends(folder, ["add", "mow", "20min", name, "--json"]);
        foreach (var question in Asking)
        {
            Ends(folder, question);
            Ends(folder, [.. question, question[0] is "turf" or "plan" ? "--area" : "--unit", name, "--json"]);
        }
    }

    private static void Ends(TempFolder folder, string[] args)
    {
        var typed = string.Join(' ', args);
        using var output = new StringWriter();
        using var error = new StringWriter();
        string? Variable(string name) => name switch
        {
            "CLOSEMOWN_BOOK" => folder.Book,
            "CLOSEMOWN_SETTINGS" => folder.At("settings.json"),
            "HOME" => folder.Path,
            _ => null,
        };
        var exit = CommandLine.Run(args, new Surroundings(new Screen(output, error), new StandingClock(), Variable, () => Stream.Null));
        Assert.True(exit is ExitCodes.Done or ExitCodes.Refused or ExitCodes.Usage, $"{typed}: {exit}");
        Assert.True(exit == ExitCodes.Done || error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Length >= 2, $"{typed}: says not what to do: {error}");
        if (args.Contains("--json"))
        {
            foreach (var line in output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries)) Laws.OneLine(line);
            if (exit == ExitCodes.Refused) Laws.Answer(output.ToString().TrimEnd('\n'));
        }
        Assert.DoesNotContain($"{output}{error}", c => (char.IsControl(c) && c != '\n') || c is '\u200e' or '\u200f' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069'));
    }

    private sealed class StandingClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
