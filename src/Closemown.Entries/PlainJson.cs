using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;

namespace Closemown.Entries;

/// <summary>Escapes only what JSON demands: the quote, the backslash and what lies below the space (RFC 8259, section 7).</summary>
/// <remarks>
/// The encoders of the framework also escape all beyond the basic plane, to twelve characters each, so that a note of pictures grew
/// sixfold. A line of a book is read by JSON readers only, never put into a page as it is.
/// </remarks>
internal sealed class PlainJson : JavaScriptEncoder
{
    private const string Hex = "0123456789ABCDEF";
    private static readonly SearchValues<char> Demanded = SearchValues.Create([.. Enumerable.Range(0, 0x20).Select(c => (char)c), '"', '\\']);

    private PlainJson()
    {
    }

    public static PlainJson Encoder { get; } = new();

    public override int MaxOutputCharactersPerInputCharacter => 6;

    public override bool WillEncode(int unicodeScalar) => unicodeScalar is < 0x20 or '"' or '\\';

    public override unsafe int FindFirstCharacterToEncode(char* text, int textLength) => new ReadOnlySpan<char>(text, textLength).IndexOfAny(Demanded);

    public override unsafe bool TryEncodeUnicodeScalar(int unicodeScalar, char* buffer, int bufferLength, out int numberOfCharactersWritten)
    {
        var room = new Span<char>(buffer, bufferLength);
        if (!WillEncode(unicodeScalar)) return new Rune(unicodeScalar).TryEncodeToUtf16(room, out numberOfCharactersWritten);
        var escaped = unicodeScalar switch
        {
            '"' => "\\\"",
            '\\' => "\\\\",
            '\b' => "\\b",
            '\f' => "\\f",
            '\n' => "\\n",
            '\r' => "\\r",
            '\t' => "\\t",
            _ => $"\\u00{Hex[unicodeScalar >> 4]}{Hex[unicodeScalar & 15]}",
        };
        var fits = escaped.TryCopyTo(room);
        numberOfCharactersWritten = fits ? escaped.Length : 0;
        return fits;
    }
}
