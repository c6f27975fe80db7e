namespace Closemown.Pages;

/// <summary>Round numbers along an axis.</summary>
public static class Ticks
{
    /// <summary>From three to seven round numbers that lie within a range.</summary>
    /// <param name="low">The least.</param>
    /// <param name="high">The greatest, above the least.</param>
    /// <param name="decimals">How many decimals these numbers need.</param>
    public static IReadOnlyList<double> Between(double low, double high, out int decimals)
    {
        var rough = Math.Max(high - low, 1e-9) / 5;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = power * (rough / power) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 };
        decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        var first = Math.Ceiling((low / step) - 1e-9);
        return [.. Enumerable.Range(0, (int)Math.Floor((high / step) + 1e-9) - (int)first + 1).Select(i => (first + i) * step)];
    }
}
