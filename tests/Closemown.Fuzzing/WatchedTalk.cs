using System.Runtime.ExceptionServices;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Fuzzing;

/// <summary>A conversation whose bugs are kept: it answers them and goes on, but a run that met one has not kept the laws.</summary>
public sealed class WatchedTalk
{
    private Exception? met;

    /// <summary>Begins one about a book, with ids that ascend.</summary>
    public WatchedTalk(IEntryStore book) =>
        With = new(book, AdviceSettings.Default, Phrasing.Plain, SequentialIds.After(book).Next) { BugMet = bug => met ??= bug.Exception };

    /// <summary>The conversation.</summary>
    public Conversation With { get; }

    /// <summary>Throws the first bug met since the last call, as it was thrown.</summary>
    public void Throw()
    {
        var first = met;
        met = null;
        if (first is not null) ExceptionDispatchInfo.Throw(first);
    }
}
