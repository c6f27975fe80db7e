using System.Text.Json;

namespace Closemown.Entries;

/// <summary>The limits of fields that a kind does not name: kept as they came, or an element of a soil test.</summary>
internal static class OtherFields
{
    private const double MostMgKg = 1e6;                     // all of it
    private const double UsualMgKg = 50_000;                 // iron or calcium in a soil; common practice, no source
    private const int MaxName = 80;

    // Symbols of the elements that laboratories report for soils, and the two forms of nitrogen.
    private static readonly string[] Elements =
        ["N", "P", "K", "Ca", "Mg", "S", "Na", "Fe", "Mn", "Zn", "Cu", "B", "Mo", "Cl", "Si", "Al", "Co", "Ni", "Se", "Cr", "Cd", "Pb", "As", "Hg", "I", "V", "NO3-N", "NH4-N"];

    public static void Check(KindSpec kind, JsonProperty property, Asked input, List<EntryFault> faults)
    {
        var name = property.Name;
        if (name.Length is 0 or > MaxName)
        {
            faults.Add(new(FaultCodes.BadValue, Spelling.Clip(name), $"A field's name has {name.Length} characters.", $"Write a name of 1 to {MaxName}."));
            return;
        }
        if (TextSigns.Hidden(name) is { } hidden)
        {
            faults.Add(new(FaultCodes.BadValue, "", $"A field's name cannot be kept. {hidden}", "Write the name with signs that can be seen."));
            return;
        }
        if (kind.OtherFieldsAreNumbers) Element(name, property.Value, input, faults);
    }

    private static void Element(string name, JsonElement value, Asked input, List<EntryFault> faults)
    {
        if (value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out var mgKg) || !double.IsFinite(mgKg))
            faults.Add(new(FaultCodes.BadValue, name, "The value is not a number.", "Write a number, in mg/kg."));
        else if (mgKg is < 0 or > MostMgKg)
            faults.Add(new(FaultCodes.BadValue, name, $"{EntryReader.Invariant(mgKg)} is outside 0 to {EntryReader.Invariant(MostMgKg)}.", "Write it in mg/kg: check the number and its unit."));
        else if (input.Asks(name) && !Elements.Contains(name))
            faults.Add(new(FaultCodes.Implausible, name, $"{name} is no element that soils are tested for.", Spelling.Nearest(name, Elements) is { } near
                ? $"Did you mean {near}? If it is right as it is, add \"confirmed\": [\"{name}\"]."
                : $"Write its symbol, like P, K or Mg, or add \"confirmed\": [\"{name}\"] if it is right as it is."));
        else if (input.Asks(name) && mgKg > UsualMgKg)
            faults.Add(new(FaultCodes.Implausible, name, $"{EntryReader.Invariant(mgKg)} mg/kg is more than soils hold.", $"Check the number and its unit, or add \"confirmed\": [\"{name}\"] if it is right as it is."));
    }
}
