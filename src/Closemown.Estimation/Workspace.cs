namespace Closemown.Estimation;

/// <summary>Buffers of a solution; hand the same one in again to solve without new memory. Not for two threads at once.</summary>
public sealed class Workspace
{
    internal BlockChain Gaussian { get; } = new();

    /// <summary>Precision, then its factor, then the covariance, each in place of the one before.</summary>
    internal BlockChain Chain { get; } = new();

    internal BlockElimination Elimination { get; } = new();

    internal SelectedInverse Selected { get; } = new();

    /// <summary>Which readings have a pseudo-reading between them.</summary>
    internal SiteGroups Sites { get; } = new();

    internal double[] U = [];
    internal double[] Mode = [];
    internal double[] Gradient = [];
    internal double[] Step = [];
    internal double[] PriorSd = [];
    internal double[] Eta = [];
    internal double[] EtaStep = [];

    /// <summary>Σ log(sd·√2π) of the Gaussian factors.</summary>
    internal double GaussianLogs;
    internal double[] F = [];
    internal double[] F1 = [];
    internal double[] F2 = [];
    internal double[] TrialEta = [];
    internal double[] TrialF = [];
    internal double[] TrialF1 = [];
    internal double[] TrialF2 = [];
    internal double[] SitePrecision = [];
    internal double[] SiteShift = [];
    internal double[] NewPrecision = [];
    internal double[] NewShift = [];

    /// <summary>Spreads by factor: the model's own array unless some are overridden.</summary>
    internal double[] Sd = [];

    /// <summary>Factors that take part, rising: Gaussian ones and intervals.</summary>
    internal int[] GaussianList = [];
    internal int[] IntervalList = [];
    internal int GaussianCount;
    internal int IntervalCount;
    private double[] _ownSd = [];

    internal ReadOnlySpan<int> Gaussians => GaussianList.AsSpan(0, GaussianCount);

    internal ReadOnlySpan<int> Intervals => IntervalList.AsSpan(0, IntervalCount);

    internal int StateCount { get; private set; }

    /// <summary>Makes the spreads a copy that may be written to.</summary>
    internal double[] OwnSd()
    {
        if (Sd == _ownSd) return Sd;
        if (_ownSd.Length < Eta.Length) _ownSd = new double[Eta.Length];
        Sd.AsSpan(0, Math.Min(Sd.Length, _ownSd.Length)).CopyTo(_ownSd);
        return Sd = _ownSd;
    }

    internal void Reset(ChainModel model)
    {
        StateCount = model.StepCount * model.StateSize;
        var n = StateCount + model.ConstantCount;
        if (U.Length != n) (U, Mode, Gradient, Step, PriorSd) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        var k = model.FactorCount;
        if (Eta.Length < k)
        {
            k += k / 4;
            (Eta, EtaStep, F, F1, F2) = (new double[k], new double[k], new double[k], new double[k], new double[k]);
            (GaussianList, IntervalList) = (new int[k], new int[k]);
            (TrialEta, TrialF, TrialF1, TrialF2) = (new double[k], new double[k], new double[k], new double[k]);
            (SitePrecision, SiteShift, NewPrecision, NewShift) = (new double[k], new double[k], new double[k], new double[k]);
        }
    }
}
