namespace Closemown.Browser.Tests;

/// <summary>The folder of the sources, and what is written below it.</summary>
internal static class Sources
{
    public static string Root { get; } = FindRoot();

    /// <summary>Pictures taken by the tests, written anew each time.</summary>
    public static string Screenshots { get; } = Path.Combine(Root, "artifacts", "screenshots");

    /// <summary>Pictures shown in the documentation.</summary>
    public static string ReadmeScreenshots { get; } = Path.Combine(Root, "docs", "screenshots");

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Closemown.slnx"))) return at.FullName;
        }
        throw new InvalidOperationException("The tests do not run inside the folder of the sources.");
    }
}
