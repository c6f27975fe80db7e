using Closemown.Quantities;

namespace Closemown.Entries;

/// <summary>Near-miss hints: the known word closest to a mistyped one.</summary>
public static class Spelling
{
    /// <summary>The nearest of the words within two edits (one for words up to four letters), or null.</summary>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(known);
        if (word.Length is 0 or > 40) return null;
        var limit = word.Length <= 4 ? 1 : 2;
        return known.Select(k => (k, d: EditDistance.Of(word.ToUpperInvariant(), k.ToUpperInvariant()))).Where(p => p.d <= limit).OrderBy(p => p.d).ThenBy(p => p.k, StringComparer.Ordinal).FirstOrDefault().k;
    }

    /// <summary>A text cut to what fits a message.</summary>
    public static string Clip(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length <= 40 ? text : string.Concat(text.AsSpan(0, 37), "...");
    }
}
