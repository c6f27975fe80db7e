using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pages;
using Closemown.Quantities;
using Closemown.Typing;

namespace Closemown.Web;

/// <summary>What is wrong with a field of a form, and what may have been meant.</summary>
internal sealed record FormFault(EntryFault Fault, IReadOnlyList<MeantInstead> Choices);

/// <summary>Reads the fields of a form into an entry, as the visitor writes numbers.</summary>
/// <param name="form">What was typed.</param>
/// <param name="style">The visitor's way of writing.</param>
/// <param name="today">The day it is, for days typed without their year.</param>
internal sealed class FormReader(EnteredForm form, WritingStyle style, DateOnly today)
{
    private const int LongestNumber = 200;
    private readonly List<FormFault> faults = [];

    /// <summary>Reads it.</summary>
    /// <param name="found">What is wrong; empty where it was read.</param>
    /// <returns>The entry as JSON, as the pipe takes it; null where something is wrong.</returns>
    public JsonObject? Read(out IReadOnlyList<FormFault> found)
    {
        found = faults;
        if (form["kind"] is not { } name || Kinds.Find(name) is not { } kind)
        {
            Add(FaultCodes.UnknownKind, "kind", "The form does not say what kind of entry it is.", "Open its page anew.");
            return null;
        }
        var entry = new TypedEntry(kind, style, today: today);
        var meant = Meant(entry);
        foreach (var field in kind.Fields.Where(f => !meant.Contains(f.Name))) Set(entry, field);
        foreach (var other in form.Fields.Where(n => !Belongs(kind, n))) SetOther(entry, other);
        foreach (var confirmed in form.Values("confirm")) Try(confirmed, () => entry.ConfirmNamed(confirmed));
        foreach (var (field, _, question) in entry.Doubtful()) faults.Add(Doubt(field, question));
        return faults.Count == 0 ? WithEnvelope(entry.Json()) : null;
    }

    /// <summary>The name in the form of what an entry calls so: a station of a feeler is typed as left.goUm.</summary>
    public static string InForm(EnteredForm form, string field) =>
        form.Values(field).Count > 0 ? field : form.Fields.FirstOrDefault(f => f.StartsWith(field + ".", StringComparison.Ordinal)) ?? field;

    /// <summary>Sets what the person chose instead of what was typed; what was typed stays beside it.</summary>
    private HashSet<string> Meant(TypedEntry entry)
    {
        var fields = new HashSet<string>(StringComparer.Ordinal);
        foreach (var choice in form.Values("instead"))
        {
            if (choice.Split('=') is [var field, var number] && entry.Kind.IndexOf(field) >= 0 && form[field] is { } typed
                && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) && fields.Add(field)) entry.Correct(field, value, typed);
        }
        return fields;
    }

    private void Set(TypedEntry entry, FieldSpec field)
    {
        var text = field.Form == FieldForm.GoNoGo && form.Values(field.Name).Count == 0 ? Between(field) : Text(field);
        if (text is null) return;
        if (text.Length > LongestNumber && field.Form is not (FieldForm.Text or FieldForm.Texts or FieldForm.Priors or FieldForm.Dates))
        {
            Add(FaultCodes.BadValue, field.Name, $"{Spelling.Clip(text)} is too long for it.", "Write less.");
            return;
        }
        Try(field.Name, () => entry.Set(field, text));
    }

    private string? Text(FieldSpec field)
    {
        if (form.Values(field.Name) is not { Count: > 0 } told) return null;
        if (field.Form == FieldForm.Flag) return told[^1] is "on" ? "yes" : told[^1];
        // A list is typed in several inputs, or in one with signs between.
        return field.Form is FieldForm.Words or FieldForm.Texts or FieldForm.Dates or FieldForm.Numbers or FieldForm.NumberOrNumbers
            ? string.Join(';', told.Select(t => WithUnit(field.Name, t)))
            : WithUnit(field.Name, told[^1]);
    }

    /// <summary>"30..50" of the two inputs of a feeler's station.</summary>
    private string? Between(FieldSpec field)
    {
        string Limit(string name) => form[$"{field.Name}.{name}"] is { } typed ? WithUnit($"{field.Name}.{name}", typed) : "";
        var (go, noGo) = (Limit("goUm"), Limit("noGoUm"));
        return go.Length + noGo.Length == 0 ? null : $"{go}..{noGo}";
    }

    private string WithUnit(string name, string typed) =>
        form.UnitOf(name) is { } unit && typed.Any(char.IsDigit) && !typed.Any(c => char.IsLetter(c) || c is '"' or '\'' or '°' or '%') ? $"{typed} {unit}" : typed;

    private void SetOther(TypedEntry entry, string name)
    {
        if (entry.Kind.OtherFieldsAreNumbers && name.Length <= 40) Try(name, () => entry.SetOther(name, Spelling.Clip(form[name]!)));
        else Add(FaultCodes.BadValue, name, $"A {entry.Kind.Name} entry has no field {Spelling.Clip(name)}.", "Put it into the note.");
    }

    private static bool Belongs(KindSpec kind, string name) =>
        kind.IndexOf(name) >= 0 || (name.EndsWith(".goUm", StringComparison.Ordinal) || name.EndsWith(".noGoUm", StringComparison.Ordinal)) && kind.IndexOf(name.Split('.')[0]) is >= 0 and var at && kind.Fields[at].Form == FieldForm.GoNoGo;

    private JsonObject WithEnvelope(JsonObject json)
    {
        foreach (var name in (string[])["unit", "area", "id", "at", "by", "note", "voids"])
        {
            if (form[name] is { } told) json[name] = told;
        }
        return json;
    }

    private static FormFault Doubt(FieldSpec field, SlipQuestion question) => new(
        new(FaultCodes.Implausible, field.Name, question.Why, "Mend it, or say that it is right as it is."),
        [.. question.Candidates.Select(c => new MeantInstead($"{field.Name}={Math.Round(c.Value, 6).ToString("R", CultureInfo.InvariantCulture)}", c.Written, c.Reading))]);

    private void Try(string field, Action set)
    {
        try
        {
            set();
        }
        catch (TypedFault e)
        {
            var message = e.Message.StartsWith(field + ": ", StringComparison.Ordinal) ? e.Message[(field.Length + 2)..] : e.Message;
            Add(FaultCodes.BadValue, field, message, e.Remedy);
        }
    }

    private void Add(string code, string field, string message, string remedy) => faults.Add(new(new(code, InForm(form, field), message, remedy), []));
}
