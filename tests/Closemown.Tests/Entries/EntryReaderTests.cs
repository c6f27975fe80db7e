using System.Text.Json.Nodes;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

public sealed class EntryReaderTests
{
    public static TheoryData<string> KindNames => [.. Kinds.All.Select(k => k.Name)];

    [Theory]
    [MemberData(nameof(KindNames))]
    public void The_example_of_every_kind_reads_and_comes_back_the_same(string name)
    {
        var kind = Kinds.Get(name);
        Assert.NotEmpty(kind.Example);
        var entry = Lines.Entry(kind.Example, 7);
        Assert.Same(kind, entry.Kind);
        Assert.True(entry.Is(kind));
        Assert.Equal(entry.Json, Lines.Read(entry.Json).Json);
    }

    [Fact]
    public void Canonical_form_is_one_text_whatever_the_order_and_spacing_of_the_line()
    {
        var id = Lines.Id(1);
        var one = Lines.Read($$"""{ "right" : 1.0, "left":2.50, "zzz":[1, {"b":2}], "unit":"a", "kind":"clicks", "at":"2026-05-01T10:00:00.000+02:00", "id":"{{id:D}}".toUpper }""".Replace(".toUpper", "", StringComparison.Ordinal));
        var two = Lines.Read($$"""{"v":1,"id":"{{id.ToString("D").ToUpperInvariant()}}","at":"2026-05-01T10:00+02:00","kind":"clicks","unit":" a ","zzz":[1,{"b":2}],"left":25e-1,"right":1,"note":null,"aaa":null}""");
        Assert.Equal($$"""{"v":1,"id":"{{id:D}}","at":"2026-05-01T10:00:00+02:00","kind":"clicks","unit":"a","left":2.5,"right":1,"zzz":[1,{"b":2}]}""", one.Json);
        Assert.Equal(one.Json, two.Json);
    }

    [Fact]
    public void Minus_zero_is_zero() =>
        Assert.Contains("\"left\":0,", Lines.Entry("""{"kind":"clicks","left":-0.0,"right":1}""", 1).Json, StringComparison.Ordinal);

    [Fact]
    public void Unknown_fields_are_kept_by_name()
    {
        var entry = Lines.Entry("""{"kind":"lap","minutes":2,"weatherMood":"mild","depth":{"a":[1,2.50,"ü",null]}}""", 1);
        Assert.Equal(["depth", "weatherMood"], entry.Others.Select(o => o.Key));
        Assert.EndsWith("""
            "minutes":2,"depth":{"a":[1,2.50,"ü",null]},"weatherMood":"mild"}
            """, entry.Json, StringComparison.Ordinal);
        Assert.Equal(entry.Json, Lines.Read(entry.Json).Json);
    }

    [Fact]
    public void Null_is_absent()
    {
        var entry = Lines.Entry("""{"kind":"lap","minutes":2,"grit":null,"by":null,"voids":null,"typed":null,"confirmed":null,"mood":null}""", 1);
        Assert.Equal(Lines.Entry("""{"kind":"lap","minutes":2}""", 1).Json, entry.Json);
        Assert.Null(entry[LapEntry.Grit]);
        var fault = Assert.Single(EntryReader.Read(Lines.Whole("""{"kind":"lap","minutes":null}""", 1), EntryContext.Whole, out _));
        Assert.Equal((FaultCodes.Missing, "minutes"), (fault.Code, fault.Field));
    }

