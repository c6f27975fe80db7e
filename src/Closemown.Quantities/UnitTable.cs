namespace Closemown.Quantities;

/// <summary>One unit: what it is to the base unit (base = typed · factor + offset), how it is printed and to how many decimals, how it
/// may be typed.</summary>
internal sealed record UnitRow<TUnit>(
    TUnit Unit, Exact Factor, string Shown, string ShownMany, Func<double, int> Decimals, params string[] Spellings)
    where TUnit : struct, Enum
{
    public Exact Offset { get; init; } = Exact.Zero;

    public Exact ToBase(Exact typed) => typed * Factor + Offset;

    public Exact FromBase(Exact value) => (value - Offset) / Factor;
}

/// <summary>The units of one quantity.</summary>
internal sealed class UnitTable<TUnit>(string quantity, string example, params UnitRow<TUnit>[] rows)
    where TUnit : struct, Enum
{
    private readonly Dictionary<string, UnitRow<TUnit>> _bySpelling = Index(rows);

    /// <summary>Whether the quantity can be below zero.</summary>
    public bool Signed { get; init; }

    /// <summary>What the quantity is called in a message: "length".</summary>
    public string Quantity => quantity;

    /// <summary>What a person may type, for remedies: "4 mm or 5/32 in".</summary>
    public string Example => example;

    public IEnumerable<string> Spellings => _bySpelling.Keys;

    public UnitRow<TUnit> this[TUnit unit] =>
        Array.Find(rows, r => EqualityComparer<TUnit>.Default.Equals(r.Unit, unit))
        ?? throw new ArgumentOutOfRangeException(nameof(unit), unit, $"Not a unit of {quantity}.");

    public UnitRow<TUnit>? Find(string spelling) => _bySpelling.GetValueOrDefault(Spelling.Normal(spelling));

    private static Dictionary<string, UnitRow<TUnit>> Index(UnitRow<TUnit>[] rows)
    {
        var index = new Dictionary<string, UnitRow<TUnit>>(StringComparer.OrdinalIgnoreCase);
        foreach (UnitRow<TUnit> row in rows)
            foreach (string spelling in row.Spellings)
                index[Spelling.Normal(spelling)] = row;
        return index;
    }
}
