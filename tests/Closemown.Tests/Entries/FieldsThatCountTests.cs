using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Tests.Practice;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>A field that a model reads changes an answer; one that is only kept changes none.</summary>
public sealed class FieldsThatCountTests
{
    private static readonly string[] Before =
    [
        """{"kind":"unit","blades":9,"clickUm":19,"screwMmPerTurn":1.25,"grits":[80,120],"rollerFrontMm":60,"rollerRearMm":60,"rollerSpanMm":200,"edgeAtMm":[60,60],"lipMm":3}""",
        """{"kind":"strip","um":80}""", """{"kind":"area","grass":"cool","lat":51,"m2":200}""", """{"kind":"wish","cutMm":5,"weekdays":["tue","thu","sat"]}""",
        """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""",
        """{"kind":"contact","left":"light","right":"none"}""", """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"folds"}""", """{"kind":"clicks","right":2}""",
        """{"kind":"lap","minutes":2,"grit":120}""", """{"kind":"gauge","leftMm":5.4,"rightMm":5.6}""", """{"kind":"screw","leftTurns":-0.25,"rightTurns":-0.25}""", """{"kind":"locked"}""",
        """{"kind":"mow","hours":0.5,"cutMm":5.2}""", """{"kind":"canopy","mm":[5.2,5.3],"when":"after","how":"ruler"}""", """{"kind":"water","mm":5}""", """{"kind":"weather","date":"2026-05-18","tMinC":6,"tMaxC":17,"rainMm":2}""",
    ];

    private static readonly string[] After =
    [
        """{"kind":"lap","minutes":1,"grit":120}""", """{"kind":"paper-cut","left":"cuts","centre":"nicks","right":"folds"}""", """{"kind":"gauge","leftMm":5.2,"rightMm":5.3}""",
        """{"kind":"mow","hours":0.5}""", """{"kind":"canopy","mm":[6.1,6.3],"when":"before","how":"prism"}""",
    ];

    private static readonly string[] OfUnits =
    [
        """{"ask":"steel"}""", """{"ask":"height","area":"green","benchMm":5,"cutMm":4.6}""", """{"ask":"next"}""", """{"ask":"next","aim":{"benchMm":5.5}}""", """{"ask":"next","aim":{"cutMm":4.5,"area":"green"}}""",
    ];

    private static readonly string[] OfAreas = ["""{"ask":"turf"}""", """{"ask":"plan","days":14}"""];

    /// <summary>Values as people give them, where those between the limits of a field would be absurd.</summary>
    private static readonly Dictionary<string, JsonNode?[]> Typical = new()
    {
        ["wish.cutMm"] = [4.5, 5.5],
        ["water.mm"] = [2, 9],
        ["canopy.mm"] = [6, 7],
        ["canopy.lowMm"] = [5.5, 6.5],
        ["canopy.highMm"] = [6.5, 7.5],
        ["treat.what"] = ["growth regulator", "fungicide"],
        ["service.what"] = ["knife-screws", "oil"],
        ["area.lon"] = [-170, 170],
        ["mow.cutMm"] = [5, 5.5],
    };

    /// <summary>Fields that a model reads, but not in this book: what they change is shown by tests of their own, or not yet. One that changes an answer here may not stand among them.</summary>
    private static readonly HashSet<string> Elsewhere =
    [
        "strip.stackMm", "strip.layers", "lap.grit", "weather.rhMinPct", "weather.windHeightM", "weather.source", "measure.left",
        "measure.centre", "measure.right", "gauge.study", "gauge.setting", "area.m2", "area.lon", "area.altitudeM", "canopy.how",
        "swath.blade", "torch.blade", "torch.state", "unit.blades", "unit.widthMm", "unit.adjusterStep", "unit.inTurns",
        "unit.grits", "unit.rollerFrontMm", "unit.clipMm", "contact.blade", "mow.passes",
    ];

