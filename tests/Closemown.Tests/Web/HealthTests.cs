using System.Net;
using System.Text.Json.Nodes;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Whether it can do its work, and what it offers.</summary>
public sealed class HealthTests
{
    [Fact]
    public async Task It_is_well_while_the_book_can_be_read_and_says_nothing_private()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        var well = await bench.Machine.GetAsync("/health", TestContext.Current.CancellationToken);
        var text = await well.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, well.StatusCode);
        Assert.Equal(Lines.Count, (int)JsonNode.Parse(text)!["health"]!["entries"]!);
        Assert.DoesNotContain("51.4", text, StringComparison.Ordinal);
        Assert.DoesNotContain(bench.Folder, text, StringComparison.Ordinal);
        using (var raw = new SqliteConnection($"Data Source={bench.Book};Pooling=False"))
        {
            raw.Open();
            using var command = raw.CreateCommand();
            command.CommandText = "alter table entry rename to gone";
            command.ExecuteNonQuery();
        }
        var ill = await bench.Machine.GetAsync("/health", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ill.StatusCode);
        Assert.False((bool)JsonNode.Parse(await ill.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!["ok"]!);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await bench.Machine.GetAsync("/today.json", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Everything_for_programs_is_described()
    {
        await using var bench = await ServerBench.Start();
        var document = JsonNode.Parse(await bench.Machine.GetStringAsync("/openapi.json", TestContext.Current.CancellationToken))!;
        Assert.StartsWith("3.", (string)document["openapi"]!, StringComparison.Ordinal);
        var described = document["paths"]!.AsObject().SelectMany(p => p.Value!.AsObject().Select(m => $"{m.Key} {p.Key}")).Order(StringComparer.Ordinal);
        Assert.Equal(["get /book.backup", "get /book.json", "get /book.jsonl", "get /events", "get /health", "get /height.json", "get /plan.ics", "get /plan.json", "get /steel.json", "get /today.json", "get /turf.json", "post /ask", "post /entries"], described);
        string[] Of(string path) => [.. document["paths"]![path]!["get"]!["parameters"]!.AsArray().Select(p => (string)p!["name"]!)];
        Assert.Equal(["area", "date"], Of("/turf.json"));
        Assert.Equal(["area", "from", "days", "daysOff", "daysOn"], Of("/plan.json"));
        Assert.Equal(["after", "kind", "limit"], Of("/book.json"));
        Assert.Equal(["application/jsonl", "application/x-ndjson", "text/plain"], document["paths"]!["/entries"]!["post"]!["requestBody"]!["content"]!.AsObject().Select(c => c.Key));
        Assert.All(document["paths"]!.AsObject().SelectMany(p => p.Value!.AsObject()), m => Assert.NotEmpty((string)m.Value!["summary"]!));
    }
}
