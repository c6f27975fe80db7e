using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Entries and questions on standard input, answers on standard output, line by line.</summary>
internal sealed class PipeCommand : CliCommand
{
    public PipeCommand() : base("pipe", "entries and questions in, answers out, one JSON object a line: for other programs")
    {
        Examples =
        [
            ("printf '%s\\n' '{\"kind\":\"paper-cut\",\"left\":\"folds\"}' '{\"ask\":\"next\"}' | closemown pipe --book :memory:", "try it, keeping nothing"),
            ("closemown pipe --book PATH <lines.jsonl", "on a book in a file"),
        ];
        Details = ["An entry may leave out v, id and at: its time is then a minute after the last one seen. Nothing but answers is written; a fault is an answer too, and the pipe goes on."];
    }

    public override int Do(Call call)
    {
        using var book = BookFile.Open(call.Location.Path, new BookOptions { SoundPart = call.SoundPart });
        Func<DateTimeOffset, Guid> newId = book.Where == BookFile.InMemory ? new SequentialIds().Next : new IdMaker().Next;
        // A book that is not kept may be of any time: a program tries out a season to come. What is kept is held against the clock.
        Func<DateTimeOffset>? wall = book.Where == BookFile.InMemory ? null : call.Around.Time.GetLocalNow;
        var talk = new Conversation(book, call.Worth, Phrasing.Plain, newId, wall: wall) { BugMet = call.Screen.Tell };
        PipeLoop.Run(PipeLoop.Lines(call.Around.Input()), call.Screen.Out, talk);
        return ExitCodes.Done;
    }
}
