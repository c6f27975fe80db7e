using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Fuzzing;

/// <summary>Makes lines for the pipe by chance: entries and questions with a few fields changed to the worst of names, numbers and times, or broken as bytes.</summary>
/// <param name="seed">The seed of chance.</param>
/// <param name="questionEvery">One line of so many is a question, on average: a question costs a thousand times an entry.</param>
public sealed class LineMaker(int seed, int questionEvery)
{
    private const int MostChanges = 4;
    private const int BrokenOf = 3;
    private static readonly byte[][] Entries = [.. GoodLines.Entries.Select(Encoding.UTF8.GetBytes)];
    private static readonly byte[][] Questions = [.. GoodLines.Questions.Select(Encoding.UTF8.GetBytes)];
    private readonly Random random = new(seed);
    private readonly Mutator mutator = new(new Random(seed + 1), Vocabulary.Common, EntryReader.MaxLineLength + 2000);

    /// <summary>The next line: no line end in it, never blank.</summary>
    public byte[] Next()
    {
        while (true)
        {
            var lines = random.Next(questionEvery) == 0 ? Questions : Entries;
            var line = random.Next(BrokenOf) == 0 ? mutator.Next(lines) : Changed(lines[random.Next(lines.Length)]);
            line = [.. line.Where(b => b is not ((byte)'\n' or (byte)'\r'))];
            if (!string.IsNullOrWhiteSpace(Encoding.UTF8.GetString(line).Trim('\ufeff'))) return line;
        }
    }

    /// <summary>Still JSON, but what it says is not what it should be.</summary>
    private byte[] Changed(byte[] line)
    {
        var json = JsonNode.Parse(line)!.AsObject();
        var names = json.Select(p => p.Key).Where(k => k is not ("kind" or "ask")).Concat(["unit", "area", "at", "note", "by"]).ToList();
        var kind = Kinds.Find((string?)json["kind"] ?? "");
        if (kind is not null) names.AddRange(kind.Fields.Select(f => f.Name));
        for (var n = random.Next(MostChanges); n > 0; n--)
        {
            var name = random.Next(20) == 0 ? Vocabulary.Names[random.Next(Vocabulary.Names.Count)] : names[random.Next(names.Count)];
            json[name] = Value(kind, name);
            if (random.Next(4) == 0) json["confirmed"] = new JsonArray(name);
        }
        return JsonSerializer.SerializeToUtf8Bytes(json);
    }

    private JsonNode? Value(KindSpec? kind, string name)
    {
        // Mostly what the field can hold, so that many are taken and the models meet them.
        if (kind is not null && kind.IndexOf(name) is >= 0 and var at && random.Next(3) > 0) return Fitting(kind.Fields[at]);
        return random.Next(6) switch
        {
            0 => Number(),
            1 => Vocabulary.Times[random.Next(Vocabulary.Times.Count)],
            2 => random.Next(2) == 0,
            3 => new JsonArray(Vocabulary.Names[random.Next(Vocabulary.Names.Count)], Number()),
            _ => Vocabulary.Names[random.Next(Vocabulary.Names.Count)],
        };
    }

    private JsonNode? Fitting(FieldSpec field) => field.Form switch
    {
        FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers => InRange(field),
        FieldForm.Numbers => new JsonArray([.. Enumerable.Range(0, field.Count == 0 ? random.Next(1, 6) : field.Count).Select(_ => (JsonNode?)InRange(field))]),
        FieldForm.Flag => random.Next(2) == 0,
        FieldForm.Word => field.Words[random.Next(field.Words.Count)],
        FieldForm.Words => new JsonArray(field.Words[random.Next(field.Words.Count)]),
        FieldForm.Date => Vocabulary.Times[random.Next(Vocabulary.Times.Count)],
        FieldForm.Dates => new JsonArray(Vocabulary.Times[random.Next(Vocabulary.Times.Count)]),
        FieldForm.GoNoGo => new JsonObject { ["goUm"] = random.Next(200), ["noGoUm"] = random.Next(400) },
        _ => Vocabulary.Names[random.Next(Vocabulary.Names.Count)],
    };

    /// <summary>A number the field takes: at an end of its range, near it, or between.</summary>
    private JsonValue InRange(FieldSpec field)
    {
        var (low, high) = (Math.Max(field.Low, -1e9), Math.Min(field.High, 1e9));
        var x = random.Next(4) switch { 0 => low, 1 => high, 2 => low + ((high - low) * Math.Pow(random.NextDouble(), 6)), _ => low + ((high - low) * random.NextDouble()) };
        if (field.Form is FieldForm.Whole or FieldForm.HalfSteps) x = Math.Floor(x);
        return JsonValue.Create(x);
    }

    private JsonValue Number()
    {
        var text = Vocabulary.Numbers[random.Next(Vocabulary.Numbers.Count)];
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && double.IsFinite(x) ? JsonValue.Create(x) : JsonValue.Create(text);
    }
}