    [Fact]
    public void Values_are_read_by_their_form()
    {
        var unit = Lines.Entry("""{"kind":"unit","blades":10,"grits":[80,120],"owns":["strip","torch"],"priors":{"openingUmPerHour":[3,2]},"bandUm":[0,20],"relief":"yes"}""", 1);
        Assert.Equal(10, unit[UnitEntry.Blades]);
        Assert.Equal([80, 120], unit[UnitEntry.Grits]!);
        Assert.Equal(["strip", "torch"], unit[UnitEntry.Owns]!);
        Assert.Equal(new Prior(3, 2), unit[UnitEntry.Priors]!["openingUmPerHour"]);
        Assert.Equal("yes", unit[UnitEntry.Relief]);
        Assert.Null(unit[UnitEntry.Setting]);
        var feeler = Lines.Entry("""{"kind":"feeler","left":{"goUm":30,"noGoUm":50},"right":{"noGoUm":20}}""", 2);
        Assert.Equal(new GoNoGo(30, 50), feeler[FeelerEntry.Left]);
        Assert.Equal(new GoNoGo(null, 20), feeler[FeelerEntry.Right]);
        Assert.Equal([5.1], Lines.Entry("""{"kind":"canopy","mm":5.1,"when":"after"}""", 3)[CanopyEntry.Mm]!);
        Assert.True(Lines.Entry("""{"kind":"look","wet":true}""", 4)[LookEntry.Wet]);
        Assert.Equal(["a bearing"], Lines.Entry("""{"kind":"rebuild","what":"a bearing"}""", 5)[RebuildEntry.What]!);
        var typed = Lines.Entry("""{"kind":"canopy","mm":3.97,"when":"after","typed":{"mm":"5/32 in"},"confirmed":["mm","mm"],"by":"A","note":"two\nlines"}""", 6);
        Assert.Equal("5/32 in", typed.Typed["mm"]);
        Assert.Equal(["mm"], typed.Confirmed);
        Assert.Equal(("A", "two\nlines"), (typed.By, typed.Note));
    }

    [Fact]
    public void A_line_that_leaves_things_out_is_filled_in_from_its_context()
    {
        var context = new EntryContext { NewId = at => EntryIds.Make(at, 1, 2), Now = () => Lines.Start, OnlyUnit = () => "only", OnlyArea = () => "lawn" };
        Assert.Empty(EntryReader.Read("""{"kind":"locked"}""", context, out var locked));
        Assert.Equal((EntryIds.Make(Lines.Start, 1, 2), Lines.Start, "only", null), (locked!.Id, locked.At, locked.Unit, locked.Area));
        Assert.Empty(EntryReader.Read("""{"kind":"water","mm":5}""", context, out var water));
        Assert.Equal((null, "lawn"), (water!.Unit, water.Area));
        Assert.Equal(["at", "unit", "id"], EntryReader.Read("""{"kind":"locked"}""", EntryContext.Whole, out _).Select(f => f.Field));
    }

