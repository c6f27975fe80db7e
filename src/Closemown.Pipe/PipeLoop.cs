using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Pipe;

/// <summary>The pipe: lines in, lines out, in order, each flushed before the next is read.</summary>
public static class PipeLoop
{
    /// <summary>Runs until the end of the input. Blank lines are skipped; nothing but answers is written.</summary>
    public static void Run(LineSource lines, TextWriter output, Conversation conversation)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(conversation);
        while (lines.Next(out var line, out var fault))
        {
            if (fault is null && string.IsNullOrWhiteSpace(line)) continue;
            output.Write(fault is null ? Answer(conversation, line!) : Conversation.Text(Conversation.Refused([fault])));
            output.Write('\n');
            output.Flush();
        }
    }

    /// <summary>The answer to a line; a book that fails is an answer too, and whoever writes to it may go on once the trouble is over.</summary>
    private static string Answer(Conversation conversation, string line)
    {
        try
        {
            return conversation.Say(line);
        }
        catch (BookException e)
        {
            return Conversation.Text(Conversation.Refused(e, line));
        }
    }

    /// <summary>Lines of UTF-8 bytes, capped.</summary>
    public static LineSource Lines(Stream input) => new ByteLines(input, EntryReader.MaxLineLength);
}
