namespace Closemown.Turf;

/// <summary>What a source covers of one input.</summary>
/// <param name="What">The input, in words.</param>
/// <param name="Low">The lowest value covered.</param>
/// <param name="High">The highest value covered.</param>
/// <param name="Unit">The unit of both, empty for a pure number.</param>
public sealed record PublishedRange(string What, double Low, double High, string Unit)
{
    /// <summary>Whether a value lies in it, ends included.</summary>
    public bool Contains(double x) => x >= Low && x <= High;

    /// <summary>The mark for a value: what lies outside; null inside.</summary>
    public string? MarkOf(double x) => Contains(x) ? null : $"{What} {Text.N(x)} is outside {this}";

    /// <summary>Like <c>10 to 35 °C</c>.</summary>
    public override string ToString() => $"{Text.N(Low)} to {Text.N(High)} {Unit}".TrimEnd();
}
