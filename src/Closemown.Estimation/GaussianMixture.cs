namespace Closemown.Estimation;

/// <summary>One Gaussian with the mean and covariance of a mixture of several.</summary>
public static class GaussianMixture
{
    /// <summary>That Gaussian; a single part is returned as it is.</summary>
    /// <param name="parts">At least one belief over the same unknowns, with weights that sum to 1.</param>
    public static GaussianState Of(IReadOnlyList<(GaussianState Belief, double Weight)> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var first = parts[0].Belief;
        if (parts.Count == 1) return first;
        var n = first.Size;
        var mean = new double[n];
        var covariance = new double[n * n];
        foreach (var (belief, weight) in parts)
        {
            for (var i = 0; i < n; i++) mean[i] += weight * belief.Mean[i];
        }
        foreach (var (belief, weight) in parts)
        {
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                    covariance[(i * n) + j] += weight * (belief.Covariance[(i * n) + j] + ((belief.Mean[i] - mean[i]) * (belief.Mean[j] - mean[j])));
            }
        }
        return new(first.StateNames, first.ConstantNames, mean, covariance);
    }
}
