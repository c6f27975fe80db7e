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

    /// <summary>Draws from beliefs of different weight, each with its share of the draws.</summary>
    /// <param name="parts">Joint beliefs of state and constants, with weights that sum to one.</param>
    /// <param name="count">How many; even, as they come in opposite pairs.</param>
    /// <param name="seed">The seed: the same seed gives the same draws.</param>
    /// <param name="extra">Standard normal columns to add.</param>
    public static SteelDraws Of(IReadOnlyList<(GaussianState Belief, double Weight)> parts, int count, ulong seed, int extra)
    {
        ArgumentNullException.ThrowIfNull(parts);
        if (parts.Count == 1) return Of(parts[0].Belief, count, seed, extra);
        var all = new List<double>();
        var (width, given, sum) = (0, 0, 0.0);
        for (var i = 0; i < parts.Count; i++)
        {
            sum += parts[i].Weight;
            var upTo = i == parts.Count - 1 ? count : 2 * (int)Math.Round(count * sum / 2);
            if (upTo <= given) continue;
            // The same noise for each share: what differs is the belief.
            var share = Of(parts[i].Belief, upTo - given, seed, extra);
            width = share.width;
            all.AddRange(share.values);
            given = upTo;
        }
        return new([.. all], width);
    }

    /// <summary>Every draw at the mean: what is believed is taken as known.</summary>
    public static SteelDraws AtMean(GaussianState belief, int count, int extra)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var width = belief.Size + extra;
        var values = new double[count * width];
        for (var k = 0; k < count; k++) belief.Mean.CopyTo(values.AsSpan(k * width));
        return new(values, width);
    }

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
