using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Fuzzing;

namespace Closemown.Tests.Hard;

/// <summary>Entries and questions with the worst names, numbers and times in them.</summary>
internal static class HardLines
{
    /// <summary>Names that once ended a process, or may: several signs stand in one, as each is met at a place of its own.</summary>
    public static readonly string[] Names = ["g{b", "{reel} }", "}\"'\\<b>&🌱%41 --book", "\u200b\u202e\u2066", "\u001b[2J\u0000"];

    private static readonly double[] Numbers = [0, -1, 1e-9, 1e9, 1e308, -1e308];

    /// <summary>An entry of every kind about that unit and area, said and noted by that name too, and with it in every text of its own.</summary>
    public static IEnumerable<string> Named(string name)
    {
        foreach (var kind in Kinds.All)
        {
            var line = JsonNode.Parse(kind.Example)!.AsObject();
            if (kind.Belongs is Belongs.Unit or Belongs.UnitAndArea) line["unit"] = name;
            if (kind.Belongs is Belongs.Area or Belongs.UnitAndArea) line["area"] = name;
            (line["by"], line["note"]) = (name, name);
            yield return line.ToJsonString();
            foreach (var text in kind.Fields.Where(f => f.Form is FieldForm.Text or FieldForm.Texts))
            {
                var more = line.DeepClone().AsObject();
                more[text.Name] = text.Form == FieldForm.Texts ? new JsonArray(name) : name;
                more[name] = name;
                more["typed"] = new JsonObject { [text.Name] = name };
                yield return more.ToJsonString();
            }
        }
    }

    /// <summary>Every number of every kind at the ends of its range and far beyond, confirmed.</summary>
    public static IEnumerable<string> Numbered()
    {
        foreach (var kind in Kinds.All)
        {
            foreach (var field in kind.Fields.Where(f => f.Form is FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers))
            {
                foreach (var number in Numbers.Append(field.Low).Append(field.High).Where(double.IsFinite))
                {
                    var line = JsonNode.Parse(kind.Example)!.AsObject();
                    line[field.Name] = number;
                    line["confirmed"] = new JsonArray(field.Name);
                    yield return line.ToJsonString();
                }
            }
        }
    }

    /// <summary>An entry of every kind at that time.</summary>
    public static IEnumerable<string> Timed(string time) => Kinds.All.Select(kind =>
    {
        var line = JsonNode.Parse(kind.Example)!.AsObject();
        line["at"] = time;
        foreach (var field in kind.Fields.Where(f => f.Form is FieldForm.Date or FieldForm.Dates)) line[field.Name] = field.Form == FieldForm.Dates ? new JsonArray(time) : time;
        return line.ToJsonString();
    });

    /// <summary>Every question about that unit and area, and with the name in its other texts.</summary>
    public static IEnumerable<string> Asked(string name) => GoodLines.Questions.Select(q =>
    {
        var line = JsonNode.Parse(q)!.AsObject();
        line["unit"] = name;
        line["area"] = name;
        if (line["aim"] is JsonObject aim && aim.ContainsKey("cutMm")) aim["area"] = name;
        if (line.ContainsKey("id")) line["id"] = name;
        return line.ToJsonString();
    });

    /// <summary>Every question that has numbers or days, with each of them changed.</summary>
    public static IEnumerable<string> AskedFar(IEnumerable<string> days)
    {
        foreach (var question in GoodLines.Questions)
        {
            var good = JsonNode.Parse(question)!.AsObject();
            foreach (var field in good.Where(p => p.Value is JsonValue v && v.GetValueKind() == System.Text.Json.JsonValueKind.Number).Select(p => p.Key).ToList())
            {
                foreach (var number in Numbers) yield return With(good, field, number);
            }
            foreach (var field in good.Where(p => p.Key is "date" or "from").Select(p => p.Key).ToList())
            {
                foreach (var day in days) yield return With(good, field, day);
            }
        }
    }

    private static string With(JsonObject good, string field, JsonNode value)
    {
        var line = good.DeepClone().AsObject();
        line[field] = value;
        return line.ToJsonString();
    }
}
