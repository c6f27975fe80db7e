namespace Closemown.Steel;

/// <summary>How often what was said of the next reading came true: its most probable outcome, by how probable it was said to be.</summary>
public sealed class SaidScore
{
    private static readonly (int InHundred, double From, double To)[] Bins = [(50, 0.375, 0.625), (75, 0.625, 0.825), (90, 0.825, 1.0001)];
    private readonly int[] said = new int[3];
    private readonly int[] came = new int[3];
    private readonly double[] sum = new double[3];

    /// <summary>Counts a reading.</summary>
    /// <param name="probabilities">Of each outcome, before it was seen.</param>
    /// <param name="read">The outcome that came.</param>
    internal void Add(double[] probabilities, int read)
    {
        var likely = Array.IndexOf(probabilities, probabilities.Max());
        var p = probabilities[likely];
        var bin = Array.FindIndex(Bins, b => p >= b.From && p < b.To);
        if (bin < 0) return;
        said[bin]++;
        sum[bin] += p;
        if (likely == read) came[bin]++;
    }

    /// <summary>For what was said with about 50, 75 and 90 in 100: how often it was said, with what probability on average, and how often it came true.</summary>
    public IEnumerable<(int InHundred, int Said, double MeanSaid, int CameTrue)> Rows =>
        Bins.Select((b, i) => (b.InHundred, said[i], said[i] > 0 ? sum[i] / said[i] : double.NaN, came[i]));
}
