using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>Reads the text of a field into what an entry holds.</summary>
public static class FieldText
{
    private static readonly Dictionary<string, string> OtherSpellings = new(StringComparer.OrdinalIgnoreCase)
    {
        ["center"] = "centre",
        ["middle"] = "centre",
        ["counterclockwise"] = "anticlockwise",
        ["counter-clockwise"] = "anticlockwise",
        ["anti-clockwise"] = "anticlockwise",
        ["once"] = "once-a-turn",
        ["once a turn"] = "once-a-turn",
        ["fold"] = "folds",
        ["cut"] = "cuts",
        ["nick"] = "nicks",
    };

    /// <summary>Reads a value.</summary>
    /// <exception cref="TypedFault">The text is none.</exception>
    public static TypedValue Read(KindSpec kind, FieldSpec field, string text, WritingStyle style)
    {
        switch (field.Form)
        {
            case FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps:
                var n = Number(field, text, style);
                return new(JsonValue.Create(n.Value), n, n.Converted ? text : null);
            case FieldForm.Flag:
                return new(JsonValue.Create(YesNo(field, text)), null, null);
            case FieldForm.Word:
                return new(JsonValue.Create(Word(field, text) ?? throw NoWord(field, text)), null, null);
            case FieldForm.Text or FieldForm.Date:
                return new(JsonValue.Create(text), null, null);
            case FieldForm.Words when field.Name == "weekdays" && WeekdayWords.Days(text) is { } days:
                return new(new JsonArray([.. days.Select(d => (JsonNode)JsonValue.Create(d))]), null, null);
            case FieldForm.Words:
                return new(new JsonArray([.. Parts(text, style).Select(p => (JsonNode)JsonValue.Create(Word(field, p) ?? throw NoWord(field, p)))]), null, null);
            case FieldForm.Texts or FieldForm.Dates:
                return new(new JsonArray([.. text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).SelectMany(p => field.Form == FieldForm.Dates ? p.Split(',', StringSplitOptions.TrimEntries) : [p]).Select(p => (JsonNode)p)]), null, null);
            case FieldForm.NumberOrNumbers when !Parts(text, style).Skip(1).Any():
                var one = Number(field, text, style);
                return new(JsonValue.Create(one.Value), one, one.Converted ? text : null);
            case FieldForm.Numbers or FieldForm.NumberOrNumbers:
                return new(new JsonArray([.. Parts(text, style).Select(p => (JsonNode)JsonValue.Create(Number(field, p, style).Value))]), null, Parts(text, style).Any(p => Number(field, p, style).Converted) ? text : null);
            case FieldForm.GoNoGo:
                return GoNoGo(field, text, style);
            case FieldForm.Priors:
                return new(PriorText.Read(field, text, style), null, text);
            default:
                throw new InvalidOperationException($"Bug in FieldText: form {field.Form}.");
        }
    }

    /// <summary>The word of the field that is meant, in its one spelling; null where it is none.</summary>
    public static string? Word(FieldSpec field, string text)
    {
        var plain = text.Trim();
        if (OtherSpellings.TryGetValue(plain, out var other) && field.Words.Contains(other)) return other;
        return field.Words.FirstOrDefault(w => w.Equals(plain, StringComparison.OrdinalIgnoreCase))
            ?? (Sayings.Value(field.Name, plain) is { } said && field.Words.Contains(said) ? said : null);
    }

    private static TypedNumber Number(FieldSpec field, string text, WritingStyle style) =>
        NumberText.TryRead(field, text, style, out var n, out var fault) ? n : throw new TypedFault($"{field.Name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");

    private static bool YesNo(FieldSpec field, string text) => text.Trim() switch
    {
        "yes" or "true" or "y" => true,
        "no" or "false" or "n" => false,
        _ => throw new TypedFault($"\"{Spelling.Clip(text)}\" is neither yes nor no for {field.Name}.", $"{field.Name}: {field.Help}. Write {field.Name}=yes or {field.Name}=no."),
    };

    private static TypedValue GoNoGo(FieldSpec field, string text, WritingStyle style)
    {
        var limits = text.Split("..", 2);
        if (limits.Length < 2) throw new TypedFault($"\"{Spelling.Clip(text)}\" does not say between which leaves.", $"Write {field.Name}=30..50 (30 µm goes, 50 does not), {field.Name}=50.. or {field.Name}=..30.");
        var json = new JsonObject();
        var um = field with { Name = field.Name + ".goUm", Form = FieldForm.Number };
        // "30..50um": the unit at the end holds for both.
        var unit = new string([.. limits[1].SkipWhile(c => !char.IsLetter(c) && c is not '"' and not 'µ')]);
        if (limits[0].Trim() is { Length: > 0 } go) json["goUm"] = Number(um, go.Any(char.IsLetter) || go.Contains('"', StringComparison.Ordinal) ? go : $"{go} {unit}", style).Value;
        if (limits[1].Trim() is { Length: > 0 } noGo) json["noGoUm"] = Number(um, noGo, style).Value;
        return new(json, null, unit.Length > 0 ? text : null);
    }

    private static string[] Parts(string text, WritingStyle style) =>
        text.Split(style.DecimalSign == ',' || text.Contains(';', StringComparison.Ordinal) ? ';' : ',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static TypedFault NoWord(FieldSpec field, string text)
    {
        var near = Spelling.Nearest(text, field.Words);
        return new TypedFault($"There is no \"{Spelling.Clip(text)}\" for {field.Name}.", near is not null ? $"Did you mean \"{near}\"?" : $"{field.Name} ({field.Help}) is one of {string.Join(", ", field.Words)}.");
    }
}
