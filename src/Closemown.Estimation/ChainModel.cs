namespace Closemown.Estimation;

/// <summary>States x₀ … x_T along a chain, constants θ, and factors on linear predictors of them.</summary>
/// <remarks>
/// Every factor sees one predictor η = Σ w·u − offset over at most two neighbouring states and any constants. A transition is
/// d Gaussian factors on x_t − A x_{t−1} − B θ − offset; a starting value is one Gaussian factor. Normalised so, the
/// evidence comes out as log p(readings). The model grows, or goes back to a <see cref="Mark"/>; it is not safe for writing from several threads.
/// </remarks>
public sealed class ChainModel
{
    private readonly string[] _states;
    private readonly string[] _constants;

    /// <summary>An empty model; the counts give d and m.</summary>
    /// <param name="stateNames">A name for each component of a state, used in messages.</param>
    /// <param name="constantNames">A name for each constant.</param>
    /// <exception cref="ArgumentException">There is neither a state component nor a constant.</exception>
    public ChainModel(IReadOnlyList<string> stateNames, IReadOnlyList<string> constantNames)
    {
        ArgumentNullException.ThrowIfNull(stateNames);
        ArgumentNullException.ThrowIfNull(constantNames);
        if (stateNames.Count + constantNames.Count == 0) throw new ArgumentException("A model needs a state component or a constant.", nameof(stateNames));
        _states = [.. stateNames];
        _constants = [.. constantNames];
    }

    /// <summary>Components of a state, d.</summary>
    public int StateSize => _states.Length;

    /// <summary>Number of constants, m.</summary>
    public int ConstantCount => _constants.Length;

    /// <summary>Number of states so far (T + 1).</summary>
    public int StepCount { get; private set; }

    /// <summary>Number of factors so far.</summary>
    public int FactorCount => Rows.Count;

    /// <summary>Names of the state's components.</summary>
    public IReadOnlyList<string> StateNames => _states;

    /// <summary>Names of the constants.</summary>
    public IReadOnlyList<string> ConstantNames => _constants;

    internal FactorRows Rows { get; } = new();

    internal int IntervalCount { get; private set; }

    /// <summary>Adds a state; returns its step: 0, 1, 2, …</summary>
    public int AddStep() => StepCount++;

    /// <summary>Adds −η²/2sd² − log(sd·√2π) with η = Σ w·u − offset.</summary>
    /// <returns>The factor's index.</returns>
    /// <exception cref="ArgumentException">No term; a weight or the offset is not finite; a step, component or constant does not exist; steps are not neighbours.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite.</exception>
    public int AddGaussian(ReadOnlySpan<Term> terms, double offset, double sd) => Add(terms, offset, 0, 0, sd, false, 0);

    /// <summary>Adds log(Φ((high − η)/sd) − Φ((low − η)/sd)): the predictor, read with spread sd, lay between the limits.</summary>
    /// <param name="terms">The predictor's terms.</param>
    /// <param name="offset">Taken off the predictor.</param>
    /// <param name="low">The low limit, −infinity for none.</param>
    /// <param name="high">The high limit, infinity for none.</param>
    /// <param name="sd">The reading's spread, in the predictor's unit.</param>
    /// <param name="group">Which of <see cref="SolveOptions.SpreadByGroup"/> scales the spread; from 0.</param>
    /// <param name="shared">The share of its variance, 0 to below 1, that the reading has in common with others of the very same predictor, group and kin; counted in moment matching with joined repeats only.</param>
    /// <param name="kin">Tells readings of one predictor and group apart that share no error.</param>
    /// <returns>The factor's index.</returns>
    /// <exception cref="ArgumentException">As for a Gaussian; low is not below high; neither limit is finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite; the group is negative; the shared part is not from 0 to below 1.</exception>
    public int AddInterval(ReadOnlySpan<Term> terms, double offset, double low, double high, double sd, int group = 0, double shared = 0, int kin = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        if (!(shared >= 0 && shared < 1)) throw new ArgumentOutOfRangeException(nameof(shared), shared, ErrorText.Shared);
        if (!(low < high)) throw new ArgumentException(ErrorText.Limits(low, high), nameof(low));
        if (double.IsInfinity(low) && double.IsInfinity(high)) throw new ArgumentException(ErrorText.NoLimit, nameof(low));
        var index = Add(terms, offset, low, high, sd, true, group, shared, kin);
        IntervalCount++;
        return index;
    }

