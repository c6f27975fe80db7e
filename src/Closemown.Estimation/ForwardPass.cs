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
    private readonly double[] _weight;
    private readonly int[] _column;
    private readonly int[] _start;
    private readonly int[] _moved;

    /// <summary>Starts from a copy of <paramref name="start"/>.</summary>
    public ForwardPass(GaussianState start)
    {
        ArgumentNullException.ThrowIfNull(start);
        Current = start.Copy();
        _gain = new double[Current.Size];
        _work = new double[Current.StateSize * Current.Size];
        _weight = new double[Current.StateSize * Current.Size];
        _column = new int[_weight.Length];
        _start = new int[Current.StateSize + 1];
        _moved = new int[Current.StateSize];
    }

    /// <summary>The Gaussian as it stands; it moves with this pass.</summary>
    public GaussianState Current { get; }

    /// <summary>An independent pass from here.</summary>
    public ForwardPass Copy() => new(Current);

    /// <summary>Takes over another Gaussian's numbers without new memory, so that one pass can be used for many runs.</summary>
    /// <exception cref="ArgumentException">It has another shape.</exception>
    public void CopyFrom(GaussianState other)
    {
        CheckShape(other);
        other.Mean.CopyTo(Current.Mean, 0);
        other.Covariance.CopyTo(Current.Covariance, 0);
    }

    /// <summary>Takes the mean of its own numbers and another Gaussian's: of means and of covariances each.</summary>
    /// <exception cref="ArgumentException">It has another shape.</exception>
    public void MeanWith(GaussianState other)
    {
        CheckShape(other);
        SpanMath.Mean(Current.Mean, other.Mean);
        SpanMath.Mean(Current.Covariance, other.Covariance);
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

        // Most weights of a step are zero, and most components stay as they are but for their noise: only the others are worked out.
        double[] mean = Current.Mean, p = Current.Covariance;
        var moved = List(A, B, d, m);
        for (var r = 0; r < moved; r++)
        {
            var row = _work.AsSpan(r * n, n);
            row.Clear();
            var sum = offset[_moved[r]];
            for (var k = _start[r]; k < _start[r + 1]; k++)
            {
                sum += _weight[k] * mean[_column[k]];
                SpanMath.Add(row, p.AsSpan(_column[k] * n, n), _weight[k]);
            }

            _gain[r] = sum;
        }

        for (int i = 0, r = 0; i < d; i++)
        {
            if (r < moved && _moved[r] == i) mean[i] = _gain[r++];
            else mean[i] += offset[i];
        }

        for (var r = 0; r < moved; r++)
        {
            var row = _work.AsSpan(r * n, n);
            row.CopyTo(p.AsSpan(_moved[r] * n, n));
            for (int j = 0, at = _moved[r]; j < row.Length; j++, at += n) p[at] = row[j];
        }

        for (var r = 0; r < moved; r++)
        {
            for (var q = 0; q <= r; q++)
            {
                var sum = 0.0;
                for (var k = _start[q]; k < _start[q + 1]; k++) sum += _work[(r * n) + _column[k]] * _weight[k];
                p[(_moved[r] * n) + _moved[q]] = p[(_moved[q] * n) + _moved[r]] = sum;
            }
        }

        for (var i = 0; i < d; i++) p[i * (n + 1)] += sd[i] * sd[i];
    }

    /// <summary>Lists the components that do not just stay, and the weights of each; returns how many they are.</summary>
    private int List(ReadOnlySpan<double> A, ReadOnlySpan<double> B, int d, int m)
    {
        int moved = 0, count = 0;
        for (var i = 0; i < d; i++)
        {
            var first = count;
            count = SpanMath.NonZero(A.Slice(i * d, d), 0, _column, _weight, count);
            count = SpanMath.NonZero(B.Slice(i * m, m), d, _column, _weight, count);
            if (count == first + 1 && _column[first] == i && _weight[first] == 1)
            {
                count = first;
                continue;
            }

            _start[moved] = first;
            _moved[moved++] = i;
        }

        _start[moved] = count;
        return moved;
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
            SpanMath.Add(_gain, Current.Covariance.AsSpan(at * n, n), term.Weight);      // symmetric: a row is a column
        }

        foreach (var term in terms) v += term.Weight * _gain[Current.Position(term)];
        return (eta, Math.Max(0, v));
    }

    private void Renew(double slope, double curvature)
    {
        SpanMath.Add(Current.Mean, _gain, slope);
        var root = Math.Sqrt(-curvature);
        for (var i = 0; i < _gain.Length; i++) _gain[i] *= root;
        SpanMath.LessOuter(Current.Covariance, _gain);
    }

    private void CheckShape(GaussianState other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.StateSize != Current.StateSize || other.ConstantCount != Current.ConstantCount)
            throw new ArgumentException(ErrorText.PassShape(other.StateSize, other.ConstantCount, Current.StateSize, Current.ConstantCount), nameof(other));
    }

    private static void Check(string what, ReadOnlySpan<double> values, int wanted)
    {
        if (values.Length != wanted) throw new ArgumentException(ErrorText.Length(what, wanted, values.Length));
        if (SpanMath.AllFinite(values)) return;
        foreach (var x in values)
        {
            if (!double.IsFinite(x)) throw new ArgumentException(ErrorText.NotFinite(what, x));
        }
    }
}
