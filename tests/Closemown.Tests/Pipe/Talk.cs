using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;
using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Pipe;

/// <summary>A conversation about a book in memory, line by line.</summary>
internal sealed class Talk
{
    public const string GoodFit = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""";

    public Talk(WritingStyle? style = null, IEntryStore? book = null, AdviceSettings? settings = null)
    {
        Book = book ?? new MemoryBook();
        With = new(Book, settings ?? AdviceSettings.Default, new Phrasing(style ?? WritingStyle.Plain), SequentialIds.After(Book).Next);
    }

    public IEntryStore Book { get; }

    public Conversation With { get; }

    public JsonObject Say(string line) => JsonNode.Parse(With.Say(line))!.AsObject();

    /// <summary>Says lines that must be taken; gives the last answer.</summary>
    public JsonObject Did(params IEnumerable<string> lines)
    {
        var answer = new JsonObject();
        foreach (var line in lines)
        {
            answer = Say(line);
            Assert.True((bool)answer["ok"]!, $"{line} → {answer.ToJsonString()}");
        }
        return answer;
    }

    /// <summary>The next step; <paramref name="more"/> is added to the question.</summary>
    public JsonObject Next(string more = "") => Did($$"""{"ask":"next"{{more}}}""")["next"]!.AsObject();

    public string Do(string more = "") => (string)Next(more)["do"]!;

    /// <summary>The fault of a line that must be refused.</summary>
    public (string Code, string Field, string Message, string Remedy) Fault(string line)
    {
        var answer = Say(line);
        Assert.False((bool)answer["ok"]!, $"{line} → {answer.ToJsonString()}");
        var e = answer["error"]!;
        return ((string)e["code"]!, (string)e["field"]!, (string)e["message"]!, (string)e["remedy"]!);
    }

    /// <summary>A book with those lines taken.</summary>
    public static Talk After(params IEnumerable<string> lines)
    {
        var talk = new Talk();
        talk.Did(lines);
        return talk;
    }

    /// <summary>A step and those that follow it in its plan.</summary>
    public static IEnumerable<JsonObject> Plan(JsonObject step) => [step, .. step["then"]!.AsArray().Select(t => t!.AsObject())];

    /// <summary>Every text in an answer.</summary>
    public static IEnumerable<string> Texts(JsonNode? node) => node switch
    {
        JsonObject o => o.SelectMany(p => Texts(p.Value)),
        JsonArray a => a.SelectMany(Texts),
        JsonValue v when v.TryGetValue(out string? s) => [s],
        _ => [],
    };
}
