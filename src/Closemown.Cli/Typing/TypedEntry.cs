using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>An entry being put together from what was typed.</summary>
internal sealed class TypedEntry(KindSpec kind, WritingStyle style)
{
    private readonly Dictionary<string, TypedValue> values = new(StringComparer.Ordinal);
    private readonly SortedSet<string> confirmed = new(StringComparer.Ordinal);

    public KindSpec Kind { get; } = kind;

    public WritingStyle Style { get; } = style;

    public bool Has(string field) => values.ContainsKey(field);

    public int Count => values.Count;

    /// <summary>Sets a field from its text.</summary>
    public void Set(FieldSpec field, string text)
    {
        if (!values.TryAdd(field.Name, FieldText.Read(Kind, field, text, Style))) throw CliFault.Refused($"{field.Name} is given twice.", "Give it once.");
    }

    /// <summary>Sets a field to another number than the one typed; what was typed is kept beside it.</summary>
    public void Correct(string field, double value, string typed) => values[field] = new(JsonValue.Create(value), new TypedNumber(value, null, true), typed);

    public void Drop(string field) => values.Remove(field);

    /// <summary>The person stands by an implausible value.</summary>
    public void Confirm(string field) => confirmed.Add(field);

    /// <summary>Confirms a field by its name, with or without the unit at the end.</summary>
    public void ConfirmNamed(string name)
    {
        // A limit of a feeler reading is named with its station: left.goUm.
        var station = name.Split('.')[0];
        var field = FieldNames.Find(Kind, station) ?? throw FieldNames.Unknown(Kind, name);
        Confirm(station.Length < name.Length ? field.Name + name[station.Length..] : field.Name);
    }

    /// <summary>The numbers that look wrong, each with what may have been meant.</summary>
    public IEnumerable<(FieldSpec Field, TypedValue Typed, SlipQuestion Question)> Doubtful()
    {
        foreach (var (name, typed) in values)
        {
            if (typed.Number is not { } n || confirmed.Contains(name) || PlausibleRanges.Find(Kind.Name, name) is not { } range) continue;
            if (UnitSlip.Check(n.Value, range, Style, n.LengthIn) is { } question) yield return (Kind.Fields[Kind.IndexOf(name)], typed, question);
        }
    }

    /// <summary>The entry as JSON, without what the book adds.</summary>
    public JsonObject Json()
    {
        var json = new JsonObject { ["kind"] = Kind.Name };
        foreach (var field in Kind.Fields)
        {
            if (values.TryGetValue(field.Name, out var v)) json[field.Name] = v.Json.DeepClone();
        }
        foreach (var (name, v) in values)
        {
            if (Kind.IndexOf(name) < 0) json[name] = v.Json.DeepClone();
        }
        var typed = values.Where(v => v.Value.Keep is not null).OrderBy(v => v.Key, StringComparer.Ordinal).ToList();
        if (typed.Count > 0) json["typed"] = new JsonObject(typed.Select(t => KeyValuePair.Create<string, JsonNode?>(t.Key, t.Value.Keep)));
        if (confirmed.Count > 0) json["confirmed"] = new JsonArray([.. confirmed.Select(c => (JsonNode)c)]);
        return json;
    }

    /// <summary>Sets a field that is not in the table, where the kind takes such.</summary>
    public void SetOther(string name, string text)
    {
        var field = new FieldSpec(name, FieldForm.Number, "");
        values[name] = FieldText.Read(Kind, field, text, Style);
    }
}
