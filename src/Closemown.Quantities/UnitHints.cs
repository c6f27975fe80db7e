namespace Closemown.Quantities;

/// <summary>What to say about a unit that is not known: the nearest spelling, or what kind of unit it is.</summary>
internal static class UnitHints
{
    public static (string Message, string Remedy) For<TUnit>(string unit, UnitTable<TUnit> table) where TUnit : struct, Enum
    {
        string like = $"Write {Spelling.WithArticle(table.Quantity)} like {table.Example}.";
        if (unit[0] is '/' or '\u2044' && unit.Length > 1 && !char.IsLetter(unit[1]))
            return ("The fraction lacks its lower number.", "Write it like 5/32 in.");
        if (typeof(TUnit) == typeof(LengthUnit) && Spelling.Normal(unit).ToUpperInvariant() is "MILL" or "MILLS")
            return ("'mill' is said for a millimetre and for a thousandth of an inch.", "Write mm or thou.");
        if (typeof(TUnit) != typeof(ClickStep) && Clicks.Steps.Find(unit) is not null)
            return ($"{Shown(unit)} are no {table.Quantity} until the size of one click is known.", like);
        string? nearest = Spelling.Nearest(unit, table.Spellings);
        if (nearest is not null)
            return ($"The unit '{Shown(unit)}' is not known.", $"Did you mean '{nearest}' ({table.Find(nearest)!.Shown})?");
        return ($"'{Shown(unit)}' is no unit that can stand here.", like);
    }

    private static string Shown(string unit) => unit.Length <= 24 ? unit : unit[..24] + "…";
}
