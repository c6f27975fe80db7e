namespace Closemown.Height;

/// <summary>The readings of the gauge in the chain, with the spread each counts with under each scatter of the person who read it.</summary>
internal sealed class GaugeSpreads
{
    private const double LeastWeight = 0.05;
    private readonly List<(int Factor, double SdMm, int Hand)> read = [];
    private readonly Dictionary<int, double> settled = [];

    /// <summary>A reading joined the chain.</summary>
    /// <param name="factor">Its place there.</param>
    /// <param name="sdMm">Its spread, mm.</param>
    /// <param name="hand">Who read it.</param>
    public void Add(int factor, double sdMm, int hand) => read.Add((factor, sdMm, hand));

    /// <summary>A doubt was decided: from now on this is the spread of a factor, mm.</summary>
    public void Settle(int factor, double sdMm) => settled[factor] = sdMm;

    /// <summary>The scatters of the main person that are still open, each with its weight and the spreads of the factors under it.</summary>
    public List<(double Weight, Dictionary<int, double> SpreadOf)> Ways(RunningHeight running)
    {
        var weights = running.Weights(running.Main);
        var kept = Enumerable.Range(0, weights.Length).Where(g => weights[g] >= LeastWeight * weights.Max()).ToList();
        var sum = kept.Sum(g => weights[g]);
        return [.. kept.OrderByDescending(g => weights[g]).Select(g => (weights[g] / sum, Spread(g)))];

        Dictionary<int, double> Spread(int g)
        {
            var best = running.BestFactors;
            best[running.Main] = running.Factor(g);
            var spread = new Dictionary<int, double>(settled);
            foreach (var (factor, sd, hand) in read)
            {
                if (best[hand] != 1) spread.TryAdd(factor, sd * best[hand]);
            }
            return spread;
        }
    }
}
