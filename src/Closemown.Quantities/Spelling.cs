using System.Text;

namespace Closemown.Quantities;

/// <summary>Spellings of units: one form for comparing, and the nearest one to a slip of the fingers.</summary>
internal static class Spelling
{
    /// <summary>Trimmed, one space between words, no dot after an abbreviation, one micro sign, raised figures level.</summary>
    public static string Normal(string text)
    {
        var normal = new StringBuilder(text.Length);
        bool space = false;
        foreach (char c in text)
        {
            if (char.IsWhiteSpace(c))
            {
                space = normal.Length > 0;
                continue;
            }
            char level = c switch
            {
                '\u03BC' => '\u00B5',
                '²' => '2',
                '¹' => '1',
                '⁻' => '-',
                '″' or '”' or '“' => '"',
                _ => c,
            };
            if (level == '.')
                continue;
            if (space)
                normal.Append(' ');
            space = false;
            normal.Append(level);
        }
        return normal.ToString();
    }

    /// <summary>The words with "a" or "an" before them.</summary>
    public static string WithArticle(string words) => (words[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an " : "a ") + words;

    /// <summary>The spelling nearest to the text, at most two slips away (one for short words), or null.</summary>
    public static string? Nearest(string text, IEnumerable<string> spellings)
    {
        string wanted = Normal(text).ToUpperInvariant();
        if (wanted.Length is < 3 or > 24)
            return null;
        string? best = null;
        int least = wanted.Length <= 4 ? 2 : 3;
        foreach (string spelling in spellings)
        {
            if (spelling.Length < 3)
                continue;
            int distance = EditDistance.Of(wanted, spelling.ToUpperInvariant());
            if (distance < least)
                (best, least) = (spelling, distance);
        }
        return best;
    }
}
