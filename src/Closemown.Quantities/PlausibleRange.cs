namespace Closemown.Quantities;

/// <summary>What a field can well be, and how its unit is mistaken.</summary>
/// <param name="Low">Lowest plausible value, in the base unit.</param>
/// <param name="High">Highest plausible value, in the base unit.</param>
/// <param name="BaseUnit">The base unit as shown: <c>µm</c>, <c>mm</c>, <c>h</c>; empty for a bare number.</param>
/// <param name="FieldWords">The field in a person's words: "one click".</param>
/// <param name="Because">Why so, one sentence, or null.</param>
/// <param name="Slips">The slips to try, likeliest first.</param>
public sealed record PlausibleRange(double Low, double High, string BaseUnit, string FieldWords, string? Because,
    params UnitSlipKind[] Slips)
{
    /// <summary>Whether a value in the base unit is plausible as given; a value that is not a number never is.</summary>
    public bool Contains(double value) => value >= Low && value <= High;
}
