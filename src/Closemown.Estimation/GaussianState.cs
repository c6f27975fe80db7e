namespace Closemown.Estimation;

/// <summary>Joint Gaussian of one state and the constants: the state's components first, then the constants.</summary>
public sealed class GaussianState
{
    /// <summary>A Gaussian from its parts, which are kept and not copied.</summary>
    /// <param name="stateNames">Names of the d components.</param>
    /// <param name="constantNames">Names of the m constants.</param>
    /// <param name="mean">d + m means.</param>
    /// <param name="covariance">(d + m)² covariances, row-major, symmetric and not negative.</param>
    /// <exception cref="ArgumentException">A length does not fit, or a number is not finite.</exception>
    public GaussianState(IReadOnlyList<string> stateNames, IReadOnlyList<string> constantNames, double[] mean, double[] covariance)
    {
        ArgumentNullException.ThrowIfNull(stateNames);
        ArgumentNullException.ThrowIfNull(constantNames);
        ArgumentNullException.ThrowIfNull(mean);
        ArgumentNullException.ThrowIfNull(covariance);
        var n = stateNames.Count + constantNames.Count;
        if (mean.Length != n) throw new ArgumentException(ErrorText.Length("The mean", n, mean.Length), nameof(mean));
        if (covariance.Length != n * n) throw new ArgumentException(ErrorText.Length("The covariance", n * n, covariance.Length), nameof(covariance));
        foreach (var x in mean)
        {
            if (!double.IsFinite(x)) throw new ArgumentException(ErrorText.NotFinite("A mean", x), nameof(mean));
        }

        foreach (var x in covariance)
        {
            if (!double.IsFinite(x)) throw new ArgumentException(ErrorText.NotFinite("A covariance", x), nameof(covariance));
        }

        (StateNames, ConstantNames, Mean, Covariance) = (stateNames, constantNames, mean, covariance);
    }

    /// <summary>Names of the state's components.</summary>
    public IReadOnlyList<string> StateNames { get; }

    /// <summary>Names of the constants.</summary>
    public IReadOnlyList<string> ConstantNames { get; }

    /// <summary>Components of the state, d.</summary>
    public int StateSize => StateNames.Count;

    /// <summary>Number of constants, m.</summary>
    public int ConstantCount => ConstantNames.Count;

    /// <summary>d + m.</summary>
    public int Size => Mean.Length;

    /// <summary>The means.</summary>
    public double[] Mean { get; }

    /// <summary>The covariances, row-major.</summary>
    public double[] Covariance { get; }

    /// <summary>A deep copy.</summary>
    public GaussianState Copy() => new(StateNames, ConstantNames, [.. Mean], [.. Covariance]);

    /// <summary>Mean and variance of η = Σ w·u − offset; the step of a state term does not matter.</summary>
    /// <exception cref="ArgumentException">A component or constant does not exist, or a weight is not finite.</exception>
    public (double Mean, double Variance) Predict(ReadOnlySpan<Term> terms, double offset = 0)
    {
        double mean = -offset, variance = 0;
        foreach (var p in terms)
        {
            var row = Position(p) * Size;
            mean += p.Weight * Mean[Position(p)];
            var sum = 0.0;
            foreach (var q in terms) sum += q.Weight * Covariance[row + Position(q)];
            variance += p.Weight * sum;
        }

        return (mean, Math.Max(0, variance));
    }

    /// <summary>Draws from this Gaussian: <paramref name="count"/> × (d + m), flat; see <see cref="Draws"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is not even and positive.</exception>
    public double[] Sample(int count, ulong seed) => Draws.From(this, count, seed).Values;

    internal int Position(Term term)
    {
        Predictor.Check(term, StateSize, ConstantCount);
        return term.IsConstant ? StateSize + term.Index : term.Index;
    }
}
