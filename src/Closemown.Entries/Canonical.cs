using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Closemown.Entries;

/// <summary>The one form in which an entry is written: envelope first, then the fields in the order of the table, then what is unknown by name.</summary>
/// <remarks>
/// Only what JSON demands is escaped. Books of earlier days hold lines of a first form, in which pictures and some spaces were escaped too:
/// such a line is kept as it stands, as its hash is reckoned over it.
/// </remarks>
internal static class Canonical
{
    private static readonly JsonWriterOptions Present = new() { Encoder = PlainJson.Encoder };
    private static readonly JsonWriterOptions First = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The entry in the form that is written today.</summary>
    public static string Line(Entry e) => Encoding.UTF8.GetString(Bytes(e, Present, e.Others).WrittenSpan);

    /// <summary>The line as it came, where it is in the first form; null where it is not.</summary>
    public static string? AsItCame(Entry e, ReadOnlySpan<byte> came)
    {
        if (came.IndexOf("\\u"u8) < 0) return null;              // nothing is escaped that the present form does not escape
        var bytes = Bytes(e, First, e.Others.Select(o => KeyValuePair.Create(o.Key, InFirstForm(o.Value))));
        return came.SequenceEqual(bytes.WrittenSpan) ? Encoding.UTF8.GetString(came) : null;
    }

    private static string InFirstForm(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Text(document.RootElement, First);
    }

    private static ArrayBufferWriter<byte> Bytes(Entry e, JsonWriterOptions form, IEnumerable<KeyValuePair<string, string>> others)
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        using (var w = new Utf8JsonWriter(buffer, form))
        {
            w.WriteStartObject();
            w.WriteNumber("v", 1);
            w.WriteString("id", e.Id.ToString("D"));
            w.WriteString("at", EntryTime.Write(e.At));
            w.WriteString("kind", e.Kind.Name);
            Text(w, "unit", e.Unit);
            Text(w, "area", e.Area);
            Text(w, "by", e.By);
            Text(w, "note", e.Note);
            if (e.Typed.Count > 0)
            {
                w.WriteStartObject("typed");
                foreach (var (name, typed) in e.Typed) w.WriteString(name, typed);
                w.WriteEndObject();
            }
            if (e.Voids is { } v) w.WriteString("voids", v.ToString("D"));
            if (e.Confirmed.Count > 0)
            {
                w.WriteStartArray("confirmed");
                foreach (var c in e.Confirmed) w.WriteStringValue(c);
                w.WriteEndArray();
            }
            for (var i = 0; i < e.Kind.Fields.Count; i++) Value(w, e.Kind.Fields[i].Name, e[i]);
            foreach (var (name, json) in others)
            {
                w.WritePropertyName(name);
                w.WriteRawValue(json);
            }
            w.WriteEndObject();
        }
        return buffer;
    }

    /// <summary>An unknown value without white space.</summary>
    public static string Text(JsonElement value) => Text(value, Present);

    private static string Text(JsonElement value, JsonWriterOptions form)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var w = new Utf8JsonWriter(buffer, form)) value.WriteTo(w);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static void Text(Utf8JsonWriter w, string name, string? text)
    {
        if (text is not null) w.WriteString(name, text);
    }

    private static void Value(Utf8JsonWriter w, string name, object? value)
    {
        switch (value)
        {
            case null:
                break;
            case double d:
                w.WriteNumber(name, d);
                break;
            case bool b:
                w.WriteBoolean(name, b);
                break;
            case string s:
                w.WriteString(name, s);
                break;
            case double[] list:
                w.WriteStartArray(name);
                foreach (var d in list) w.WriteNumberValue(d);
                w.WriteEndArray();
                break;
            case string[] list:
                w.WriteStartArray(name);
                foreach (var s in list) w.WriteStringValue(s);
                w.WriteEndArray();
                break;
            case GoNoGo g:
                w.WriteStartObject(name);
                if (g.GoUm is { } go) w.WriteNumber("goUm", go);
                if (g.NoGoUm is { } noGo) w.WriteNumber("noGoUm", noGo);
                w.WriteEndObject();
                break;
            case IReadOnlyDictionary<string, Prior> priors:
                w.WriteStartObject(name);
                foreach (var (key, p) in priors)
                {
                    w.WriteStartArray(key);
                    w.WriteNumberValue(p.Mean);
                    w.WriteNumberValue(p.Sd);
                    w.WriteEndArray();
                }
                w.WriteEndObject();
                break;
            default:
                throw new InvalidOperationException($"Bug in Canonical: {value.GetType()}.");
        }
    }
}
