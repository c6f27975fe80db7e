namespace Closemown.Height;

/// <summary>An odd gauge reading, until a further one tells what it was: chance, a mistaken reading, or a side that moved unseen.</summary>
/// <remarks>Each explanation is a running belief of its own; they are compared by what they said of the readings that followed.</remarks>
internal sealed class GaugeDoubt
{
    /// <summary>A reading less probable than this is odd.</summary>
    public const double OddBelow = 0.005;

    private const double Mistaken = 0.02, Moved = 0.02;  // before anything is seen: assumptions, no source
    private const double MistakenMm = 1, MovedMm = 0.5;
    private const double Enough = 0.8;
    private const int Patience = 4;
    private readonly List<(RunningHeight Belief, double LogPrior, Dictionary<int, double> Spread)> others = [];
    private readonly List<int> odd;
    private int seen;

    /// <param name="before">The belief before the odd reading, after the place for a move.</param>
    /// <param name="reads">The readings of the entry.</param>
    /// <param name="odd">Sides that were odd.</param>
    /// <param name="moveFactor">First factor of the step before the reading.</param>
    /// <param name="readFactors">Factors of the odd readings.</param>
    public GaugeDoubt(RunningHeight before, List<HeightReading> reads, List<int> odd, int moveFactor, List<int> readFactors)
    {
        this.odd = odd;
        var mistaken = before.Copy();
        foreach (var r in reads) mistaken.Observe(odd.Contains(r.Station) ? r with { Sd = MistakenMm, Hand = -1 } : r);
        others.Add((mistaken, Math.Log(Mistaken), readFactors.ToDictionary(f => f, _ => MistakenMm)));
        var moved = before.Copy();
        var jump = new HeightStep();
        foreach (var side in odd) jump.Noise(side, MovedMm);
        moved.Move(jump);
        foreach (var r in reads) moved.Observe(r);
        others.Add((moved, Math.Log(Moved), odd.ToDictionary(side => moveFactor + side, jump.Sd)));
    }

    /// <summary>The explanation that was taken instead of chance; null for chance.</summary>
    public (RunningHeight Belief, Dictionary<int, double> Spread)? Taken { get; private set; }

    public void Move(HeightStep step)
    {
        foreach (var o in others) o.Belief.Move(step);
    }

    public void Observe(List<HeightReading> reads)
    {
        foreach (var o in others)
        {
            foreach (var r in reads) o.Belief.Observe(r);
        }
    }

    /// <summary>Whether the readings now tell which it was.</summary>
    public bool Decided(RunningHeight chance, List<HeightReading> reads)
    {
        if (!reads.Exists(r => odd.Contains(r.Station))) return false;
        seen++;
        double[] log = [chance.LogEvidence + Math.Log(1 - Mistaken - Moved), .. others.Select(o => o.Belief.LogEvidence + o.LogPrior)];
        var top = log.Max();
        var best = Array.IndexOf(log, top);
        if (1 / log.Sum(l => Math.Exp(l - top)) < Enough && seen < Patience) return false;
        if (best > 0) Taken = (others[best - 1].Belief, others[best - 1].Spread);
        return true;
    }
}
