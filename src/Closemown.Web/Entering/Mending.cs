using Closemown.Entries;
using Closemown.Pages;

namespace Closemown.Web;

/// <summary>Puts a form that could not be taken back into the hand of whoever typed it.</summary>
internal static class Mending
{
    private static readonly string[] YesNo = ["yes", "no"];

    /// <summary>The form with everything that was typed, and what is missing.</summary>
    public static FormToMend Of(EnteredForm form, IReadOnlyList<FormFault> faults)
    {
        var kind = Kinds.Find(form["kind"] ?? "");
        var meant = form.Values("instead").Select(i => i.Split('=')).Where(i => i.Length == 2).GroupBy(i => i[0]).ToDictionary(g => g.Key, g => g.Last()[1]);
        // Of the envelope only what is wrong is shown; the rest goes with it unseen.
        bool Shown(string name) => EnteredForm.IsTyped(name) || (name is "unit" or "area" or "at" && faults.Any(f => f.Fault.Field == name));
        var fields = form.All.Where(v => Shown(v.Key)).Select(v => Field(kind, v.Key, meant.TryGetValue(v.Key, out var number) ? [number] : v.Value, meant.ContainsKey(v.Key) ? null : form.UnitOf(v.Key))).ToList();
        // What is missing has a place to be typed.
        fields.AddRange(faults.Select(f => f.Fault.Field).Distinct().Where(n => (kind?.IndexOf(n) >= 0 || n is "unit" or "area") && !fields.Exists(f => f.Name == n)).Select(n => Field(kind, n, [""], null)));
        var unseen = form.All.Where(v => !Shown(v.Key) && v.Key is not ("form" or "instead") && !(v.Key == "back" && LocalPath.Of(form["back"]) is null) && !meant.Keys.Any(m => v.Key == m + ".in"))
            .SelectMany(v => v.Value.Select(x => KeyValuePair.Create(v.Key, x)));
        return new(kind?.Name ?? "entry", kind?.Help ?? "", [.. unseen], fields, [.. faults.Select(f => new FaultToMend(f.Fault.Field, f.Fault.Message, Remedy(f.Fault), f.Fault.Code == FaultCodes.Implausible, f.Choices))]);
    }

    /// <summary>A field as people fill it in.</summary>
    public static FieldToMend Field(KindSpec? kind, string name, IReadOnlyList<string> values, string? unit)
    {
        var at = kind?.IndexOf(name) ?? -1;
        var spec = at >= 0 ? kind!.Fields[at] : null;
        var words = spec?.Form switch { FieldForm.Word or FieldForm.Words => spec.Words, FieldForm.Flag => YesNo, _ => [] };
        // A field may come without a name: what is given back must still say something.
        var label = spec is null ? name switch { "" => "without a name", "by" => "who read or did it", "unit" => "which mower", "area" => "which turf", "at" => "when, as 2026-05-03T10:30:00+01:00", _ => name } : Entries.Stations.IndexOf(name) >= 0 ? $"{name}: {spec.Help}" : spec.Help;
        return new(name, char.ToUpperInvariant(label[0]) + label[1..], words, values, unit ?? "", name == "note" || spec is { Form: FieldForm.Text or FieldForm.Texts });
    }

    /// <summary>Programs add a list to their line; people tick a box.</summary>
    private static string Remedy(EntryFault fault) => fault.Code == FaultCodes.Implausible ? "Mend it, or say that it is right as it is." : fault.Remedy;
}
