using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Typing;
using Microsoft.AspNetCore.Http;

namespace Closemown.Pages;

/// <summary>An entry read from the fields of a form, as people type them; what is blank is left out.</summary>
public sealed class FormEntry
{
    private readonly TypedEntry typed;
    private readonly Dictionary<string, string> faults = new(StringComparer.Ordinal);

    /// <summary>Reads the fields.</summary>
    /// <param name="kind">The kind of entry.</param>
    /// <param name="form">The form: a field's name may be given another by <paramref name="names"/>.</param>
    /// <param name="style">How numbers are typed.</param>
    /// <param name="names">The fields, each with the name that it has in the form where that is another.</param>
    public FormEntry(string kind, IFormCollection form, WritingStyle style, params (string Field, string? Name)[] names)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(names);
        typed = new(Kinds.Get(kind), style);
        foreach (var (field, name) in names)
        {
            var text = string.Join(',', form[name ?? field].Where(v => !string.IsNullOrWhiteSpace(v))).Trim();
            if (text.Length == 0) continue;
            try
            {
                typed.Set(typed.Kind.Fields[typed.Kind.IndexOf(field)], text);
            }
            catch (TypedFault fault)
            {
                faults[name ?? field] = $"{fault.Message} {fault.Remedy}";
            }
        }
        foreach (var confirmed in form["confirm"])
        {
            if (names.Any(n => n.Field == confirmed)) typed.Confirm(confirmed!);
        }
        foreach (var (field, _, question) in typed.Doubtful())
        {
            Doubted ??= field.Name;
            var shown = names.FirstOrDefault(n => n.Field == field.Name).Name ?? field.Name;
            faults[shown] = $"{question.Why} {string.Join(' ', question.Candidates.Select(c => $"Did you mean {c.Written}? ({c.Reading})"))} Correct it, or tick that it is right.";
        }
    }

    /// <summary>The first field whose value is doubted: the person may stand by it. Null for none.</summary>
    public string? Doubted { get; }

    /// <summary>What is wrong, by the name in the form.</summary>
    public IReadOnlyDictionary<string, string> Faults => faults;

    /// <summary>Whether any field was told.</summary>
    public bool IsBlank => typed.Count == 0;

    /// <summary>The entry, about a unit or an area.</summary>
    /// <param name="about">unit or area.</param>
    /// <param name="name">Its name.</param>
    public JsonObject Json(string about, string name)
    {
        var json = typed.Json();
        json[about] = name;
        return json;
    }
}
