using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>One-pass beliefs side by side: one for each factor of scatter of each person who reads the gauge.</summary>
/// <remarks>All but coarse standing heights is Gaussian, so a pass equals the solver at the last state, and its evidence is exact.</remarks>
internal sealed class RunningHeight
{
    private readonly List<Hand> hands;
    private readonly IReadOnlyList<double> factors;
    private readonly Prior? told;

    public RunningHeight(GaussianState start, IReadOnlyList<double> factors, Prior? told)
    {
        (this.factors, this.told) = (factors, told);
        hands = [new Hand(null, start, factors, told)];
    }

    private RunningHeight(RunningHeight other)
    {
        (factors, told, Main) = (other.factors, other.told, other.Main);
        hands = [.. other.hands.Select(h => new Hand(h))];
    }

    public RunningHeight Copy() => new(this);

    public double Factor(int factor) => factors[factor];

    /// <summary>The number of the person who read most.</summary>
    public int Main { get; private set; }

    /// <summary>The belief under the likeliest scatter of that person.</summary>
    public GaussianState Current => hands[Main].Passes[hands[Main].Best].Current;

    /// <summary>The likeliest factor of each person, by number.</summary>
    public double[] BestFactors => [.. hands.Select(h => factors[h.Best])];

    /// <summary>Probability of each factor of a person.</summary>
    public double[] Weights(int hand) => hands[hand].Weights();

    /// <summary>Logarithm of the evidence so far, summed over the factors of the main person, up to a constant.</summary>
    public double LogEvidence
    {
        get
        {
            var log = hands[Main].Log;
            var top = log[hands[Main].Best];
            return top + Math.Log(log.Sum(l => Math.Exp(l - top)));
        }
    }

    public IEnumerable<ReaderScatter> People(double sdMm) =>
        hands.Where(h => h.By is not null).Select(h => new ReaderScatter(h.By!, h.Readings, [.. factors.Select(f => f * sdMm)], h.Weights()));

    /// <summary>The number of a person; a new one starts from what is known so far.</summary>
    public int HandOf(string by)
    {
        var i = hands.FindIndex(h => h.By == by);
        if (i >= 0) return i;
        if (hands[0].By is null)
        {
            hands[0].By = by;
            return 0;
        }
        hands.Add(new Hand(by, Current, factors, told));
        return hands.Count - 1;
    }

    public void Move(HeightStep step)
    {
        foreach (var hand in hands)
        {
            foreach (var pass in hand.Passes) step.MoveForward(pass);
        }
    }

    /// <summary>Probability of a reading at least this odd, over the person's factors.</summary>
    public double Surprise(HeightReading read)
    {
        var hand = hands[read.Hand < 0 ? Main : read.Hand];
        var weights = hand.Weights();
        var p = 0.0;
        for (var g = 0; g < factors.Count; g++) p += weights[g] * read.Surprise(hand.Passes[g].Current, read.Hand < 0 ? 1 : factors[g]);
        return Math.Min(1, p);
    }

    public void Observe(HeightReading read)
    {
        var best = BestFactors;
        for (var i = 0; i < hands.Count; i++)
        {
            for (var g = 0; g < factors.Count; g++)
                hands[i].Log[g] += read.Observe(hands[i].Passes[g], read.Hand < 0 ? 1 : i == read.Hand ? factors[g] : best[read.Hand]);
        }
        if (read.Hand >= 0) Count(read.Hand, 1);
    }

    /// <summary>Repeats of one setting that tell the scatter alone: a study's readings less their own means.</summary>
    /// <param name="hand">The person.</param>
    /// <param name="squares">Sum of squares about the means, mm².</param>
    /// <param name="freedom">Readings less means.</param>
    /// <param name="sdMm">Scatter of factor 1, mm.</param>
    public void ObserveRepeats(int hand, double squares, int freedom, double sdMm)
    {
        for (var g = 0; g < factors.Count; g++)
        {
            var s = factors[g] * sdMm;
            hands[hand].Log[g] += (-freedom * Math.Log(s)) - (squares / (2 * s * s));
        }
        Count(hand, freedom);
    }

    private void Count(int hand, int readings)
    {
        hands[hand].Readings += readings;
        if (hands[hand].Readings > hands[Main].Readings) Main = hand;
    }

    private sealed class Hand
    {
        public Hand(string? by, GaussianState start, IReadOnlyList<double> factors, Prior? told)
        {
            By = by;
            Passes = [.. factors.Select(_ => new ForwardPass(start))];
            Log = [.. factors.Select(f => GaugeScatter.LogPrior(f, told))];
        }

        public Hand(Hand other)
        {
            (By, Readings) = (other.By, other.Readings);
            Passes = Array.ConvertAll(other.Passes, p => p.Copy());
            Log = [.. other.Log];
        }

        public string? By;
        public readonly ForwardPass[] Passes;
        public readonly double[] Log;
        public int Readings;

        public int Best => Array.IndexOf(Log, Log.Max());

        public double[] Weights() => LogWeights.Shares(Log);
    }
}
