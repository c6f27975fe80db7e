using System.Text.Json.Nodes;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>A number as it was typed.</summary>
/// <param name="Value">In the unit of the field's name.</param>
/// <param name="LengthIn">The unit typed, of a length.</param>
/// <param name="Converted">Whether the text says more than the bare number.</param>
public readonly record struct TypedNumber(double Value, LengthUnit? LengthIn, bool Converted);

/// <summary>A field's value as it was typed.</summary>
/// <param name="Json">As the entry holds it.</param>
/// <param name="Number">Of a single number.</param>
/// <param name="Keep">What was typed, where it was converted; null else.</param>
public sealed record TypedValue(JsonNode Json, TypedNumber? Number, string? Keep);
