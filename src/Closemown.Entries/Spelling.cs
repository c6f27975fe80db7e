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
        return known.Select(k => (k, d: Distance(word, k))).Where(p => p.d <= limit).OrderBy(p => p.d).ThenBy(p => p.k, StringComparer.Ordinal).FirstOrDefault().k;
    }

    /// <summary>A text cut to what fits a message.</summary>
    public static string Clip(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length <= 40 ? text : string.Concat(text.AsSpan(0, 37), "...");
    }

    /// <summary>Edits (insert, delete, replace, swap neighbours) between two words.</summary>
    private static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) d[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var same = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + same);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }
        return d[a.Length, b.Length];
    }
}
