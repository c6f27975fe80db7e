namespace Closemown.Turf;

/// <summary>A value of a published formula, with a mark where an input lies outside what its source covers.</summary>
/// <remarks>
/// A formula whose source gives a range returns this; one that holds by definition, or whose source gives no range, returns a plain number.
/// The mark travels with the value through further reckoning, so that whoever prints it can show it.
/// </remarks>
/// <param name="Value">The value, reckoned also outside the range.</param>
/// <param name="Outside">What lies outside the range and by how much, in words; null inside it.</param>
public readonly record struct Ranged(double Value, string? Outside = null)
{
    /// <summary>Whether all inputs lie in the published range.</summary>
    public bool InRange => Outside is null;

    /// <summary>Another value that rests on this one: it keeps the mark.</summary>
    internal Ranged Give(double value) => this with { Value = value };

    /// <summary>The same value with one more reason for the mark; null adds none.</summary>
    internal Ranged Mark(string? outside) => outside is null ? this : this with { Outside = Outside is null ? outside : $"{Outside}; {outside}" };
}
