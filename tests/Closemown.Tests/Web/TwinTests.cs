using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>What is answered over the web is what the pipe answers, byte for byte.</summary>
public sealed class TwinTests
{
    private static readonly (string Path, string Question)[] Twins =
    [
        ("/today.json", """{"ask":"today"}"""),
        ("/steel.json", """{"ask":"steel"}"""),
        ("/steel.json?unit=mower", """{"ask":"steel","unit":"mower"}"""),
        ("/steel.json?unit=", """{"ask":"steel"}"""),
        ("/height.json?unit=mower&area=green", """{"ask":"height","unit":"mower","area":"green"}"""),
        ("/height.json?cutMm=4.5&wet=true&benchMm=6", """{"ask":"height","benchMm":6,"cutMm":4.5,"wet":true}"""),
        ("/height.json?cutMm=much", """{"ask":"height","cutMm":"much"}"""),
        ("/turf.json?area=green&date=2026-06-02", """{"ask":"turf","area":"green","date":"2026-06-02"}"""),
        ("/turf.json?date=tomorrow", """{"ask":"turf","date":"tomorrow"}"""),
        ("/plan.json?area=green&from=2026-06-02&days=5", """{"ask":"plan","area":"green","from":"2026-06-02","days":5}"""),
        ("/plan.json?days=0", """{"ask":"plan","days":0}"""),
    ];

    [Fact]
    public async Task Each_twin_answers_as_the_pipe_does()
    {
        await using var bench = await ServerBench.Start(o => o with { TimeOfTheBook = true }, Lines.All);
        using var book = BookFile.Open(bench.Book, new BookOptions { ReadOnly = true });
        var said = Pipe(book, Twins.Select(t => t.Question));
        Assert.Contains(said, s => s.Contains("\"ok\":false", StringComparison.Ordinal));
        foreach (var ((path, question), pipe) in Twins.Zip(said))
        {
            var answer = await bench.Machine.GetAsync(path, TestContext.Current.CancellationToken);
            Assert.Equal(pipe, Encoding.UTF8.GetString(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)));
            Assert.Equal(pipe.StartsWith("{\"ok\":true", StringComparison.Ordinal) ? HttpStatusCode.OK : HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
            var asked = await bench.Machine.PostAsync("/ask", new StringContent(question, Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken);
            Assert.Equal(pipe, await asked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public async Task Entries_and_then_a_question_are_answered_as_by_the_pipe()
    {
        await using var bench = await ServerBench.Start(o => o with { TimeOfTheBook = true });
        string[] lines = [.. Lines.All, "{\"kind\":\"mow\"", "{\"kind\":\"mown\"}", Lines.Line(0), Lines.Line(3).Replace("folds", "nicks", StringComparison.Ordinal)];
        using var book = new MemoryBook();
        var said = Pipe(book, lines);
        var answer = await bench.Enter(string.Join("\r\n", lines));
        Assert.Equal("application/jsonl", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(said, (await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries));
        // Readings carry how odd they were; the last two lines are the same again, and another body under a known id.
        Assert.Contains(said, s => s.Contains("\"surprise\"", StringComparison.Ordinal));
        Assert.Equal("conflict", (string)JsonNode.Parse(said[^1])!["error"]!["code"]!);
    }

    [Fact]
    public async Task What_is_no_question_is_refused_and_changes_nothing()
    {
        await using var bench = await ServerBench.Start();
        foreach (var body in new[] { Lines.Mow(1), "{}", "[]", "{", "null", """{"ask":"today","kind":"mow","hours":1}""", "" })
            Assert.Equal((body, HttpStatusCode.BadRequest), (body, (await bench.Machine.PostAsync("/ask", new StringContent(body, Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken)).StatusCode));
        Assert.Equal(0, bench.Entries());
    }

    private static List<string> Pipe(IEntryStore book, IEnumerable<string> lines)
    {
        using var output = new StringWriter();
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', lines)));
        PipeLoop.Run(PipeLoop.Lines(input), output, new Conversation(book, AdviceSettings.Default, Phrasing.Plain, new IdMaker().Next));
        return [.. output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries)];
    }
}
