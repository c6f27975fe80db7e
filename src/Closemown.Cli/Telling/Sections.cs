namespace Closemown.Cli;

/// <summary>Items beside their heading, which stands once, in a column of its own.</summary>
internal sealed class Sections(Screen screen, int column)
{
    /// <summary>The lines of a section; none where there are no items.</summary>
    public IEnumerable<string> Lines(string title, IEnumerable<string> items, Tone tone = Tone.Plain)
    {
        var heading = title;
        foreach (var item in items)
        {
            var first = true;
            foreach (var line in Wrap.Beside(heading, item, screen.Width, column))
            {
                yield return first && heading.Length > 0 ? screen.Ink(Tone.Strong, line[..heading.Length]) + screen.Ink(tone, line[heading.Length..]) : screen.Ink(tone, line);
                first = false;
            }
            heading = "";
        }
    }
}
