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
            int distance = Distance(wanted, spelling.ToUpperInvariant());
            if (distance < least)
                (best, least) = (spelling, distance);
        }
        return best;
    }

    /// <summary>Letters added, left out, changed, or two neighbours swapped.</summary>
    internal static int Distance(string a, string b)
    {
        int[,] cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            cost[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            cost[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
            for (int j = 1; j <= b.Length; j++)
            {
                int change = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                cost[i, j] = Math.Min(change, 1 + Math.Min(cost[i - 1, j], cost[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
            }
        return cost[a.Length, b.Length];
    }
}
