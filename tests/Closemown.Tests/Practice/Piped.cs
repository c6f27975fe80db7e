using System.Text;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Tests.Practice;

/// <summary>A pipe on a book in memory that keeps its place between lines.</summary>
internal sealed class Piped
{
    private readonly Conversation conversation;

    public MemoryBook Book { get; } = new();

    public Piped() => conversation = new Conversation(Book, AdviceSettings.Default, Phrasing.Plain, new SequentialIds().Next);

    /// <summary>Sends lines through the pipe and gives the last answer; every line must be answered with ok.</summary>
    public JsonNode Say(params string[] lines)
    {
        var answers = SayAll(lines);
        foreach (var (answer, line) in answers.Zip(lines)) Xunit.Assert.True((bool)answer["ok"]!, $"{line}\n{answer}");
        return answers[^1];
    }

    /// <summary>Sends lines through the pipe and gives every answer, refusals too.</summary>
    public List<JsonNode> SayAll(params string[] lines)
    {
        var output = new StringWriter();
        PipeLoop.Run(PipeLoop.Lines(new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', lines)))), output, conversation);
        var answers = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!).ToList();
        Xunit.Assert.Equal(lines.Length, answers.Count);
        return answers;
    }

    public JsonNode Next(string more = "") => Say($$"""{"ask":"next"{{more}}}""")["next"]!;

    public JsonNode Steel() => Say("""{"ask":"steel"}""")["steel"]!;

    public static double Mean(JsonNode steel, string name, string? at = null) => (double)(at is null ? steel[name]! : steel[name]![at]!)["mean"]!;

    public static double Sd(JsonNode steel, string name, string? at = null) => (double)(at is null ? steel[name]! : steel[name]![at]!)["sd"]!;
}
