using System.Buffers;
using System.IO.Pipelines;
using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Web;

/// <summary>Lines of a body while it comes: no thread waits for the next, and none is held whole beyond the cap.</summary>
internal sealed class BodyLines
{
    private readonly PipeReader body;
    private readonly MemoryStream piece = new();
    private readonly ByteLines lines;
    private readonly long most;

    /// <param name="body">The body.</param>
    /// <param name="longest">The longest line taken, in characters.</param>
    public BodyLines(PipeReader body, int longest)
    {
        (this.body, lines) = (body, new ByteLines(piece, longest));
        // A character takes at most three bytes; what is longer is known to be too long, and need not be kept.
        most = (3L * longest) + 4;
    }

    /// <summary>The next line, or what is wrong with it; null at the end.</summary>
    /// <exception cref="BadHttpRequestException">The body is larger than is taken, or comes too slowly.</exception>
    public async ValueTask<BodyLine?> Next(CancellationToken stop)
    {
        piece.SetLength(0);
        while (true)
        {
            var read = await body.ReadAsync(stop);
            if (read.Buffer.PositionOf((byte)'\n') is { } end)
            {
                Keep(read.Buffer.Slice(0, end));
                piece.WriteByte((byte)'\n');
                body.AdvanceTo(read.Buffer.GetPosition(1, end));
                return Decoded();
            }
            Keep(read.Buffer);
            body.AdvanceTo(read.Buffer.End);
            if (read.IsCompleted) return piece.Length > 0 ? Decoded() : null;
        }
    }

    private void Keep(ReadOnlySequence<byte> bytes)
    {
        foreach (var part in bytes)
        {
            if (piece.Length <= most) piece.Write(part.Span);
        }
    }

    private BodyLine? Decoded()
    {
        piece.Position = 0;
        return lines.Next(out var text, out var fault) ? new(text, fault) : null;
    }
}

/// <summary>A line of a body.</summary>
/// <param name="Text">The line; null where it cannot be read.</param>
/// <param name="Fault">What is wrong with it; null for nothing.</param>
internal sealed record BodyLine(string? Text, EntryFault? Fault);
