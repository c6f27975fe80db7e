namespace Closemown.Estimation;

/// <summary>One pass of moment matching along the chain (assumed-density filter): the present state and the constants only.</summary>
/// <remarks>
/// For Gaussian models it equals the solver at the last state; with intervals it comes close and is good enough to rank checks.
/// Kalman 1960, J. Basic Eng. 82:35 for the linear parts; Minka 2001, 2.1 for the matched moments. Not for two threads at once.
/// </remarks>
public sealed class ForwardPass
{
    private readonly double[] _gain;
    private readonly double[] _work;
    private readonly double[] _map;

    /// <summary>Starts from a copy of <paramref name="start"/>.</summary>
    public ForwardPass(GaussianState start)
    {
        ArgumentNullException.ThrowIfNull(start);
        Current = start.Copy();
        _gain = new double[Current.Size];
        _work = new double[Math.Max(1, Current.StateSize) * Current.Size];
        _map = new double[Math.Max(1, Current.StateSize) * Current.Size];
    }

    /// <summary>The Gaussian as it stands; it moves with this pass.</summary>
    public GaussianState Current { get; }

    /// <summary>An independent pass from here.</summary>
    public ForwardPass Copy() => new(Current);

    /// <summary>Takes over another Gaussian's numbers without new memory, so that one pass can be used for many runs.</summary>
    /// <exception cref="ArgumentException">It has another shape.</exception>
    public void CopyFrom(GaussianState other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.StateSize != Current.StateSize || other.ConstantCount != Current.ConstantCount)
            throw new ArgumentException(ErrorText.PassShape(other.StateSize, other.ConstantCount, Current.StateSize, Current.ConstantCount), nameof(other));
        other.Mean.CopyTo(Current.Mean, 0);
        other.Covariance.CopyTo(Current.Covariance, 0);
    }

    /// <summary>x′ = A x + B θ + offset + w with w independent N(0, sd²); an sd of zero is allowed.</summary>
    /// <param name="A">d×d, row-major.</param>
    /// <param name="B">d×m, row-major.</param>
    /// <param name="offset">d numbers.</param>
    /// <param name="sd">d spreads, not negative.</param>
    /// <exception cref="ArgumentException">A length does not fit, or a number is not finite.</exception>
    public void Move(ReadOnlySpan<double> A, ReadOnlySpan<double> B, ReadOnlySpan<double> offset, ReadOnlySpan<double> sd)
    {
        int d = Current.StateSize, m = Current.ConstantCount, n = d + m;
        Check("A", A, d * d);
        Check("B", B, d * m);
        Check("The offset", offset, d);
        Check("The spreads", sd, d);
        foreach (var s in sd)
        {
            if (s < 0) throw new ArgumentOutOfRangeException(nameof(sd), s, $"A spread must not be negative, but is {ErrorText.N(s)}.");
        }

        double[] mean = Current.Mean, p = Current.Covariance;
        // Most weights of a step are zero: each row of the map is added up from the few rows that count.
        for (var i = 0; i < d; i++)
        {
            var row = _work.AsSpan(i * n, n);
            row.Clear();
            var sum = offset[i];
            for (var k = 0; k < n; k++)
            {
                var weight = k < d ? A[(i * d) + k] : B[(i * m) + k - d];
                _map[(i * n) + k] = weight;
                if (weight == 0) continue;
                sum += weight * mean[k];
                var other = p.AsSpan(k * n, n);
                for (var j = 0; j < row.Length; j++) row[j] += weight * other[j];
            }

            _gain[i] = sum;
        }

        for (var i = 0; i < d; i++)
        {
            mean[i] = _gain[i];
            for (var j = 0; j < m; j++) p[(i * n) + d + j] = p[((d + j) * n) + i] = _work[(i * n) + d + j];
        }

        for (var j = 0; j < d; j++)
        {
            for (var i = j; i < d; i++) p[(i * n) + j] = i == j ? sd[i] * sd[i] : 0;
            for (var k = 0; k < n; k++)
            {
                var weight = _map[(j * n) + k];
                if (weight == 0) continue;
                for (var i = j; i < d; i++) p[(i * n) + j] += _work[(i * n) + k] * weight;
            }

            for (var i = j; i < d; i++) p[(j * n) + i] = p[(i * n) + j];
        }
    }

    /// <summary>η = Σ w·u − offset is read as zero with spread sd.</summary>
    /// <returns>The log of the reading's predictive density, before it was seen: what it adds to the log evidence.</returns>
    /// <exception cref="ArgumentException">A term does not exist, or a number is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite.</exception>
    public double ObserveGaussian(ReadOnlySpan<Term> terms, double offset, double sd)
    {
        var (eta, v) = Project(terms, offset, sd);
        var total = v + (sd * sd);
        Renew(-eta / total, -1 / total);
        return Evidence.LogDensity(eta, Math.Sqrt(total));
    }

    /// <summary>η, read with spread sd, lay between the limits.</summary>
    /// <returns>The log of the reading's predictive probability, before it was seen, exact in the tails: what it adds to the log evidence of this pass.</returns>
    /// <exception cref="ArgumentException">As for a Gaussian; low is not below high.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite.</exception>
    public double ObserveInterval(ReadOnlySpan<Term> terms, double offset, double low, double high, double sd)
    {
        if (!(low < high)) throw new ArgumentException(ErrorText.Limits(low, high), nameof(low));
        var (eta, v) = Project(terms, offset, sd);
        var total = v + (sd * sd);
        var s = Math.Sqrt(total);
        IntervalLikelihood.Moments((low - eta) / s, (high - eta) / s, (high - low) / s, out var f, out var f1, out var f2, out _);
        if (!double.IsFinite(f1 + f2)) throw new EstimationException("The reading", ErrorText.FarAway(Math.Max(low - eta, eta - high) / s), ErrorText.CureFar);
        Renew(f1 / s, Math.Min(0, f2) / total);
        return f;
    }

    /// <summary>η, read with spread sd, fell into a category (between cut-points category − 1 and category).</summary>
    /// <returns>As for an interval.</returns>
    /// <exception cref="ArgumentException">As for an interval; the cut-points do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite; the category does not exist.</exception>
    public double ObserveCategory(ReadOnlySpan<Term> terms, double offset, ReadOnlySpan<double> cutPoints, int category, double sd)
    {
        ChainModel.CheckCuts(cutPoints);
        if ((uint)category > (uint)cutPoints.Length)
            throw new ArgumentOutOfRangeException(nameof(category), category, ErrorText.Category(category, cutPoints.Length + 1));
        return ObserveInterval(terms, offset, category == 0 ? double.NegativeInfinity : cutPoints[category - 1],
            category == cutPoints.Length ? double.PositiveInfinity : cutPoints[category], sd);
    }

    /// <summary>The probability of each category of η read with spread sd.</summary>
    /// <exception cref="ArgumentException">A term does not exist, or the cut-points do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite.</exception>
    public double[] CategoryProbabilities(ReadOnlySpan<Term> terms, double offset, ReadOnlySpan<double> cutPoints, double sd)
    {
        var into = new double[cutPoints.Length + 1];
        var (mean, variance) = Current.Predict(terms, offset);
        Categories.Probabilities(mean, variance, sd, cutPoints, into);
        return into;
    }

    /// <summary>Predictor's mean and variance, with P·w left in the gain.</summary>
    private (double Eta, double Variance) Project(ReadOnlySpan<Term> terms, double offset, double sd)
    {
        if (!(sd > 0 && double.IsFinite(sd))) throw new ArgumentOutOfRangeException(nameof(sd), sd, ErrorText.Spread(sd));
        if (!double.IsFinite(offset)) throw new ArgumentException(ErrorText.NotFinite("The offset", offset), nameof(offset));
        var n = Current.Size;
        Array.Clear(_gain);
        double eta = -offset, v = 0;
        foreach (var term in terms)
        {
            var at = Current.Position(term);
            eta += term.Weight * Current.Mean[at];
            var row = Current.Covariance.AsSpan(at * n, n);              // symmetric: a row is a column
            for (var i = 0; i < row.Length; i++) _gain[i] += term.Weight * row[i];
        }

        foreach (var term in terms) v += term.Weight * _gain[Current.Position(term)];
        return (eta, Math.Max(0, v));
    }

    private void Renew(double slope, double curvature)
    {
        var n = Current.Size;
        for (var i = 0; i < n; i++)
        {
            Current.Mean[i] += _gain[i] * slope;
            var row = _gain[i] * curvature;
            for (var j = 0; j <= i; j++)
            {
                var value = Current.Covariance[(i * n) + j] + (row * _gain[j]);
                Current.Covariance[(i * n) + j] = value;
                Current.Covariance[(j * n) + i] = value;
            }
        }
    }

    private static void Check(string what, ReadOnlySpan<double> values, int wanted)
    {
        if (values.Length != wanted) throw new ArgumentException(ErrorText.Length(what, wanted, values.Length));
        foreach (var x in values)
        {
            if (!double.IsFinite(x)) throw new ArgumentException(ErrorText.NotFinite(what, x));
        }
    }
}
