using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Closemown.Cli;

namespace Closemown.EndToEnd.Tests;

/// <summary>The program run within the test, with a clock that stands: for long tables of what may be typed.</summary>
internal sealed partial class Inside(DateTimeOffset now, int width = 400) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("closemown-test-").FullName;

    /// <summary>The book's file.</summary>
    public string Book => Path.Combine(folder, "book.closemown");

    public Ran Run(params string[] args) => Asked("", args);

    /// <summary>Runs a command at a terminal at which somebody answers.</summary>
    /// <param name="answers">The answers, a line each; empty where nobody can be asked.</param>
    /// <param name="args">What is typed.</param>
    public Ran Asked(string answers, params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        string? Variable(string name) => name switch
        {
            "CLOSEMOWN_BOOK" => Book,
            "CLOSEMOWN_SETTINGS" => Path.Combine(folder, "settings.json"),
            "HOME" => folder,
            _ => null,
        };
        var exit = CommandLine.Run(args, new Surroundings(new Screen(output, error) { Width = width, CanAsk = answers.Length > 0 }, new StandingClock(now), Variable, () => new MemoryStream(Encoding.UTF8.GetBytes(answers))));
        return new Ran(exit, output.ToString(), error.ToString());
    }

    /// <summary>Runs a line as typed; words in quotes stay together.</summary>
    public Ran Type(string line) => Run([.. Word().Matches(line).Select(m => m.Value.Replace("\"", "", StringComparison.Ordinal))]);

    /// <summary>The last entry of the book.</summary>
    public JsonObject Last => Run("book", "list", "--json", "--last", "1").Json;

    [GeneratedRegex("""(?:[^ "]|"[^"]*")+""")]
    private static partial Regex Word();

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private sealed class StandingClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now.ToUniversalTime();

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