    public static TheoryData<string> KindNames { get; } = [.. Kinds.All.Where(k => k.Fields.Count > 0 && k.Name is not "decline").Select(k => k.Name)];

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Each_field_that_a_model_reads_changes_an_answer_and_no_other_does(string name)
    {
        var kind = Kinds.Get(name);
        List<string> wrong = [];
        foreach (var field in kind.Fields)
        {
            var plain = JsonNode.Parse(kind.Example)!.AsObject();
            if (kind.HasStations && Stations.IndexOf(field.Name) >= 0) plain = new JsonObject { ["kind"] = name };
            plain.Remove(field.Name);
            // Of a group of which one is enough the others would hide it.
            foreach (var other in kind.OneOf.Where(g => g.Contains(field.Name)).SelectMany(g => g)) plain.Remove(other);
            List<JsonNode?> values = [.. Typical.GetValueOrDefault($"{name}.{field.Name}") ?? Values(field)];
            if (!field.Required && kind.OneOf.All(g => !g.Contains(field.Name))) values.Insert(0, null);
            var said = values.Select(v => Answers(With(plain, field, v))).OfType<string>();
            var changes = said.Distinct().Skip(1).Any();
            if (!changes && Elsewhere.Contains($"{name}.{field.Name}")) continue;
            if (changes && Elsewhere.Contains($"{name}.{field.Name}")) wrong.Add($"{name}.{field.Name} changes an answer here: take it off the list");
            if (changes == field.Kept) wrong.Add($"{name}.{field.Name} {(changes ? "is said to be only kept, and changes an answer" : "changes no answer")}");
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static JsonObject With(JsonObject plain, FieldSpec field, JsonNode? value)
    {
        var line = plain.DeepClone().AsObject();
        if (value is not null) line[field.Name] = value.DeepClone();
        line["confirmed"] = new JsonArray([.. line.Select(p => p.Key).Where(k => k is not "kind").Select(k => (JsonNode)k)]);
        return line;
    }

    /// <summary>What is answered with that entry in the middle of a book; null where it is not taken.</summary>
    private static string? Answers(JsonObject line)
    {
        var at = new DateTimeOffset(2026, 5, 18, 8, 0, 0, TimeSpan.Zero);
        string Said(JsonObject entry)
        {
            var kind = Kinds.Get((string)entry["kind"]!);
            entry["at"] = EntryTime.Write(at = at.AddMinutes(25));
            if (kind.Belongs is Belongs.Unit or Belongs.UnitAndArea) entry["unit"] = "mower";
            if (kind.Belongs is Belongs.Area or Belongs.UnitAndArea) entry["area"] = "green";
            return entry.ToJsonString();
        }
        var pipe = new Piped();
        string[] lines = [.. Before.Select(b => Said(JsonNode.Parse(b)!.AsObject())), Said(line), .. After.Select(a => Said(JsonNode.Parse(a)!.AsObject()))];
        if (pipe.SayAll(lines).Any(a => !(bool)a["ok"]!)) return null;
        string[] questions = Kinds.Get((string)line["kind"]!).Belongs switch { Belongs.Unit => OfUnits, Belongs.Area => OfAreas, _ => [.. OfUnits, .. OfAreas] };
        return string.Join('\n', questions.Select(q => Nameless(pipe.SayAll(q)[0])!.ToJsonString()));
    }

    /// <summary>Without the ids of advice and entries, which any change changes.</summary>
    private static JsonNode? Nameless(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Where(p => p.Key is not ("advice" or "id")).Select(p => KeyValuePair.Create(p.Key, Nameless(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Nameless)]),
        _ => node?.DeepClone(),
    };

    private static IEnumerable<JsonNode?> Values(FieldSpec field)
    {
        var (low, high) = (Math.Max(field.Low, -1e6), Math.Min(field.High, 1e6));
        double Between(double share) => Math.Round(low > 0 ? low * Math.Pow(high / low, share) : low + ((high - low) * share), field.Form is FieldForm.Whole or FieldForm.HalfSteps ? 0 : 3);
        return field.Form switch
        {
            FieldForm.Word or FieldForm.Words => field.Words.Select(w => field.Form == FieldForm.Word ? (JsonNode?)w : new JsonArray(w)),
            FieldForm.Flag => [true, false],
            FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers => [Between(0.45), Between(0.55), Between(0.65)],
            FieldForm.Numbers => [Numbers(field, Between(0.45), Between(0.55)), Numbers(field, Between(0.4), Between(0.6))],
            FieldForm.Date => ["2026-05-19", "2026-06-20"],
            FieldForm.Dates => [new JsonArray("2026-05-25"), new JsonArray("2026-06-20")],
            FieldForm.GoNoGo => [new JsonObject { ["goUm"] = 20, ["noGoUm"] = 30 }, new JsonObject { ["goUm"] = 60, ["noGoUm"] = 70 }],
            FieldForm.Priors => [JsonNode.Parse("""{"openingUmPerHour":[2,1]}"""), JsonNode.Parse("""{"openingUmPerHour":[6,1]}""")],
            FieldForm.Texts => [new JsonArray("one"), new JsonArray("two")],
            _ => ["1", "2"],
        };
    }

    private static JsonArray Numbers(FieldSpec field, double low, double high)
    {
        var count = field.Count == 0 ? 4 : field.Count;
        return [.. Enumerable.Range(0, count).Select(i => (JsonNode)Math.Round(low + ((high - low) * i / Math.Max(1, count - 1)), 2))];
    }
}
