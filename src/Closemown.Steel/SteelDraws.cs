using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>Seeded draws of (state, constants) with independent standard normal columns added for what happens next.</summary>
public sealed class SteelDraws
{
    private readonly double[] values;
    private readonly int width;

    private SteelDraws(double[] values, int width)
    {
        (this.values, this.width) = (values, width);
    }

    /// <summary>One draw: state, constants, extras.</summary>
    public ReadOnlySpan<double> this[int draw] => values.AsSpan(draw * width, width);

    public int Count => values.Length / width;

    /// <summary>Draws from a belief.</summary>
    /// <param name="belief">Joint belief of state and constants.</param>
    /// <param name="count">How many; even, as they come in opposite pairs.</param>
    /// <param name="seed">The seed: the same seed gives the same draws.</param>
    /// <param name="extra">Standard normal columns to add.</param>
    public static SteelDraws Of(GaussianState belief, int count, ulong seed, int extra)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var size = belief.StateSize + belief.ConstantCount;
        var width = size + extra;
        var mean = new double[width];
        var covariance = new double[width * width];
        belief.Mean.CopyTo(mean.AsSpan());
        for (var i = 0; i < size; i++) Array.Copy(belief.Covariance, i * size, covariance, i * width, size);
        for (var i = size; i < width; i++) covariance[(i * width) + i] = 1;
        var wide = new GaussianState(belief.StateNames, [.. belief.ConstantNames, .. Enumerable.Range(0, extra).Select(i => $"extra {i}")], mean, covariance);
        var draws = Draws.From(wide, count, seed);
        return new([.. draws.Values], width);
    }
}