    /// <summary>Adds an ordered category: the interval between cut-points category − 1 and category, open at the ends.</summary>
    /// <param name="terms">The predictor's terms.</param>
    /// <param name="offset">Taken off the predictor.</param>
    /// <param name="cutPoints">Rising, in the predictor's unit.</param>
    /// <param name="category">The category read, from 0.</param>
    /// <param name="sd">The reading's spread, in the predictor's unit.</param>
    /// <param name="group">Which of <see cref="SolveOptions.SpreadByGroup"/> scales the spread; from 0.</param>
    /// <param name="shared">The share of its variance, 0 to below 1, that the reading has in common with others of the very same predictor, group and kin; counted in moment matching with joined repeats only.</param>
    /// <param name="kin">Tells readings of one predictor and group apart that share no error.</param>
    /// <returns>The factor's index.</returns>
    /// <exception cref="ArgumentException">As for an interval; the cut-points do not rise or are missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">sd is not positive and finite; the category does not exist; the group is negative; the shared part is not from 0 to below 1.</exception>
    public int AddCategory(ReadOnlySpan<Term> terms, double offset, ReadOnlySpan<double> cutPoints, int category, double sd, int group = 0, double shared = 0, int kin = 0)
    {
        CheckCuts(cutPoints);
        if ((uint)category > (uint)cutPoints.Length)
            throw new ArgumentOutOfRangeException(nameof(category), category, ErrorText.Category(category, cutPoints.Length + 1));
        var low = category == 0 ? double.NegativeInfinity : cutPoints[category - 1];
        var high = category == cutPoints.Length ? double.PositiveInfinity : cutPoints[category];
        return AddInterval(terms, offset, low, high, sd, group, shared, kin);
    }

    /// <summary>The place the model has grown to, to go <see cref="BackTo"/> later.</summary>
    public ChainMark Mark() => new(StepCount, FactorCount, IntervalCount);

    /// <summary>Drops every step and factor added after the mark, so that others can be added in their place.</summary>
    /// <remarks>What is added again gives the same bits as in a model built afresh. Posteriors made before are not touched.</remarks>
    /// <exception cref="ArgumentException">The mark lies ahead of the model: it is another model's, or the model went back further meanwhile.</exception>
    public void BackTo(ChainMark mark)
    {
        if (mark.Steps > StepCount || mark.Factors > FactorCount || mark.Intervals > IntervalCount)
            throw new ArgumentException(ErrorText.MarkAhead, nameof(mark));
        (StepCount, IntervalCount) = (mark.Steps, mark.Intervals);
        Rows.BackTo(mark.Factors);
    }

    internal static void CheckCuts(ReadOnlySpan<double> cutPoints)
    {
        for (var k = 0; k < cutPoints.Length; k++)
        {
            if (!double.IsFinite(cutPoints[k])) throw new ArgumentException(ErrorText.NotFinite("A cut-point", cutPoints[k]), nameof(cutPoints));
            if (k > 0 && !(cutPoints[k] > cutPoints[k - 1])) throw new ArgumentException(ErrorText.Cuts(cutPoints[k - 1], cutPoints[k]), nameof(cutPoints));
        }
    }

    /// <summary>Whether a weight beside a spread stays within what can be squared and summed.</summary>
    internal static bool Holds(double weight, double sd) => weight == 0 || Math.Abs(weight / sd) is > 1e-140 and < 1e140;

    private int Add(ReadOnlySpan<Term> terms, double offset, double low, double high, double sd, bool interval, int group, double shared = 0, int kin = 0)
    {
        if (!(sd > 0 && double.IsFinite(sd))) throw new ArgumentOutOfRangeException(nameof(sd), sd, ErrorText.Spread(sd));
        if (!double.IsFinite(offset)) throw new ArgumentException(ErrorText.NotFinite("The offset", offset), nameof(offset));
        Span<int> local = terms.Length <= 64 ? stackalloc int[64] : new int[terms.Length];
        Span<double> weight = terms.Length <= 64 ? stackalloc double[64] : new double[terms.Length];
        var count = Predictor.ToRow(terms, StateSize, ConstantCount, StepCount, local, weight, out var step);
        if (count == 0) throw new ArgumentException(ErrorText.NoTerm, nameof(terms));
        for (var p = 0; p < count; p++)
        {
            if (!Holds(weight[p], sd)) throw new ArgumentException(ErrorText.TooSharp(weight[p], sd), nameof(terms));
        }

        return Rows.Add(step, local[..count], weight[..count], offset, low, high, sd, interval, group, shared, kin);
    }
}
