using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Bench.Workshop;

/// <summary>A book of its own, spoken to line by line as through the pipe.</summary>
internal sealed class Talk
{
    private readonly Conversation talk;
    private readonly List<string> lines = [];

    public Talk(AdviceSettings settings, Func<DateTimeOffset>? clock = null, IEnumerable<string>? begun = null)
    {
        talk = new Conversation(new MemoryBook(), settings, Phrasing.Plain, new SequentialIds().Next, clock);
        foreach (var line in begun ?? []) Write(line);
    }

    /// <summary>Entries written so far.</summary>
    public IReadOnlyList<string> Lines => lines;

    public void Write(string line)
    {
        Say(line);
        lines.Add(line);
    }

    public JsonNode Steel() => Say("""{"ask":"steel","unit":"unit"}""")["steel"]!;

    public JsonNode Next(bool atBench) => Say(atBench ? """{"ask":"next","unit":"unit","atBench":true}""" : """{"ask":"next","unit":"unit"}""")["next"]!;

    /// <summary>Any other question.</summary>
    public JsonNode Ask(string line) => Say(line);

    private JsonNode Say(string line)
    {
        var answer = JsonNode.Parse(talk.Say(line))!;
        return (bool)answer["ok"]! ? answer : throw new InvalidOperationException($"{line}\n{answer}");
    }
}