    [Theory]
    [InlineData("{", "bad-json", "", "is not JSON", "Write one object a line")]
    [InlineData("[1]", "bad-json", "", "not a JSON object", "Write one object a line")]
    [InlineData("""{"kind":"lap","minutes":1,"minutes":2}""", "bad-json", "minutes", "is given twice", "Give each name once")]
    [InlineData("""{"kind":"lap","minutes":1,"note":"\ud800"}""", "bad-json", "", "broken character escape", "Write the character itself")]
    [InlineData("{}", "missing", "kind", "does not say what kind", "one of unit, strip, fit")]
    [InlineData("""{"kind":7}""", "missing", "kind", "does not say what kind", "Add \"kind\"")]
    [InlineData("""{"kind":"paper-cutt"}""", "unknown-kind", "kind", "There is no kind \"paper-cutt\"", "Did you mean \"paper-cut\"?")]
    [InlineData("""{"kind":"xyzzy"}""", "unknown-kind", "kind", "There is no kind \"xyzzy\"", "Kinds are unit, strip")]
    [InlineData("""{"kind":"photo"}""", "unknown-kind", "kind", "kept for later", "note of another entry")]
    [InlineData("""{"kind":"lap","minutes":1,"v":2}""", "bad-value", "v", "The version is 2.", "\"v\": 1")]
    [InlineData("""{"kind":"lap","minutes":1,"at":"yesterday"}""", "bad-value", "at", "\"yesterday\" is not a time", "2026-05-03T10:30:00+01:00")]
    [InlineData("""{"kind":"lap","minutes":1,"at":"2026-05-03T10:30:00"}""", "bad-value", "at", "not a time with its offset", "09:30:00Z")]
    [InlineData("""{"kind":"lap","minutes":1,"id":"5"}""", "bad-value", "id", "\"5\" is not a UUID of version 7", "01900000-0000-7000-8000-000000000001")]
    [InlineData("""{"kind":"lap","minutes":1,"id":"8d2c4b1e-94c7-4f0e-9b0a-5a6d3a0c6b11"}""", "bad-value", "id", "not a UUID of version 7", "Write it like")]
    [InlineData("""{"kind":"lap","minutes":1,"unit":" "}""", "bad-value", "unit", "not a text of 1 to 80", "short text in quotes")]
    [InlineData("""{"kind":"lap","minutes":1,"typed":5}""", "bad-value", "typed", "not an object", "5/32 in")]
    [InlineData("""{"kind":"lap","minutes":1,"confirmed":"minutes"}""", "bad-value", "confirmed", "not a list of field names", "[\"clickUm\"]")]
    [InlineData("""{"kind":"void"}""", "missing", "voids", "does not say what it takes out", "Add \"voids\"")]
    [InlineData("""{"kind":"lap"}""", "missing", "minutes", "A lap entry needs minutes", "Add \"minutes\".")]
    [InlineData("""{"kind":"canopy","mm":5}""", "missing", "when", "A canopy entry needs when", "Say one of before, after.")]
    [InlineData("""{"kind":"contact"}""", "missing", "left", "needs at least one of left, centre, right", "Say one of none, light, heavy, once-a-turn.")]
    [InlineData("""{"kind":"strip","stackMm":1}""", "missing", "layers", "needs the number of layers", "how many were measured together")]
    [InlineData("""{"kind":"soil-test"}""", "missing", "", "needs at least one element", "in mg/kg")]
    [InlineData("""{"kind":"soil-test","P":"much"}""", "bad-value", "P", "not a number", "in mg/kg")]
    [InlineData("""{"kind":"lap","minutes":"2"}""", "bad-value", "minutes", "\"2\" is not a number", "write a number")]
    [InlineData("""{"kind":"lap","minutes":1e999}""", "bad-value", "minutes", "is not a number", "write a number")]
    [InlineData("""{"kind":"lap","minutes":-1}""", "bad-value", "minutes", "-1 is outside 0.01 to 600", "check the number and its unit")]
    [InlineData("""{"kind":"unit","blades":7.5}""", "bad-value", "blades", "7.5 is not a whole number", "write a whole number")]
    [InlineData("""{"kind":"clicks","left":0.3}""", "bad-value", "left", "0.3 is not a whole or half number of steps", "half number")]
    [InlineData("""{"kind":"contact","left":"lihgt"}""", "bad-value", "left", "no \"lihgt\" for left", "Did you mean \"light\"?")]
    [InlineData("""{"kind":"contact","left":"strong"}""", "bad-value", "left", "is not one of none, light, heavy", "one of none")]
    [InlineData("""{"kind":"look","wet":"yes"}""", "bad-value", "wet", "\"yes\" is not true or false", "write true or false")]
    [InlineData("""{"kind":"weather","date":"1 May"}""", "bad-value", "date", "is not a date like", "2026-05-03")]
    [InlineData("""{"kind":"unit","bandUm":[20,0]}""", "bad-value", "bandUm", "not a list from small to large", "small to large")]
    [InlineData("""{"kind":"unit","bandUm":[20]}""", "bad-value", "bandUm", "not a list of 2 numbers", "list of 2 numbers")]
    [InlineData("""{"kind":"unit","owns":[]}""", "bad-value", "owns", "not a list of 1 to", "texts")]
    [InlineData("""{"kind":"unit","priors":{"clearanceUm":[1,0]}}""", "bad-value", "priors.clearanceUm", "not [mean, sd]", "sd above 0")]
    [InlineData("""{"kind":"feeler","left":{}}""", "bad-value", "left", "not an object with goUm, noGoUm", "or both")]
    [InlineData("""{"kind":"feeler","left":{"goUm":50,"noGoUm":30}}""", "bad-value", "left", "goUm is below its noGoUm", "below")]
    [InlineData("""{"kind":"canopy","lowMm":6,"highMm":5,"when":"after"}""", "bad-value", "lowMm", "lowMm is above highMm", "smaller first")]
    [InlineData("""{"kind":"treat","what":""}""", "bad-value", "what", "not a text of 1 to", "write a text")]
    public void A_fault_names_its_field_its_reason_and_its_remedy(string body, string code, string field, string message, string remedy)
    {
        string line;
        try
        {
            line = body.Contains("\\ud800", StringComparison.Ordinal) ? body : Lines.Whole(body, 1);
        }
        catch (Exception e) when (e is System.Text.Json.JsonException or InvalidOperationException or ArgumentException)
        {
            line = body;                  // not JSON, or not an object: as it is
        }
        var context = new EntryContext { NewId = at => EntryIds.Make(at, 0, 1), Now = () => Lines.Start, OnlyUnit = () => "u" };
        var fault = Assert.Single(EntryReader.Read(line, context, out var entry));
        Assert.Null(entry);
        Assert.Equal((code, field), (fault.Code, fault.Field));
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_of_a_line_are_told_at_once()
    {
        var faults = EntryReader.Read("""{"kind":"unit","v":3,"id":"x","at":"x","blades":1,"relief":"maybe"}""", EntryContext.Whole, out _);
        Assert.Equal(["v", "at", "unit", "id", "blades", "relief"], faults.Select(f => f.Field));
    }

    [Fact]
    public void A_line_longer_than_the_limit_is_refused()
    {
        var line = Lines.Whole("""{"kind":"locked"}""", 1);
        line = line[..^1] + ",\"x\":\"" + new string('a', EntryReader.MaxLineLength) + "\"}";
        var fault = Assert.Single(EntryReader.Read(line, EntryContext.Whole, out _));
        Assert.Equal(FaultCodes.BadJson, fault.Code);
        Assert.Contains("split it", fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void What_nests_too_deep_is_refused()
    {
        var deep = JsonNode.Parse("1")!;
        for (var i = 0; i < 20; i++) deep = new JsonArray(deep);
        var line = new JsonObject { ["kind"] = "locked", ["x"] = deep }.ToJsonString();
        Assert.Equal(FaultCodes.BadJson, Assert.Single(EntryReader.Read(line, EntryContext.Whole, out _)).Code);
    }

    [Theory]
    [InlineData("2026-05-03T10:30+01:00", "2026-05-03T10:30:00+01:00")]
    [InlineData("2026-05-03T10:30:00.2500000Z", "2026-05-03T10:30:00.25Z")]
    [InlineData("2026-05-03T10:30:00+00:00", "2026-05-03T10:30:00Z")]
    [InlineData("2026-05-03T10:30:00-09:30", "2026-05-03T10:30:00-09:30")]
    public void Times_keep_their_offset(string text, string written)
    {
        Assert.True(EntryTime.TryRead(text, out var at));
        Assert.Equal(written, EntryTime.Write(at));
    }

    [Theory]
    [InlineData("1899-12-31T23:59:59Z")]
    [InlineData("2201-01-01T00:00:00Z")]
    [InlineData("2026-02-30T00:00:00Z")]
    [InlineData("03/05/2026")]
    public void Other_times_are_none(string text) => Assert.False(EntryTime.TryRead(text, out _));
}
