namespace Closemown.Estimation;

/// <summary>Seeded, antithetic samples of a <see cref="GaussianState"/>: rows 2k and 2k + 1 lie opposite each other about the mean.</summary>
/// <remarks>The same seed gives the same bits on the same machine. Their mean is the Gaussian's mean up to rounding.</remarks>
public sealed class Draws
{
    private Draws(int count, int size, double[] values) => (Count, Size, Values) = (count, size, values);

    /// <summary>Number of samples.</summary>
    public int Count { get; }

    /// <summary>Numbers in a sample: d + m.</summary>
    public int Size { get; }

    /// <summary>All samples, flat: Count × Size.</summary>
    public double[] Values { get; }

    /// <summary>One sample.</summary>
    public ReadOnlySpan<double> this[int sample] => Values.AsSpan(sample * Size, Size);

    /// <summary>Draws <paramref name="count"/> samples; a semi-definite covariance is allowed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is not even and positive.</exception>
    /// <exception cref="EstimationException">The covariance has a clearly negative direction.</exception>
    public static Draws From(GaussianState g, int count, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(g);
        if (count <= 0 || count % 2 != 0) throw new ArgumentOutOfRangeException(nameof(count), count, $"The count must be even and positive, but is {ErrorText.N(count)}.");
        var n = g.Size;
        var root = Root(g);
        var values = new double[count * n];
        var z = new double[n];
        var random = new SeededNormal(seed);
        for (var s = 0; s < count; s += 2)
        {
            for (var i = 0; i < n; i++) z[i] = random.Next();
            for (var i = 0; i < n; i++)
            {
                var shift = 0.0;
                for (var k = 0; k <= i; k++) shift += root[(i * n) + k] * z[k];
                values[(s * n) + i] = g.Mean[i] + shift;
                values[((s + 1) * n) + i] = g.Mean[i] - shift;
            }
        }

        return new(count, n, values);
    }

    /// <summary>Lower triangle with LLᵀ = covariance; a pivot lost in rounding gives an empty column.</summary>
    private static double[] Root(GaussianState g)
    {
        var n = g.Size;
        var l = new double[n * n];
        for (var j = 0; j < n; j++)
        {
            var whole = g.Covariance[(j * n) + j];
            var pivot = whole;
            for (var k = 0; k < j; k++) pivot -= l[(j * n) + k] * l[(j * n) + k];
            if (whole < 0 || pivot < -1e-6 * whole)
            {
                var name = j < g.StateSize ? $"state '{g.StateNames[j]}'" : ErrorText.Constant(g.ConstantNames[j - g.StateSize]);
                throw new EstimationException(name, "has a negative variance given the others", "the covariance was not that of a Gaussian; take it from a posterior or a forward pass");
            }

            if (pivot <= 1e-12 * whole) continue;
            var root = Math.Sqrt(pivot);
            l[(j * n) + j] = root;
            for (var i = j + 1; i < n; i++)
            {
                var sum = g.Covariance[(i * n) + j];
                for (var k = 0; k < j; k++) sum -= l[(i * n) + k] * l[(j * n) + k];
                l[(i * n) + j] = sum / root;
            }
        }

        return l;
    }
}
