using System.Text.Json;
using Closemown.Entries;
using Json.Schema;
using Xunit;

namespace Closemown.Tests.Entries;

public sealed class EntrySchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(EntrySchema.Text());

    public static TheoryData<string> KindNames => [.. Kinds.All.Select(k => k.Name)];

    private static bool Takes(string line)
    {
        using var document = JsonDocument.Parse(line);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    [Fact]
    public void The_published_schema_is_up_to_date()
    {
        var path = Path.Combine(DocsFolder.Find(), "entries.schema.json");
        if (Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_DOCS") == "1") File.WriteAllText(path, EntrySchema.Text());
        Assert.True(File.Exists(path) && File.ReadAllText(path) == EntrySchema.Text(),
            "docs/entries.schema.json is stale: run this test with CLOSEMOWN_WRITE_DOCS=1 to write it anew, and commit it.");
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Every_example_is_valid_bare_and_with_its_envelope(string name)
    {
        Assert.True(Takes(Kinds.Get(name).Example));
        Assert.True(Takes(Lines.Whole(Kinds.Get(name).Example, 3)));
        Assert.True(Takes(Lines.Entry(Kinds.Get(name).Example, 3).Json));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("""{"kind":"xyzzy"}""")]
    [InlineData("""{"kind":"photo"}""")]
    [InlineData("""{"kind":"lap"}""")]
    [InlineData("""{"kind":"lap","minutes":"2"}""")]
    [InlineData("""{"kind":"lap","minutes":-1}""")]
    [InlineData("""{"kind":"lap","minutes":2,"v":2}""")]
    [InlineData("""{"kind":"lap","minutes":2,"unit":""}""")]
    [InlineData("""{"kind":"void"}""")]
    [InlineData("""{"kind":"contact"}""")]
    [InlineData("""{"kind":"contact","left":"strong"}""")]
    [InlineData("""{"kind":"clicks","left":0.3}""")]
    [InlineData("""{"kind":"unit","blades":7.5}""")]
    [InlineData("""{"kind":"unit","bandUm":[1,2,3]}""")]
    [InlineData("""{"kind":"unit","owns":["hammer"]}""")]
    [InlineData("""{"kind":"unit","priors":{"x":[1]}}""")]
    [InlineData("""{"kind":"feeler","left":{}}""")]
    [InlineData("""{"kind":"canopy","mm":[],"when":"after"}""")]
    [InlineData("""{"kind":"strip","stackMm":1}""")]
    [InlineData("""{"kind":"soil-test"}""")]
    [InlineData("""{"kind":"soil-test","P":"much"}""")]
    [InlineData("""{"kind":"lap","minutes":2,"confirmed":"minutes"}""")]
    public void What_the_reader_refuses_the_schema_refuses(string line)
    {
        Assert.False(Takes(line));
        var context = new EntryContext { NewId = at => EntryIds.Make(at, 0, 1), Now = () => Lines.Start, OnlyUnit = () => "u", OnlyArea = () => "a" };
        Assert.NotEmpty(EntryReader.Read(line, context, out _));
    }

    [Fact]
    public void Unknown_fields_are_valid() => Assert.True(Takes("""{"kind":"lap","minutes":2,"mood":{"good":true}}"""));
}
