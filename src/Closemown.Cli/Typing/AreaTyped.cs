using Closemown.Advice;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>An area given with an option.</summary>
internal static class AreaTyped
{
    /// <summary>Refuses an area that the book does not know while it knows others: most likely a slip of the pen.</summary>
    /// <exception cref="CliFault">The book has areas, but not that one.</exception>
    public static void Check(Desk desk, string? area)
    {
        var known = desk.Standing.Select(e => e.Area).OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList();
        if (area is null || known.Count == 0 || known.Contains(area)) return;
        var near = Spelling.Nearest(area, known);
        throw CliFault.Refused($"The book has no area \"{Spelling.Clip(area)}\".", near is null ? $"It has {string.Join(", ", known)}." : $"Did you mean \"{near}\"?");
    }
}
