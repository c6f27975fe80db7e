using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Closemown.Entries;

/// <summary>The one form in which an entry is written: envelope first, then the fields in the order of the table, then what is unknown by name.</summary>
internal static class Canonical
{
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Line(Entry e)
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        using (var w = new Utf8JsonWriter(buffer, Options))
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
            foreach (var (name, json) in e.Others)
            {
                w.WritePropertyName(name);
                w.WriteRawValue(json);
            }
            w.WriteEndObject();
        }
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>An unknown value without white space.</summary>
    public static string Text(JsonElement value)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var w = new Utf8JsonWriter(buffer, Options)) value.WriteTo(w);
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
