using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Pipe;

/// <summary>A book being written to and asked: one line in, one line out.</summary>
/// <remarks>The pipe, the commands and any server go through here, so that they take and give the same.</remarks>
public sealed class Conversation
{
    private const string DefaultUnit = "mower";
    private const string DefaultArea = "turf";
    private static readonly DateTimeOffset First = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly JsonSerializerOptions OneLine = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private readonly IEntryStore book;
    private readonly AdviceSettings settings;
    private readonly EntryContext context;
    private readonly Questions questions;
    private readonly Func<DateTimeOffset>? clock;
    private readonly SortedSet<string> areas = new(StringComparer.Ordinal);
    private DateTimeOffset? seen;

    /// <summary>Opens a conversation about a book.</summary>
    /// <param name="book">The book; entries already in it are read.</param>
    /// <param name="settings">What things are worth.</param>
    /// <param name="phrasing">The person's words.</param>
    /// <param name="newId">Makes ids for entries that bring none.</param>
    /// <param name="clock">The time of entries and questions that name none; null for the pipe's own: a minute after the last one seen.</param>
    /// <param name="wall">The clock on the wall, against which times of entries are held; null where nobody is asked about times far off.</param>
    public Conversation(IEntryStore book, AdviceSettings settings, Phrasing phrasing, Func<DateTimeOffset, Guid> newId, Func<DateTimeOffset>? clock = null,
        Func<DateTimeOffset>? wall = null)
    {
        ArgumentNullException.ThrowIfNull(book);
        (this.book, this.settings, this.clock) = (book, settings, clock);
        Desk = new Desk(settings.Learning, book.ReadWeather);
        questions = new Questions(Desk, settings, phrasing);
        foreach (var stored in book.ReadAll())
        {
            Desk.Load(stored.Entry, stored.Hash);
            if (stored.Entry.Area is { } area) areas.Add(area);
        }
        seen = Desk.LatestAt;
        context = new EntryContext
        {
            NewId = newId,
            Now = NextAt,
            OnlyUnit = OnlyUnit,
            OnlyArea = () => areas.Count switch { 0 => DefaultArea, 1 => areas.Min, _ => null },
            Clock = wall,
            Latest = () => Desk.LatestUnconfirmedAt,
        };
    }

    /// <summary>A fault of the program was met; whoever keeps a log writes it down.</summary>
    public Action<Bug>? BugMet { get; set; }

    /// <summary>The entries and what follows from them.</summary>
    public Desk Desk { get; }

    public Questions Questions => questions;

    /// <summary>The time at which a question is asked now.</summary>
    public DateTimeOffset AskedAt => clock?.Invoke() ?? seen ?? First;

    /// <summary>The unit meant where none is named; null while several are in use.</summary>
    public string? OnlyUnit() => Desk.Units.Count switch { 0 => DefaultUnit, 1 => Desk.Units.First(), _ => null };

