using System.Text.Json;
using System.Text.Json.Nodes;

namespace Closemown.Entries;

/// <summary>The JSON Schema (draft 2020-12) of the entries, made from the field tables.</summary>
public static class EntrySchema
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as indented text, ending with a newline.</summary>
    public static string Text()
    {
        var root = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Closemown entry, version 1",
            ["description"] = "One line of a book: a dated reading or action. Unknown fields are kept.",
            ["type"] = "object",
            ["required"] = Names(["kind"]),
            ["properties"] = Envelope(),
            ["oneOf"] = new JsonArray([.. Kinds.All.Select(KindOf)]),
        };
        return root.ToJsonString(Indented) + "\n";
    }

    private static JsonObject Envelope() => new()
    {
        ["v"] = new JsonObject { ["const"] = 1 },
        ["id"] = new JsonObject { ["type"] = "string", ["format"] = "uuid", ["description"] = "UUID version 7, made by the writer" },
        ["at"] = new JsonObject { ["type"] = "string", ["format"] = "date-time", ["description"] = "when it happened, ISO 8601 with offset" },
        ["kind"] = new JsonObject { ["enum"] = Names(Kinds.All.Select(k => k.Name)) },
        ["unit"] = Line("which cutting unit"),
        ["area"] = Line("which turf area"),
        ["by"] = Line("who"),
        ["note"] = new JsonObject { ["type"] = "string" },
        ["typed"] = new JsonObject { ["type"] = "object", ["additionalProperties"] = new JsonObject { ["type"] = "string" } },
        ["voids"] = new JsonObject { ["type"] = "string", ["format"] = "uuid", ["description"] = "the entry that this one replaces" },
        ["confirmed"] = new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string" } },
    };

    private static JsonObject Line(string description) => new() { ["type"] = "string", ["minLength"] = 1, ["maxLength"] = 80, ["description"] = description };

    private static JsonObject KindOf(KindSpec kind)
    {
        var properties = new JsonObject { ["kind"] = new JsonObject { ["const"] = kind.Name } };
        foreach (var f in kind.Fields) properties[f.Name] = Form(f);
        var schema = new JsonObject { ["title"] = kind.Name, ["description"] = kind.Help, ["properties"] = properties };
        var required = kind.Fields.Where(f => f.Required).Select(f => f.Name).Prepend("kind").ToList();
        if (kind.Name == VoidEntry.Name) required.Add("voids");
        schema["required"] = Names(required);
        if (kind.OneOf.Count > 0)
            schema["allOf"] = new JsonArray([.. kind.OneOf.Select(g => new JsonObject { ["anyOf"] = new JsonArray([.. g.Select(n => new JsonObject { ["required"] = Names([n]) })]) })]);
        if (kind.Name == StripEntry.Name) schema["dependentRequired"] = new JsonObject { ["stackMm"] = Names(["layers"]) };
        if (kind.OtherFieldsAreNumbers)
        {
            var envelope = Envelope().Select(p => p.Key).ToArray();
            foreach (var name in envelope) properties.TryAdd(name, JsonValue.Create(true));
            schema["additionalProperties"] = new JsonObject { ["type"] = "number" };
            schema["not"] = new JsonObject { ["propertyNames"] = new JsonObject { ["enum"] = Names(envelope) } };
        }
        return schema;
    }

    private static JsonObject Form(FieldSpec f)
    {
        JsonObject schema = f.Form switch
        {
            FieldForm.Number => Number(f, "number"),
            FieldForm.Whole => Number(f, "integer"),
            FieldForm.HalfSteps => Number(f, "number", ("multipleOf", 0.5)),
            FieldForm.Flag => new() { ["type"] = "boolean" },
            FieldForm.Word => new() { ["enum"] = Names(f.Words) },
            FieldForm.Text => new() { ["type"] = "string", ["minLength"] = 1 },
            FieldForm.Date => new() { ["type"] = "string", ["format"] = "date" },
            FieldForm.Words => new() { ["type"] = "array", ["minItems"] = 1, ["items"] = new JsonObject { ["enum"] = Names(f.Words) } },
            FieldForm.Texts => new() { ["type"] = new JsonArray("array", "string"), ["items"] = new JsonObject { ["type"] = "string", ["minLength"] = 1 } },
            FieldForm.Dates => new() { ["type"] = "array", ["minItems"] = 1, ["items"] = new JsonObject { ["type"] = "string", ["format"] = "date" } },
            FieldForm.Numbers => List(f),
            FieldForm.NumberOrNumbers => new() { ["anyOf"] = new JsonArray(Number(f, "number"), List(f)) },
            FieldForm.GoNoGo => new()
            {
                ["type"] = "object",
                ["properties"] = new JsonObject { ["goUm"] = Number(f, "number"), ["noGoUm"] = Number(f, "number") },
                ["anyOf"] = new JsonArray(new JsonObject { ["required"] = Names(["goUm"]) }, new JsonObject { ["required"] = Names(["noGoUm"]) }),
            },
            FieldForm.Priors => new()
            {
                ["type"] = "object",
                ["additionalProperties"] = new JsonObject { ["type"] = "array", ["minItems"] = 2, ["maxItems"] = 2, ["items"] = new JsonObject { ["type"] = "number" } },
            },
            _ => throw new InvalidOperationException($"Bug in EntrySchema: form {f.Form}."),
        };
        schema["description"] = f.Help;
        return schema;
    }

    private static JsonObject Number(FieldSpec f, string type, params (string Name, double Value)[] more)
    {
        var schema = new JsonObject { ["type"] = type };
        if (double.IsFinite(f.Low)) schema["minimum"] = f.Low;
        if (double.IsFinite(f.High)) schema["maximum"] = f.High;
        foreach (var (name, value) in more) schema[name] = value;
        return schema;
    }

    private static JsonObject List(FieldSpec f)
    {
        var schema = new JsonObject { ["type"] = "array", ["minItems"] = f.Count > 0 ? f.Count : 1, ["items"] = Number(f, "number") };
        if (f.Count > 0) schema["maxItems"] = f.Count;
        return schema;
    }

    private static JsonArray Names(IEnumerable<string> names) => new([.. names.Select(n => JsonValue.Create(n))]);
}
