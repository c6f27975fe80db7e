namespace Closemown.Book;

/// <summary>Which of the four decided where the book is.</summary>
public enum BookSource
{
    /// <summary>--book on the command line.</summary>
    Option,

    /// <summary>CLOSEMOWN_BOOK in the environment.</summary>
    Environment,

    /// <summary>The settings file.</summary>
    Settings,

    /// <summary>The usual data folder of the platform.</summary>
    Usual,
}

/// <summary>The kinds of platform that differ in where data lie.</summary>
public enum DataPlatform
{
    Linux,
    MacOS,
    Windows,
}

/// <summary>Where the book is, and what decided it.</summary>
/// <param name="Path">The full path, or ":memory:".</param>
/// <param name="Source">Which of the four decided.</param>
/// <param name="Explanation">The same in words, with what was passed over.</param>
public sealed record BookLocation(string Path, BookSource Source, string Explanation)
{
    /// <summary>The name of the environment variable.</summary>
    public const string Variable = "CLOSEMOWN_BOOK";

    /// <summary>The name of the file in the usual folder.</summary>
    public const string FileName = "book.closemown";

    /// <summary>Decides: option, then environment, then settings, then the usual folder. What is empty counts as not given.</summary>
    /// <param name="option">What was given with --book.</param>
    /// <param name="environment">Looks up an environment variable.</param>
    /// <param name="settings">The path in the settings file; it must be a full path, as no folder is its own.</param>
    /// <param name="usualFolder">The data folder; see <see cref="UsualFolder"/>. Null where there is none.</param>
    /// <exception cref="BookException">Nothing says where, or the settings hold a path that is not full.</exception>
    public static BookLocation Resolve(string? option, Func<string, string?> environment, string? settings, string? usualFolder)
    {
        ArgumentNullException.ThrowIfNull(environment);
        (BookSource Source, string? Path, string Name)[] all =
        [
            (BookSource.Option, option, "--book"),
            (BookSource.Environment, environment(Variable), Variable),
            (BookSource.Settings, settings, "the settings file"),
            (BookSource.Usual, string.IsNullOrWhiteSpace(usualFolder) ? null : System.IO.Path.Combine(usualFolder, FileName), "the usual data folder"),
        ];
        var given = all.Where(s => !string.IsNullOrWhiteSpace(s.Path)).ToArray();
        if (given.Length == 0)
            throw new BookException(BookTrouble.BadPlace, "Nothing says where the book is, and this machine names no folder for data.", $"Give --book PATH, or set {Variable}.");
        var (source, path, name) = given[0];
        if (path != BookFile.InMemory)
        {
            if (source == BookSource.Settings && !System.IO.Path.IsPathFullyQualified(path!))
                throw new BookException(BookTrouble.BadPlace, $"The settings file gives the book as {path}, which is not a full path.", "Write the full path there.");
            path = System.IO.Path.GetFullPath(path!);
        }
        var passed = given.Skip(1).Where(s => s.Source != BookSource.Usual).Select(s => $"{s.Name} ({s.Path})").ToArray();
        return new(path!, source, $"{path}, from {name}{(passed.Length > 0 ? $", which goes before {string.Join(" and ", passed)}" : "")}.");
    }

    /// <summary>The folder for a person's data: XDG_DATA_HOME or ~/.local/share on Linux, ~/Library/Application Support on macOS, LOCALAPPDATA on Windows; null where the environment names none.</summary>
    public static string? UsualFolder(Func<string, string?> environment, DataPlatform platform)
    {
        ArgumentNullException.ThrowIfNull(environment);
        string? Full(string name) => environment(name) is { Length: > 0 } folder && System.IO.Path.IsPathFullyQualified(folder) ? folder : null;
        var home = Full("HOME");
        var data = platform switch
        {
            DataPlatform.Windows => Full("LOCALAPPDATA"),
            DataPlatform.MacOS => home is null ? null : System.IO.Path.Combine(home, "Library", "Application Support"),
            _ => Full("XDG_DATA_HOME") ?? (home is null ? null : System.IO.Path.Combine(home, ".local", "share")),
        };
        return data is null ? null : System.IO.Path.Combine(data, "closemown");
    }

    /// <summary>The platform this program runs on.</summary>
    public static DataPlatform Platform => OperatingSystem.IsWindows() ? DataPlatform.Windows : OperatingSystem.IsMacOS() ? DataPlatform.MacOS : DataPlatform.Linux;
}