    /// <summary>Takes a line, an entry or a question, and gives the answer on one line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="words">The words of whoever asks; null for the conversation's own.</param>
    public string Say(string line, Phrasing? words = null)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (!EntryReader.TryParse(line, out var document, out var fault)) return Text(Refused([fault!]));
        using (document)
        {
            return Text(Say(document!.RootElement, words));
        }
    }

    /// <summary>Takes an entry or a question as JSON and gives the answer as JSON.</summary>
    /// <param name="line">The entry or question.</param>
    /// <param name="words">The words of whoever asks; null for the conversation's own.</param>
    public JsonObject Say(JsonElement line, Phrasing? words = null)
    {
        try
        {
            if (line.TryGetProperty("ask", out _) && !line.TryGetProperty("kind", out _))
                return Marked((words is null ? questions : new Questions(Desk, settings, words)).Answer(line, AskedAt, OnlyUnit(), out var fault) ?? Refused([fault!]));
            var faults = EntryReader.Read(line, context, out var entry);
            if (entry is null) return Refused(faults);
            return ContextQuestions.Of(Desk, entry) is { } odd ? Refused([odd]) : Taken(entry, out _);
        }
        catch (InvalidOperationException e) when (e is not ObjectDisposedException && e.Message.Contains("UTF-16", StringComparison.Ordinal))
        {
            return Refused([new(FaultCodes.BadJson, "", "The line holds a broken character escape.", "Write the character itself, in UTF-8.")]);
        }
        catch (Exception e) when (BugFault.IsOne(e))
        {
            return BugFault.Answer(Met(e, BugFault.Named(line)));
        }
    }

    /// <summary>What fails half-way leaves the models knowing half a thing: they are made anew from the entries.</summary>
    private Bug Met(Exception e, string asked)
    {
        var bug = new Bug(asked, e);
        Desk.StartOver();
        BugMet?.Invoke(bug);
        return bug;
    }

    /// <summary>Puts an entry into the book.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="result">What the book did with it.</param>
    /// <returns>The answer to it; where the book could not take it, a refusal that hands the entry back.</returns>
    public JsonObject Taken(Entry entry, out AppendResult result)
    {
        ArgumentNullException.ThrowIfNull(entry);
        try
        {
            (Trouble, result) = (null, book.Append(entry));
        }
        catch (BookException e)
        {
            (Trouble, result) = (e, AppendResult.Withheld);
            return Refused(e, entry.Json);
        }
        if (result == AppendResult.Conflict) return Refused([Conflicts.Of(entry)]);
        seen = entry.At;
        if (entry.Area is { } area) areas.Add(area);
        var answer = new JsonObject { ["ok"] = true, ["id"] = entry.Id.ToString("D") };
        if (result == AppendResult.Superseded) answer["superseded"] = true;
        if (result != AppendResult.Added) return answer;
        if (entry.Is(WeatherEntry.Kind))
        {
            Desk.AddWeather(entry);
            return answer;
        }
        try
        {
            CatchUp();
        }
        catch (Exception e) when (BugFault.IsOne(e))
        {
            // It is in the book: to refuse it now would have it entered twice.
            var bug = Met(e, $"a {entry.Kind.Name} entry");
            answer["bug"] = $"The entry is in the book. {BugFault.Of(bug.Asked).Message} {BugFault.Remedy}";
            return answer;
        }
        if (Last is { } surprise)
        {
            answer["surpriseAt"] = new JsonObject(surprise.At.Select(a => KeyValuePair.Create<string, JsonNode?>(Stations.All[a.Station], a.P)));
            answer["surprise"] = surprise.All;
        }
        return answer;
    }

    /// <summary>Why the book could not take the last entry; null where it could.</summary>
    public BookException? Trouble { get; private set; }

    /// <summary>How odd the last entry's reading was; null where it was none.</summary>
    public ReadingSurprise? Last { get; private set; }

    /// <summary>Takes in what other programs have put into the book.</summary>
    /// <param name="weather">Whether weather is among it.</param>
    public void Refresh(bool weather)
    {
        var known = Desk.Arrived.Count;
        CatchUp();
        foreach (var entry in Desk.Arrived.Skip(known))
        {
            if (entry.Area is { } area) areas.Add(area);
        }
        if (Desk.Arrived.Count > known) seen = Desk.LatestAt;
        if (weather) Desk.WeatherChanged();
    }

    /// <summary>Reads what the book holds beyond what the desk knows: the entry just put in, and those of other writers before it.</summary>
    private void CatchUp()
    {
        Last = null;
        foreach (var stored in book.ReadAfter(Desk.Arrived.Count)) Last = Desk.Add(stored.Entry, stored.Hash);
    }

    private DateTimeOffset NextAt() => clock?.Invoke() ?? (seen is { } t ? t.AddMinutes(1) : First);

    /// <summary>A refusal: the first fault, and all of them where there are several.</summary>
    public static JsonObject Refused(IReadOnlyList<EntryFault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        var answer = new JsonObject { ["ok"] = false, ["error"] = Fault(faults[0]) };
        if (faults.Count > 1) answer["errors"] = new JsonArray([.. faults.Select(f => (JsonNode)Fault(f))]);
        return answer;
    }

    /// <summary>A refusal because of the book itself.</summary>
    /// <param name="trouble">What is the matter with it.</param>
    /// <param name="entry">The line of an entry that could not enter: handed back under <c>error.entry</c>, so that nothing typed is lost.</param>
    public static JsonObject Refused(BookException trouble, string? entry = null)
    {
        ArgumentNullException.ThrowIfNull(trouble);
        var answer = Refused([new(BookCode, "", trouble.Message, trouble.Remedy)]);
        if (entry is not null && EntryReader.TryParse(entry, out var document, out _))
        {
            using (document)
            {
                if (document!.RootElement.TryGetProperty("kind", out _)) answer["error"]!["entry"] = JsonNode.Parse(document.RootElement.GetRawText());
            }
        }
        return answer;
    }

    /// <summary>The code of a refusal because of the book itself.</summary>
    public const string BookCode = "book";

    /// <summary>What is to stand in every answer of a damaged book; null where it is whole.</summary>
    public static JsonObject? Damaged(BookDamage? damage) => damage is null ? null : new JsonObject
    {
        ["fromEntry"] = damage.FromEntry,
        ["weather"] = damage.Weather,
        ["message"] = damage.Warning,
        ["remedy"] = damage.Remedy,
    };

    private JsonObject Marked(JsonObject answer)
    {
        if (Damaged(book.Damage) is { } damaged) answer["damaged"] = damaged;
        return answer;
    }

    /// <summary>An answer on one line.</summary>
    public static string Text(JsonObject answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.ToJsonString(OneLine);
    }

    private static JsonObject Fault(EntryFault f) => new() { ["code"] = f.Code, ["field"] = f.Field, ["message"] = f.Message, ["remedy"] = f.Remedy };
}
