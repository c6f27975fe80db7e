using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Closemown.Cli;

/// <summary>Writes to a screen what a terminal must not take as an order: control characters and those that turn the direction of writing are
/// shown as \u and four digits, whoever wrote them.</summary>
/// <remarks>A book may come from elsewhere, and a text in it could clear the screen, set a title or make a link. Line breaks stay. The shown form is
/// also the same character in JSON, so that answers for programs mean what they meant. The program's own colours begin with a mark that is made
/// anew in each process, so that no text can hold it.</remarks>
internal sealed class ScreenWriter(TextWriter to) : TextWriter(CultureInfo.InvariantCulture)
{
    private const char Escape = '\u001b';

    private static readonly string Secret = RandomNumberGenerator.GetHexString(16);

    private static readonly SearchValues<char> Orders = SearchValues.Create([.. Enumerable.Range(0, 0x10000).Select(c => (char)c).Where(IsOrder)]);

    /// <summary>What the program's own colour codes begin with, in place of ESC and a bracket.</summary>
    public static string ColourMark { get; } = Escape + Secret;

    public override Encoding Encoding => to.Encoding;

    public override void Write(char value) => Write([value]);

    public override void Write(string? value) => Write(value.AsSpan());

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(ReadOnlySpan<char> buffer)
    {
        while (buffer.IndexOfAny(Orders) is var at and >= 0)
        {
            to.Write(buffer[..at]);
            var rest = buffer[(at + 1)..];
            if (buffer[at] == Escape && rest.StartsWith(Secret, StringComparison.Ordinal))
            {
                to.Write("\u001b[");
                rest = rest[Secret.Length..];
            }
            else to.Write("\\u" + ((int)buffer[at]).ToString("x4", CultureInfo.InvariantCulture));
            buffer = rest;
        }
        to.Write(buffer);
    }

    public override void Flush() => to.Flush();

    /// <summary>C0 but for the line break, DEL and C1; signs that turn or end a direction of writing; line and paragraph separators.</summary>
    private static bool IsOrder(char c) => (char.IsControl(c) && c != '\n')
        || c is '\u061c' or '\u200e' or '\u200f' or (>= '\u2028' and <= '\u202e') or (>= '\u2066' and <= '\u2069');
}
