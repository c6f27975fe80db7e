namespace Closemown.Entries;

/// <summary>Whether an entry says all that its kind needs.</summary>
internal static class Completeness
{
    public static void Check(KindSpec kind, object?[] values, int others, bool voids, List<EntryFault> faults)
    {
        bool Bad(string field) => faults.Exists(f => f.Field == field || f.Field.StartsWith(field + ".", StringComparison.Ordinal));
        for (var i = 0; i < values.Length; i++)
        {
            var f = kind.Fields[i];
            if (f.Required && values[i] is null && !Bad(f.Name))
                faults.Add(new(FaultCodes.Missing, f.Name, $"A {kind.Name} entry needs {f.Name}: {f.Help}.", Say(f)));
        }
        foreach (var group in kind.OneOf)
        {
            if (group.Any(name => values[kind.IndexOf(name)] is not null || Bad(name))) continue;
            faults.Add(new(FaultCodes.Missing, group[0], $"A {kind.Name} entry needs at least one of {string.Join(", ", group)}.", Say(kind.Fields[kind.IndexOf(group[0])])));
        }
        if (kind.Name == StripEntry.Name && values[kind.IndexOf("stackMm")] is not null && values[kind.IndexOf("layers")] is null)
            faults.Add(new(FaultCodes.Missing, "layers", "A stack needs the number of layers in it.", "Add \"layers\": how many were measured together."));
        if (kind.OtherFieldsAreNumbers && others == 0)
            faults.Add(new(FaultCodes.Missing, "", $"A {kind.Name} entry needs at least one element.", "Add one like \"P\": 20, in mg/kg."));
        Ordered(kind, values, "lowMm", "highMm", faults);
        Ordered(kind, values, "cutsToUm", "foldsFromUm", faults);
    }

    private static void Ordered(KindSpec kind, object?[] values, string low, string high, List<EntryFault> faults)
    {
        if (kind.IndexOf(low) < 0 || values[kind.IndexOf(low)] is not double a || values[kind.IndexOf(high)] is not double b || a <= b) return;
        faults.Add(new(FaultCodes.BadValue, low, $"{low} is above {high}.", "Give the smaller first."));
    }

    private static string Say(FieldSpec f) => f.Words.Count > 0 ? $"Say one of {string.Join(", ", f.Words)}." : $"Add \"{f.Name}\".";
}
