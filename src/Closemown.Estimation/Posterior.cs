namespace Closemown.Estimation;

/// <summary>What the entries say of every state and constant: means, variances, and covariances of neighbours and with the constants.</summary>
/// <remarks>Unit-free: means have the unknown's unit, covariances the product of two. It does not change after it is made.</remarks>
public sealed class Posterior
{
    private readonly double[] _mean;
    private readonly KeptCovariance _sigma;
    private readonly IReadOnlyList<string> _states;
    private readonly IReadOnlyList<string> _constants;

    internal Posterior(ChainModel model, Workspace w, EstimateKind kind, string? remark, int newtonSteps, int sweeps, double logEvidence)
    {
        (_states, _constants) = (model.StateNames, model.ConstantNames);
        (Kind, Remark, NewtonSteps, Sweeps, LogEvidence) = (kind, remark, newtonSteps, sweeps, logEvidence);
        _mean = [.. w.U];
        Sites = kind == EstimateKind.ExpectationPropagation ? new(model, w) : null;
        _sigma = new(w.Chain);
    }

    /// <summary>False when a limit was hit on the way; <see cref="Remark"/> then says which.</summary>
    public bool Settled => Remark is null;

    /// <summary>The form that is shown.</summary>
    public EstimateKind Kind { get; }

    /// <summary>In words what did not settle, or null.</summary>
    public string? Remark { get; }

    /// <summary>Newton steps taken.</summary>
    public int NewtonSteps { get; }

    /// <summary>Moment-matching sweeps taken.</summary>
    public int Sweeps { get; }

    /// <summary>log p(readings), when all other Gaussian factors are normalised starting values and transitions.</summary>
    public double LogEvidence { get; }

    /// <summary>Number of states.</summary>
    public int StepCount => _sigma.Steps;

    /// <summary>Components of a state.</summary>
    public int StateSize => _sigma.D;

    /// <summary>Number of constants.</summary>
    public int ConstantCount => _sigma.M;

    internal double[] Mean => _mean;

    internal Sites? Sites { get; }

    /// <summary>The variance of a factor's predictor, whose steps must be among these.</summary>
    internal double VarianceOf(FactorRows rows, int k) =>
        _sigma.Quadratic(rows.Step[k], rows.Local.AsSpan(rows.Start[k], rows.Start[k + 1] - rows.Start[k]), rows.Weight.AsSpan(rows.Start[k]));

    /// <summary>Mean of component i at a step.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step or component does not exist (all accessors alike).</exception>
    public double StateMean(int step, int i) => _mean[(Step(step) * StateSize) + Component(i)];

    /// <summary>Variance of component i at a step.</summary>
    public double StateVariance(int step, int i) => StateCovariance(step, i, i);

    /// <summary>Covariance of components i and j at a step.</summary>
    public double StateCovariance(int step, int i, int j) => _sigma.Of(Step(step), Component(i), Component(j));

    /// <summary>Covariance of component i at a step with component j at the next step.</summary>
    public double NeighbourCovariance(int step, int i, int j)
    {
        Step(step + 1);
        return _sigma.Of(Step(step), Component(i), StateSize + Component(j));
    }

    /// <summary>Covariance of component i at a step with constant j.</summary>
    public double StateConstantCovariance(int step, int i, int j) =>
        _sigma.Of(Step(step), Component(i), (2 * StateSize) + Constant(j));

    /// <summary>Mean of constant j.</summary>
    public double ConstantMean(int j) => _mean[(StepCount * StateSize) + Constant(j)];

    /// <summary>Variance of constant j.</summary>
    public double ConstantVariance(int j) => ConstantCovariance(j, j);

    /// <summary>Covariance of constants i and j.</summary>
    public double ConstantCovariance(int i, int j) => _sigma.OfConstants(Constant(i), Constant(j));

    /// <summary>Mean and variance of η = Σ w·u − offset over at most two neighbouring states and any constants.</summary>
    /// <exception cref="ArgumentException">A term does not exist, or the steps are not neighbours.</exception>
    public (double Mean, double Variance) Predict(ReadOnlySpan<Term> terms, double offset = 0)
    {
        Span<int> local = terms.Length <= 64 ? stackalloc int[64] : new int[terms.Length];
        Span<double> weight = terms.Length <= 64 ? stackalloc double[64] : new double[terms.Length];
        int d = StateSize;
        var count = Predictor.ToRow(terms, d, ConstantCount, StepCount, local, weight, out var step);
        var mean = -offset;
        for (var p = 0; p < count; p++)
        {
            mean += weight[p] * _mean[local[p] < 2 * d ? (step * d) + local[p] : (StepCount * d) + local[p] - (2 * d)];
        }

        return (mean, Math.Max(0, _sigma.Quadratic(step, local[..count], weight)));
    }

    /// <summary>The joint Gaussian of the last state and the constants.</summary>
    /// <exception cref="InvalidOperationException">There is no step.</exception>
    public GaussianState LastState() => StateAt(StepCount - 1);

    /// <summary>The joint Gaussian of the state at a step and the constants.</summary>
    /// <exception cref="InvalidOperationException">There is no step.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The step does not exist.</exception>
    public GaussianState StateAt(int step)
    {
        if (StepCount == 0) throw new InvalidOperationException(ErrorText.NoStep);
        int d = StateSize, m = ConstantCount, n = d + m;
        Step(step);
        var mean = new double[n];
        var covariance = new double[n * n];
        for (var i = 0; i < d; i++)
        {
            mean[i] = StateMean(step, i);
            for (var j = 0; j < d; j++) covariance[(i * n) + j] = StateCovariance(step, i, j);
            for (var j = 0; j < m; j++) covariance[(i * n) + d + j] = covariance[((d + j) * n) + i] = StateConstantCovariance(step, i, j);
        }

        for (var i = 0; i < m; i++)
        {
            mean[d + i] = ConstantMean(i);
            for (var j = 0; j < m; j++) covariance[((d + i) * n) + d + j] = ConstantCovariance(i, j);
        }

        return new GaussianState(_states, _constants, mean, covariance);
    }

    private int Step(int step) => (uint)step < (uint)StepCount ? step
        : throw new ArgumentOutOfRangeException(nameof(step), step, ErrorText.StepOutside(step, StepCount));

    private int Component(int i) => (uint)i < (uint)StateSize ? i
        : throw new ArgumentOutOfRangeException(nameof(i), i, ErrorText.ComponentOutside(i, StateSize));

    private int Constant(int j) => (uint)j < (uint)ConstantCount ? j
        : throw new ArgumentOutOfRangeException(nameof(j), j, ErrorText.ConstantOutside(j, ConstantCount));
}
