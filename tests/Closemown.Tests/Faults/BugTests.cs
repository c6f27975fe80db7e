using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Xunit;

namespace Closemown.Tests.Faults;

/// <summary>A fault of the program ends no process: it is an answer, a line in the log, and the next line is answered.</summary>
public sealed class BugTests : IDisposable
{
    private readonly FailingBook book = new();
    private readonly List<Bug> log = [];
    private readonly Conversation talk;

    public BugTests() => talk = new(book, AdviceSettings.Default, Phrasing.Plain, SequentialIds.After(book).Next) { BugMet = log.Add };

    private JsonObject Say(string line) => JsonNode.Parse(talk.Say(line))!.AsObject();

    public void Dispose() => book.Dispose();

    [Fact]
    public void F2_A_question_that_the_program_cannot_cope_with_is_answered_by_the_fault_bug()
    {
        book.Weather = () => throw new InvalidOperationException("secret words of a person");
        var answer = Say("""{"ask":"turf","area":"green"}""");
        Assert.False((bool)answer["ok"]!);
        var error = answer["error"]!;
        Assert.Equal(("bug", "the question turf"), ((string)error["code"]!, (string)error["asked"]!));
        Assert.Contains("The book is whole.", (string)error["message"]!, StringComparison.Ordinal);
        Assert.NotEmpty((string)error["remedy"]!);
        Assert.DoesNotContain("secret", answer.ToJsonString(), StringComparison.Ordinal);
        var line = Assert.Single(log).LogLine;
        Assert.Contains("InvalidOperationException", line, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", line, StringComparison.Ordinal);
        book.Weather = () => [];
        Assert.True((bool)Say("""{"ask":"turf","area":"green"}""")["ok"]!);
    }

    [Fact]
    public void An_entry_that_is_in_the_book_is_said_to_be_in_it_though_the_models_fail()
    {
        book.FailAfterAppend = true;
        var answer = Say("""{"kind":"clicks","unit":"m","left":1}""");
        Assert.True((bool)answer["ok"]!);
        Assert.Contains("The entry is in the book.", (string)answer["bug"]!, StringComparison.Ordinal);
        Assert.Single(log);
        book.FailAfterAppend = false;
        Assert.True((bool)Say("""{"kind":"clicks","unit":"m","left":1}""")["ok"]!);
        Assert.Equal(2, talk.Desk.Arrived.Count);
    }

    [Fact]
    public void F14_A_book_that_cannot_be_written_is_an_answer_and_the_pipe_goes_on()
    {
        book.Full = true;
        using var input = new MemoryStream("{\"kind\":\"clicks\",\"unit\":\"m\",\"left\":1}\n{\"ask\":\"steel\",\"unit\":\"m\"}\n"u8.ToArray());
        using var output = new StringWriter();
        PipeLoop.Run(PipeLoop.Lines(input), output, talk);
        var answers = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!).ToArray();
        Assert.Equal(2, answers.Length);
        Assert.Equal("book", (string)answers[0]["error"]!["code"]!);
        Assert.Contains("no room", (string)answers[0]["error"]!["message"]!, StringComparison.Ordinal);
        Assert.True((bool)answers[1]["ok"]!);
    }

    /// <summary>A book in memory that fails when told to.</summary>
    private sealed class FailingBook : IEntryStore
    {
        private readonly MemoryBook inner = new();

        public Func<IReadOnlyList<Entry>> Weather { get; set; } = () => [];

        public bool FailAfterAppend { get; set; }

        public bool Full { get; set; }

        public string Where => inner.Where;

        public BookDamage? Damage => null;

        public long Count => inner.Count;

        public BookStamp Stamp => inner.Stamp;

        public AppendResult Append(Entry entry) => AppendAll([entry], false)[0];

        public IReadOnlyList<AppendResult> AppendAll(IReadOnlyList<Entry> entries, bool allOrNone) =>
            Full ? throw new BookException(BookTrouble.DiskFull, "There is no room to write.", "Free some room.") : inner.AppendAll(entries, allOrNone);

        public IReadOnlyList<StoredEntry> ReadAll(long upTo = long.MaxValue) => inner.ReadAll(upTo);

        public IReadOnlyList<StoredEntry> ReadAfter(long seq) => FailAfterAppend ? throw new InvalidCastException("half a thing") : inner.ReadAfter(seq);

        public IReadOnlyList<StoredEntry> ReadBetween(long after, long upTo) => inner.ReadBetween(after, upTo);

        public IReadOnlyList<Entry> ReadWeather() => Weather();

        public IReadOnlyList<Entry> ReadWeatherKept() => inner.ReadWeatherKept();

        public Entry? Find(Guid id) => inner.Find(id);

        public string HashAt(long seq) => inner.HashAt(seq);

        public void Dispose() => inner.Dispose();
    }
}
