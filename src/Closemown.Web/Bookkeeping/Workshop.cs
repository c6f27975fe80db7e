using System.Text;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pages;
using Closemown.Pipe;
using Closemown.Quantities;
using Closemown.Serving;

namespace Closemown.Web;

/// <summary>One book, kept open, with one conversation about it that all visitors share, in turn.</summary>
/// <remarks>Answers that were given are kept until the book or the asking time goes on, and given again without waiting for anyone.</remarks>
internal sealed class Workshop : IDisposable
{
    private readonly SemaphoreSlim turn = new(1);
    private readonly Lock telling = new();
    private readonly IEntryStore book;
    private readonly IEntryStore watch;
    private readonly AdviceSettings settings;
    private readonly AskingTime? time;
    private readonly Func<DateTimeOffset, Guid> newId;
    private Conversation? talk;
    private volatile Answers answers;
    private BookStamp told;
    private volatile Seen? read;

    /// <summary>Opens the book, making it where there is none. Its entries are read when something is first asked.</summary>
    /// <exception cref="BookException">It cannot be used.</exception>
    public Workshop(ServeOptions options, TimeProvider clock)
    {
        settings = AdviceSettings.Default with { PriceOfMinute = options.PriceOfMinute };
        book = BookFile.Open(options.Book, new BookOptions { SoundPart = options.SoundPart });
        // Looked at while the other connection is writing, or waits for another program to have written.
        watch = book.Where == BookFile.InMemory ? book : BookFile.Open(options.Book, new BookOptions { ReadOnly = true, SoundPart = options.SoundPart });
        time = options.TimeOfTheBook ? null : new AskingTime(clock);
        newId = book.Where == BookFile.InMemory ? new SequentialIds().Next : new IdMaker().Next;
        answers = new(told = Stamp, time?.Now ?? default);
    }

    /// <summary>The book has changed, here or by another program.</summary>
    public event EventHandler<BookChangedEventArgs>? Changed;

    /// <summary>How far the book has come, changes by other programs included.</summary>
    /// <exception cref="BookException">The book cannot be read.</exception>
    public BookStamp Stamp => watch.Stamp;

    /// <summary>What is wrong with the book, where it was told to answer from its sound part; null where it is whole.</summary>
    public BookDamage? Damage => watch.Damage;

    /// <summary>Whether the work can be done: the entries have been read, the chain fits, and the file is still the one that was opened and holds what was seen in it.</summary>
    /// <param name="stop">Ends the wait for others.</param>
    /// <exception cref="BookException">What is the matter.</exception>
    public async Task<BookStamp> Health(CancellationToken stop)
    {
        if (read is null)
        {
            await turn.WaitAsync(stop);
            try
            {
                CatchUp();
                Noted(Talk);
            }
            finally
            {
                turn.Release();
            }
        }
        var stamp = Stamp;
        if (Damage is { } damage) throw new BookException(BookTrouble.Damaged, damage.Warning, damage.Remedy);
        if (read is { Seq: > 0 } seen && (seen.Seq > stamp.Entries || watch.HashAt(seen.Seq) != seen.Hash))
            throw new BookException(BookTrouble.ChangedOutside, $"{Where} was changed from outside: entry {seen.Seq} is not in it any more.", "End the server, see that the right file lies there, and start it again.");
        return stamp;
    }

    /// <summary>The time a question is asked at now.</summary>
    public DateTimeOffset AskedAt
    {
        get
        {
            if (time is not null) return time.After(answers.At);
            turn.Wait();
            try
            {
                return Talk.AskedAt;
            }
            finally
            {
                turn.Release();
            }
        }
    }

    private Conversation Talk => talk ??= new Conversation(book, settings, Phrasing.Plain, newId, time is null ? null : () => time.Now, time is null ? null : () => time.Now)
    {
        BugMet = bug => BugMet?.Invoke(bug),
    };

    /// <summary>A fault of the program was met; the log writes it down.</summary>
    public Action<Bug>? BugMet { get; set; }

    /// <summary>The answer to a question, as the pipe writes it, in UTF-8.</summary>
    /// <param name="question">A JSON object.</param>
    /// <param name="stop">Ends the wait for others.</param>
    /// <param name="style">Whose words and units its sentences come in; null as programs read them.</param>
    public async Task<byte[]> Ask(string question, CancellationToken stop, WritingStyle? style = null)
    {
        var held = answers;
        var key = style is null ? question : $"{style.Words} {style.Gap} {style.Height} {style.DecimalSign} {question}";
        if (Holds(held, Stamp) && held.Find(key) is { } known) return known;
        await turn.WaitAsync(stop);
        try
        {
            held = CatchUp();
            if (held.Find(key) is { } meanwhile) return meanwhile;
            time?.Hold(held.At);
            var answer = Encoding.UTF8.GetBytes(Whole(() => Talk.Say(question, style is null ? null : VisitorWords.Of(Talk.Desk, question, style))));
            held.Keep(key, answer);
            return answer;
        }
        finally
        {
            time?.Hold(null);
            turn.Release();
            Tell(held.Stamp);
        }
    }

    /// <summary>Looks something up in what is known, in turn.</summary>
    public async Task<T> LookUp<T>(Func<Conversation, T> look, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        try
        {
            time?.Hold(CatchUp().At);
            return look(Talk);
        }
        finally
        {
            time?.Hold(null);
            turn.Release();
            Tell(answers.Stamp);
        }
    }

