namespace Closemown.Estimation;

/// <summary>Weights of rival hypotheses from the logarithms of their evidence.</summary>
public static class LogWeights
{
    /// <summary>Each one's share, 0–1, summing to 1.</summary>
    /// <param name="log">Logarithms of prior × evidence, up to a common constant; at least one finite.</param>
    public static double[] Shares(double[] log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var top = log.Max();
        var w = Array.ConvertAll(log, l => Math.Exp(l - top));
        var sum = w.Sum();
        return Array.ConvertAll(w, x => x / sum);
    }
}
