using System.Buffers;
using System.Text;
using Closemown.Entries;

namespace Closemown.Book;

/// <summary>Lines out of a stream or text, one at a time, none held whole beyond the cap.</summary>
public abstract class LineSource(int longest)
{
    /// <summary>The longest line taken, in characters.</summary>
    protected int Longest { get; } = longest;

    /// <summary>The next line, or what is wrong with it; false at the end.</summary>
    public abstract bool Next(out string? text, out EntryFault? fault);

    protected EntryFault TooLong() => new(FaultCodes.BadJson, "", $"The line is longer than {Longest} characters.", "Split it into several entries, one a line.");
}

/// <summary>Lines of UTF-8 bytes; bytes that are no UTF-8 are a fault, never replaced.</summary>
public sealed class ByteLines(Stream stream, int longest) : LineSource(longest)
{
    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    private readonly byte[] chunk = new byte[16384];
    private readonly ArrayBufferWriter<byte> line = new();
    private int at;
    private int have;
    private bool first = true;

    public override bool Next(out string? text, out EntryFault? fault)
    {
        (text, fault) = (null, null);
        line.ResetWrittenCount();
        var (any, tooLong) = (false, false);
        while (true)
        {
            if (at == have)
            {
                (at, have) = (0, stream.Read(chunk));
                if (have == 0) break;
            }
            any = true;
            var rest = chunk.AsSpan(at, have - at);
            var end = rest.IndexOf((byte)'\n');
            var piece = end < 0 ? rest : rest[..end];
            at += end < 0 ? rest.Length : end + 1;
            // A character takes at most three bytes for each of its places in text.
            if (tooLong || line.WrittenCount + piece.Length > (3L * Longest) + 4) tooLong = true;
            else line.Write(piece);
            if (end >= 0) break;
        }
        if (!any) return false;
        if (tooLong) fault = TooLong();
        else Decode(out text, out fault);
        first = false;
        return true;
    }

    private void Decode(out string? text, out EntryFault? fault)
    {
        (text, fault) = (null, null);
        var bytes = line.WrittenSpan;
        if (first && bytes.StartsWith("\uFEFF"u8)) bytes = bytes[3..];
        if (bytes.EndsWith("\r"u8)) bytes = bytes[..^1];
        try
        {
            text = Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            fault = new(FaultCodes.BadJson, "", "The line is not UTF-8.", "Save the file as UTF-8.");
            return;
        }
        if (text.Length <= Longest) return;
        (text, fault) = (null, TooLong());
    }
}

/// <summary>Lines of text that is decoded already.</summary>
public sealed class TextLines(TextReader reader, int longest) : LineSource(longest)
{
    private readonly char[] chunk = new char[8192];
    private readonly StringBuilder line = new();
    private int at;
    private int have;
    private bool first = true;

    public override bool Next(out string? text, out EntryFault? fault)
    {
        (text, fault) = (null, null);
        line.Clear();
        var (any, tooLong) = (false, false);
        while (true)
        {
            if (at == have)
            {
                (at, have) = (0, reader.Read(chunk, 0, chunk.Length));
                if (have == 0) break;
            }
            any = true;
            var rest = chunk.AsSpan(at, have - at);
            var end = rest.IndexOf('\n');
            var piece = end < 0 ? rest : rest[..end];
            at += end < 0 ? rest.Length : end + 1;
            if (first && line.Length == 0 && piece.Length > 0 && piece[0] == '\uFEFF') piece = piece[1..];
            if (tooLong || line.Length + piece.Length > Longest + 1) tooLong = true;
            else line.Append(piece);
            if (end >= 0) break;
        }
        if (!any) return false;
        first = false;
        if (line.Length > 0 && line[^1] == '\r') line.Length--;
        if (tooLong || line.Length > Longest) fault = TooLong();
        else text = line.ToString();
        return true;
    }
}
