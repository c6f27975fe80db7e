using System.CommandLine;

namespace Closemown.Cli;

/// <summary>Options that mean the same with every command.</summary>
internal static class CommonOptions
{
    public static Option<string> Book { get; } = new("--book") { Description = "the book's file; goes before CLOSEMOWN_BOOK, the settings and the usual folder", HelpName = "PATH", Recursive = true };

    public static Option<bool> Json { get; } = new("--json") { Description = "the answer as JSON, for programs", Recursive = true };

    public static Option<bool> NoColour { get; } = new("--no-colour", "--no-color") { Description = "no colour (NO_COLOR does the same)", Recursive = true };

    public static Option<string> Words { get; } = new("--words") { Description = "us or uk words, this once", HelpName = "us|uk", Recursive = true };

    public static Option<string> Gap { get; } = new("--gap") { Description = "unit of the gap, this once", HelpName = "um|thou|hundredth", Recursive = true };

    public static Option<string> Height { get; } = new("--height") { Description = "unit of heights, this once", HelpName = "mm|inch|fraction", Recursive = true };

    public static Option<string> Decimal { get; } = new("--decimal") { Description = "decimal sign, this once", HelpName = "point|comma", Recursive = true };

    public static Option<bool> SoundPart { get; } = new("--sound-part") { Description = "of a damaged book: answer from the entries before the damage, and take none", Recursive = true };

    public static Option<string> Unit { get; } = new("--unit") { Description = "the cutting unit, by its short name; may be left out while there is only one", HelpName = "NAME" };

    public static Option<string> Area { get; } = new("--area") { Description = "the turf area, by its short name", HelpName = "NAME" };

    public static Option<string> At { get; } = new("--at") { Description = "when: 10:30 (today), \"2026-05-03 10:30\", or with offset 2026-05-03T10:30+01:00; default now", HelpName = "TIME" };

    public static Option<bool> Draw { get; } = new("--draw") { Description = "draw the gap also where the output is no terminal" };

    public static IReadOnlyList<Option> Everywhere { get; } = [Book, Json, NoColour, Words, Gap, Height, Decimal, SoundPart];
}
