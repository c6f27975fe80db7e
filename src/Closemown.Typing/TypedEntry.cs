using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>An entry being put together from what was typed.</summary>
/// <param name="kind">Its kind.</param>
/// <param name="style">The person's way of writing.</param>
/// <param name="names">The names that a word may be; null for none.</param>
/// <param name="today">The day it is; null where days are not read as people write them.</param>
public sealed class TypedEntry(KindSpec kind, WritingStyle style, BookNames? names = null, DateOnly? today = null)
{
    private readonly Dictionary<string, TypedValue> values = new(StringComparer.Ordinal);
    private readonly SortedSet<string> confirmed = new(StringComparer.Ordinal);

    /// <summary>Its kind.</summary>
    public KindSpec Kind { get; } = kind;

    /// <summary>The person's way of writing.</summary>
    public WritingStyle Style { get; } = style;

    /// <summary>The names that a word may be.</summary>
    public BookNames Names { get; } = names ?? BookNames.None;

    /// <summary>The day it is; null where days are not read.</summary>
    public DateOnly? Today { get; } = today;

    /// <summary>The area named among the words.</summary>
    public string? Area { get; set; }

    /// <summary>The unit named among the words.</summary>
    public string? Unit { get; set; }

    /// <summary>The day named among the words, on which it was done.</summary>
    public DateOnly? Day { get; set; }

    /// <summary>Whether a field was set.</summary>
    public bool Has(string field) => values.ContainsKey(field);

    /// <summary>How many fields were set.</summary>
    public int Count => values.Count;

    /// <summary>Whether a field was set to that word or number.</summary>
    public bool Holds(string field, string text) => values.TryGetValue(field, out var v) && v.Json.ToJsonString().Trim('"') == FieldText.Read(Kind, Kind.Fields[Kind.IndexOf(field)], text, Style).Json.ToJsonString().Trim('"');

    /// <summary>The words of a list that was set; none where it was not.</summary>
    public IReadOnlyList<string> List(string field) => values.TryGetValue(field, out var v) && v.Json is JsonArray list ? [.. list.Select(n => n!.GetValue<string>())] : [];

    /// <summary>Sets a field from its text.</summary>
    /// <exception cref="TypedFault">The text cannot be the field's value, or it is set already.</exception>
    public void Set(FieldSpec field, string text)
    {
        if (Today is { } today && field.Form is FieldForm.Date or FieldForm.Dates) text = string.Join(',', text.Split(',', ';').Select(d => Iso(field, d.Trim(), today)));
        if (Kind.Name == UnitEntry.Name && field.Name == "clickUm" && ClickTurns.Read(text, Style) is { } click)
        {
            Roughly(field, click, text);
            return;
        }
        if (!values.TryAdd(field.Name, FieldText.Read(Kind, field, text, Style))) throw new TypedFault($"{field.Name} is given twice.", "Give it once.");
    }

    /// <summary>A day in the spelling of the contract. Of the weather it is past unless it is written in full.</summary>
    /// <summary>One step from the steps of a turn and the thread.</summary>
    private void Roughly(FieldSpec field, ClickStart click, string text)
    {
        if (!values.TryAdd(field.Name, new(JsonValue.Create(click.Um), new TypedNumber(click.Um, null, true), text))) throw new TypedFault($"{field.Name} is given twice.", "Give it once.");
        if (click.RoughUm is { } rough) values.TryAdd("clickSdUm", new(JsonValue.Create(rough), new TypedNumber(rough, null, false), null));
    }

    private string Iso(FieldSpec field, string text, DateOnly today)
    {
        string[] words = [text];
        return DayTyped.Read(words, 0, today, ahead: Kind.Name != WeatherEntry.Name, out var day) > 0 ? day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : throw DayTyped.None(text, field.Name);
    }

    /// <summary>Sets a field to another number than the one typed; what was typed is kept beside it.</summary>
    public void Correct(string field, double value, string typed) => values[field] = new(JsonValue.Create(value), new TypedNumber(value, null, true), typed);

    /// <summary>Takes a field out again.</summary>
    public void Drop(string field) => values.Remove(field);

    /// <summary>The person stands by an implausible value.</summary>
    public void Confirm(string field) => confirmed.Add(field);

    /// <summary>Confirms a field by its name, with or without the unit at the end.</summary>
    /// <exception cref="TypedFault">The kind has no such field.</exception>
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
            if (typed.Number is not { } n || confirmed.Contains(name) || PlausibleRanges.FindByHand(Kind.Name, name) is not { } range) continue;
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
    /// <exception cref="TypedFault">The text is no number.</exception>
    public void SetOther(string name, string text)
    {
        var field = new Field<double>(name, FieldForm.Number, "");
        text = text.Replace("mg/kg", "", StringComparison.OrdinalIgnoreCase).Replace("ppm", "", StringComparison.OrdinalIgnoreCase).Trim();
        values[name] = FieldText.Read(Kind, field, text, Style);
    }
}
