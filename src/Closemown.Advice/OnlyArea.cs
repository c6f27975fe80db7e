using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>One green: nobody names it, and what is entered without a name belongs to the only one (common practice, no source).</summary>
internal static class OnlyArea
{
    /// <summary>Whether an entry is about an area but names none.</summary>
    public static bool Unnamed(Entry e) => e.Area is null && (e.Is(MowEntry.Kind) || e.Kind.Belongs == Belongs.Area);

    /// <summary>The entries, those that name no area told of the only one; once there are several, of the one that was the only one until then.</summary>
    /// <remarks>So a second area takes nothing away from the first. What came before any area was named stays unnamed where there are several.</remarks>
    /// <param name="standing">Standing entries in order.</param>
    public static IReadOnlyList<Entry> Placed(IReadOnlyList<Entry> standing)
    {
        var named = standing.Select(e => e.Area).OfType<string>().Distinct(StringComparer.Ordinal).Take(2).ToArray();
        var seen = named.Length == 1 ? named[0] : null;
        var several = false;
        var placed = new Entry[standing.Count];
        for (var i = 0; i < placed.Length; i++)
        {
            var e = standing[i];
            if (e.Area is { } area) several |= (seen ??= area) != area;
            placed[i] = seen is not null && !several && Unnamed(e) ? e.On(seen) : e;
        }
        return placed;
    }
}
