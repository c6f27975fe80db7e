using Closemown.Entries;
using Closemown.Pages;

namespace Closemown.Web;

/// <summary>Empty forms, from the table of kinds.</summary>
internal sealed class BlankForms : IBlankForms
{
    public IReadOnlyList<(string Kind, string Says)> Kinds { get; } = [.. Entries.Kinds.All.Where(k => k.Name != "void").Select(k => (k.Name, k.Help))];

    public FormToMend? Of(string kind, string? unit, string? area, string back)
    {
        if (Entries.Kinds.Find(kind) is not { } spec || spec.Name == "void") return null;
        List<FieldToMend> fields = [];
        if (spec.Belongs is Belongs.Unit or Belongs.UnitAndArea) fields.Add(Mending.Field(spec, "unit", [unit ?? ""], null));
        if (spec.Belongs is Belongs.Area or Belongs.UnitAndArea) fields.Add(Mending.Field(spec, "area", [area ?? ""], null));
        fields.AddRange(spec.Fields.Select(f => Mending.Field(spec, f.Name, [""], null)));
        fields.AddRange(spec.OtherFieldsAreNumbers ? ((string[])["P", "K", "Mg", "Ca"]).Select(e => Mending.Field(spec, e, [""], null)) : []);
        fields.AddRange(((string[])["by", "note"]).Select(n => Mending.Field(spec, n, [""], null)));
        return new(spec.Name, spec.Help, [KeyValuePair.Create("kind", spec.Name), KeyValuePair.Create("back", back)], fields, []);
    }
}