    /// <summary>Takes one line, entry or question, as the pipe does.</summary>
    public async Task<string> Say(string line, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        Answers held;
        try
        {
            try
            {
                held = CatchUp();
                _ = Talk;
            }
            catch (BookException e)
            {
                return Conversation.Text(Conversation.Refused(e, line));       // the entry is handed back
            }
            var asked = Talk.AskedAt;
            var answer = Whole(() => Talk.Say(line));
            // In an invented book, whose time is that of its last entry, one of an earlier day does not turn the time back: begun anew, the latest counts.
            if (time is null && Talk.AskedAt < asked) talk = null;
            var now = Stamp;
            // Others may have put weather in beside this line.
            if (now.Weather != held.Stamp.Weather) Refresh(weather: true);
            if (now != held.Stamp) answers = held = new(now, time?.Now ?? default);
            return answer;
        }
        finally
        {
            turn.Release();
            Tell(answers.Stamp);
        }
    }

    /// <summary>What an entry says, and whether it stands; null where the book has none of that id.</summary>
    /// <param name="id">The entry.</param>
    /// <param name="style">Whose words and units.</param>
    /// <param name="stop">Ends the wait for others.</param>
    public async Task<EntryTold?> Tell(Guid id, WritingStyle style, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        try
        {
            CatchUp();
            return EntryTelling.Of(Talk.Desk, book, id, style);
        }
        finally
        {
            turn.Release();
            Tell(answers.Stamp);
        }
    }

    /// <summary>When an entry of that id happened; null where the book has none.</summary>
    public DateTimeOffset? At(Guid id) => watch.Find(id)?.At;

    /// <summary>Whether time goes by the book: what a visitor's clock says is then nothing to it.</summary>
    public bool TimeOfTheBook => time is null;

    /// <summary>Reads lines into the book, or with a preview says what would happen; in turn.</summary>
    public async Task<ImportReport> Import(string lines, bool preview, CancellationToken stop)
    {
        await turn.WaitAsync(stop);
        try
        {
            CatchUp();
            using var reader = new StringReader(lines);
            var report = Importer.Read(reader, book, new ImportOptions { Preview = preview });
            CatchUp();
            return report;
        }
        finally
        {
            turn.Release();
            Tell(answers.Stamp);
        }
    }

    /// <summary>All entries, then the weather kept, as JSON Lines.</summary>
    public ExportReport Export(TextWriter to) => Exporter.Write(watch, to);

    /// <summary>Where the book is; ":memory:" where it is in no file.</summary>
    public string Where => book.Where;

    /// <summary>Entries by arrival.</summary>
    public BookSlice Read(long after, string? kind, int limit, CancellationToken stop)
    {
        const int piece = 500;
        var last = Stamp.Entries;
        var found = new List<JsonObject>();
        for (var from = Math.Max(0, after); from < last; from += piece)
        {
            stop.ThrowIfCancellationRequested();
            foreach (var stored in watch.ReadBetween(from, from + piece))
            {
                if (kind is not null && stored.Entry.Kind.Name != kind) continue;
                if (found.Count == limit) return new(found, found[^1]["seq"]!.GetValue<long>(), last);
                found.Add(new JsonObject { ["seq"] = stored.Seq, ["entry"] = JsonNode.Parse(stored.Entry.Json) });
            }
        }
        return new(found, null, last);
    }

    /// <summary>Looks whether another program has changed the book, and tells those who listen.</summary>
    public void Look() => Tell(Stamp);

    public void Dispose()
    {
        if (watch != book) watch.Dispose();
        book.Dispose();
        turn.Dispose();
    }

    private void Noted(Conversation known) => read = new(known.Desk.Arrived.Count, known.Desk.Arrived.Count == 0 ? HashChain.Genesis : known.Desk.HashAfter(known.Desk.Arrived.Count));

    private bool Holds(Answers held, BookStamp now) => held.Stamp == now && (time is null || time.After(held.At) == held.At);

    /// <summary>Takes in what others have put into the book, and begins anew to keep answers where it or the time has gone on; only in turn.</summary>
    private Answers CatchUp()
    {
        var (held, now) = (answers, Stamp);
        if (now != held.Stamp) Refresh(now.Weather != held.Stamp.Weather);
        if (talk is not null && (read is null || now != held.Stamp)) Noted(talk);
        if (!Holds(held, now)) answers = held = new(now, time is null ? default : now == held.Stamp ? time.After(held.At) : time.Now);
        return held;
    }

    private void Refresh(bool weather) => Whole(() =>
    {
        talk?.Refresh(weather);
        return "";
    });

    /// <summary>What fails half-way may leave the conversation knowing half a thing: it is then begun anew.</summary>
    private string Whole(Func<string> work)
    {
        try
        {
            return work();
        }
        catch
        {
            talk = null;
            throw;
        }
    }

    /// <summary>The last entry that was read, and its hash.</summary>
    private sealed record Seen(long Seq, string Hash);

    private void Tell(BookStamp now)
    {
        lock (telling)
        {
            if (now == told) return;
            told = now;
        }
        Changed?.Invoke(this, new(now.Entries));
    }
}
