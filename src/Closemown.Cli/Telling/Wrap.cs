namespace Closemown.Cli;

/// <summary>Breaks text into lines.</summary>
internal static class Wrap
{
    /// <summary>Lines of at most that width; a word longer than that stands alone.</summary>
    public static IReadOnlyList<string> Text(string text, int width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (line.Length == 0) line = word;
                else if (line.Length + 1 + word.Length <= width) line += " " + word;
                else
                {
                    lines.Add(line);
                    line = word;
                }
            }
            lines.Add(line);
        }
        return lines;
    }

    /// <summary>Items side by side, none broken.</summary>
    public static IReadOnlyList<string> Whole(IEnumerable<string> items, int width)
    {
        const char Tied = '\u00a0';
        return [.. Text(string.Join(' ', items.Select(i => i.Replace(' ', Tied) + Tied + Tied)), width).Select(l => l.Replace(Tied, ' ').TrimEnd())];
    }

    /// <summary>A heading at the left margin and text beside it, so that headings can be run down with the eye.</summary>
    public static IEnumerable<string> Beside(string heading, string text, int width, int column)
    {
        var lines = Text(text, Math.Max(20, width - column));
        for (var i = 0; i < lines.Count; i++) yield return (i == 0 ? heading.PadRight(column) : new string(' ', column)) + lines[i];
    }
}
