using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Tests.Entries;
using Closemown.Tests.Practice;
using Xunit;

namespace Closemown.Tests.Golden;

/// <summary>Every answer of the demo book, whole, and of 200 invented books, by its sum: a digit that changes is seen.</summary>
public sealed class GoldenAnswersTests
{
    private const int Books = 200;
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A folder to write the answers of the invented books to, whole, so that those of two versions can be compared.</summary>
    private static readonly string? Whole = Environment.GetEnvironmentVariable("CLOSEMOWN_GOLDEN_ANSWERS");

    internal static string[] Demo { get; } = File.ReadAllLines(Path.Combine(Path.GetDirectoryName(DocsFolder.Find())!, "demo", "ferncombe.jsonl"));

    /// <summary>Read once: its tests run one after the other.</summary>
    private static readonly Lazy<Piped> DemoPipe = new(() =>
    {
        var pipe = new Piped();
        pipe.Say(Demo);
        return pipe;
    });

    [Theory]
    [InlineData("next", """{"ask":"next"}""")]
    [InlineData("next-at-bench", """{"ask":"next","ahead":true,"atBench":true}""")]
    [InlineData("next-bench", """{"ask":"next","aim":{"benchMm":5.5}}""")]
    [InlineData("next-cut", """{"ask":"next","aim":{"cutMm":4.2,"area":"green"}}""")]
    [InlineData("steel", """{"ask":"steel"}""")]
    [InlineData("steel-history", """{"ask":"steel-history","last":20}""")]
    [InlineData("height", """{"ask":"height","area":"green","benchMm":5,"cutMm":4}""")]
    [InlineData("turf", """{"ask":"turf"}""")]
    [InlineData("plan", """{"ask":"plan","days":28}""")]
    [InlineData("step-down", """{"ask":"step-down","cutMm":4}""")]
    [InlineData("canopy", """{"ask":"canopy","back":14,"ahead":14}""")]
    [InlineData("sink", """{"ask":"sink"}""")]
    [InlineData("today", """{"ask":"today"}""")]
    [InlineData("score", """{"ask":"score"}""")]
    [InlineData("places", """{"ask":"places"}""")]
    public void The_demo_answers_as_on_record(string name, string question)
    {
        GoldenFile.Holds($"demo/{name}.json", GoldenFile.Rounded(DemoPipe.Value.Say(question))!.ToJsonString(Indented));
    }

    [Fact]
    public void Two_hundred_books_answer_as_on_record()
    {
        var sums = new string[Books];
        Parallel.For(0, Books, n => sums[n] = Sums(n));
        GoldenFile.Holds("books.txt", string.Join('\n', sums));
    }

    /// <summary>A line for each question: the book, a sum of the answer, the question; first one for what was answered to its entries, last one for its exported lines.</summary>
    private static string Sums(int number)
    {
        var pipe = new Piped();
        List<(string Asked, string Answer)> said = [("entries", string.Join('\n', pipe.SayAll([.. GoldenBooks.Lines(number)]).Select(Text)))];
        foreach (var question in GoldenBooks.Questions) said.Add((question, Text(pipe.SayAll(question)[0])));
        using var exported = new StringWriter();
        Exporter.Write(pipe.Book, exported);
        said.Add(("export", exported.ToString()));
        if (Whole is not null) File.WriteAllLines(Path.Combine(Whole, $"{number:000}.txt"), said.SelectMany(s => (string[])[s.Asked, s.Answer]));
        return string.Join('\n', said.Select(s => string.Create(CultureInfo.InvariantCulture, $"{number} {Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(s.Answer)))[..12]} {s.Asked}")));
    }

    private static string Text(JsonNode answer) => GoldenFile.Rounded(answer)!.ToJsonString();
}
