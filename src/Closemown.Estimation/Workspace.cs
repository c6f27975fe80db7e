namespace Closemown.Estimation;

/// <summary>Buffers of a solution; hand the same one in again to solve without new memory. Not for two threads at once.</summary>
public sealed class Workspace
{
    internal BlockChain Gaussian { get; } = new();

    internal BlockChain Precision { get; } = new();

    internal BlockChain Covariance { get; } = new();

    internal BlockElimination Elimination { get; } = new();

    internal SelectedInverse Selected { get; } = new();

    internal double[] U = [];
    internal double[] Mode = [];
    internal double[] Gradient = [];
    internal double[] Step = [];
    internal double[] PriorSd = [];
    internal double[] Eta = [];
    internal double[] EtaStep = [];
    internal double[] F = [];
    internal double[] F1 = [];
    internal double[] F2 = [];
    internal double[] SitePrecision = [];
    internal double[] SiteShift = [];
    internal double[] NewPrecision = [];
    internal double[] NewShift = [];

    internal int StateCount { get; private set; }

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
            (SitePrecision, SiteShift, NewPrecision, NewShift) = (new double[k], new double[k], new double[k], new double[k]);
        }
    }
}
