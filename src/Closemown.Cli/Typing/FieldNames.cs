using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Fields by the names people type: with or without the unit at the end, any case, center for centre.</summary>
internal static class FieldNames
{
    private static readonly string[] Units = ["Um", "Mm", "Turns", "MmPerTurn", "Deg", "Pct", "M2", "C"];

    /// <summary>The field that is meant; null where none is.</summary>
    public static FieldSpec? Find(KindSpec kind, string name)
    {
        var plain = name.Replace("-", "", StringComparison.Ordinal);
        if (plain.Equals("center", StringComparison.OrdinalIgnoreCase)) plain = "centre";
        return kind.Fields.FirstOrDefault(f => f.Name.Equals(plain, StringComparison.OrdinalIgnoreCase))
            ?? kind.Fields.FirstOrDefault(f => Short(f.Name).Equals(plain, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The name without the unit at its end.</summary>
    public static string Short(string name)
    {
        var unit = Units.FirstOrDefault(u => name.EndsWith(u, StringComparison.Ordinal) && name.Length > u.Length);
        return unit is null ? name : name[..^unit.Length];
    }

    public static CliFault Unknown(KindSpec kind, string name)
    {
        var near = Spelling.Nearest(name, kind.Fields.SelectMany(f => new[] { f.Name, Short(f.Name) }).Distinct());
        return CliFault.Refused($"{kind.Name} has no field \"{Spelling.Clip(name)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"It has {string.Join(", ", kind.Fields.Select(f => f.Name))}.");
    }
}
