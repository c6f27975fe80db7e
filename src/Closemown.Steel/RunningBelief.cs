using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>One-pass beliefs side by side: one for each factor of scatter of each person who reads.</summary>
/// <remarks>They weigh the factors by what each said before the reading was seen. What people see comes from the whole chain.</remarks>
internal sealed class RunningBelief
{
    private readonly List<Hand> hands;
    private readonly double[] factors;
    private readonly ForwardPass back;
    private int main;

    public RunningBelief(GaussianState start, IReadOnlyList<double> factors)
    {
        this.factors = [.. factors];
        back = new ForwardPass(start);
        hands = [new Hand(null, start, this.factors)];
    }

    private RunningBelief(RunningBelief other)
    {
        factors = other.factors;
        back = new ForwardPass(other.Current);
        hands = [.. other.hands.Select(h => new Hand(h))];
        main = other.main;
    }

    /// <summary>The belief under the likeliest scatter of the person who read most.</summary>
    public GaussianState Current => hands[main].Passes[hands[main].Best].Current;

    /// <summary>The likeliest factor of each person, by number.</summary>
    public double[] BestFactors => [.. hands.Select(h => factors[h.Best])];

    public int FactorCount => factors.Length;

    public double Factor(int factor) => factors[factor];

    /// <summary>Logarithm of the weight of a person's factor: its prior, and what it said of all readings so far.</summary>
    public double LogEvidence(int hand, int factor) => hands[hand].Log[factor];

    /// <summary>A person's likeliest factor.</summary>
    public int Best(int hand) => hands[hand].Best;

    public int HandCount => hands.Count;

    /// <summary>The number of the person who read most.</summary>
    public int Main => main;

    public GaussianState At(int hand, int factor) => hands[hand].Passes[factor].Current;

    public IEnumerable<PersonScatter> People => hands.Where(h => h.By is not null).Select(h => new PersonScatter(h.By!, h.Readings, factors, h.Weights()));

    /// <summary>Probability of each factor of a person.</summary>
    public double[] Weights(int hand) => hands[hand].Weights();

    public RunningBelief Copy() => new(this);

    public void CopyFrom(RunningBelief other)
    {
        while (hands.Count > other.hands.Count) hands.RemoveAt(hands.Count - 1);
        for (var i = 0; i < other.hands.Count; i++)
        {
            if (i < hands.Count) hands[i].CopyFrom(other.hands[i]);
            else hands.Add(new Hand(other.hands[i]));
        }
        main = other.main;
    }

    /// <summary>The number of a person; a new one starts from what is known so far.</summary>
    public int HandOf(string by)
    {
        for (var i = 0; i < hands.Count; i++)
        {
            if (hands[i].By == by) return i;
        }
        if (hands[0].By is null)
        {
            hands[0].By = by;
            return 0;
        }
        hands.Add(new Hand(by, Current, factors));
        return hands.Count - 1;
    }

    public void Move(Step step)
    {
        foreach (var hand in hands)
        {
            foreach (var pass in hand.Passes) step.MoveForward(pass);
            hand.Firsts.Clear();
        }
    }

    /// <summary>Probability of each category of a reading, over the person's factors.</summary>
    public double[] Probabilities(CheckRead read, int hand, out int seen)
    {
        seen = 0;
        var weights = hands[hand].Weights();
        double[]? all = null;
        for (var g = 0; g < factors.Length; g++)
        {
            var p = hands[hand].Of(read, g, factors[g], out seen);
            all ??= new double[p.Length];
            for (var c = 0; c < p.Length; c++) all[c] += weights[g] * p[c];
        }
        return all!;
    }

    /// <summary>The probability of a repeat as it was read, given those before it, under the likeliest scatter of the person.</summary>
    public double Repeated(CheckRead read, int hand)
    {
        var g = hands[hand].Best;
        var p = hands[hand].Of(read, g, factors[g], out var seen);
        return p[seen];
    }

    public void Observe(List<CheckRead> reads, int by)
    {
        var best = BestFactors;
        for (var i = 0; i < hands.Count; i++)
        {
            for (var g = 0; g < factors.Length; g++)
            {
                var factor = i == by ? factors[g] : best[by];
                hands[i].Log[g] += hands[i].Repeats(reads, g, factor) + BothWays(hands[i].Passes[g], back, reads, factor);
            }
        }
        hands[by].Readings += reads.Count;
        if (hands[by].Readings > hands[main].Readings) main = by;
    }

    /// <summary>Readings of one entry have no order, but one pass needs one: the mean of left to right and right to left favours neither end.</summary>
    /// <returns>Logarithm of the probability of the readings before they were seen.</returns>
    public static double BothWays(ForwardPass pass, ForwardPass back, List<CheckRead> reads, double factor)
    {
        if (reads.Count == 0) return 0;
        if (reads.Count == 1) return reads[0].Observe(pass, factor);
        back.CopyFrom(pass.Current);
        double there = 0, home = 0;
        for (var i = 0; i < reads.Count; i++) there += reads[i].Observe(pass, factor);
        for (var i = reads.Count - 1; i >= 0; i--) home += reads[i].Observe(back, factor);
        pass.MeanWith(back.Current);
        return (there + home) / 2;
    }

    private sealed class Hand
    {
        public Hand(string? by, GaussianState start, double[] factors)
        {
            By = by;
            Passes = Array.ConvertAll(factors, _ => new ForwardPass(start));
            Log = Array.ConvertAll(factors, Scatter.LogPrior);
        }

        public Hand(Hand other)
        {
            (By, Readings) = (other.By, other.Readings);
            Passes = Array.ConvertAll(other.Passes, p => p.Copy());
            Log = [.. other.Log];
            foreach (var (like, at) in other.Firsts) Firsts[like] = [.. at];
        }

        private readonly SharedError error = new();

        /// <summary>What the predictor of each check was before it was first made since the last change, factor by factor.</summary>
        public readonly Dictionary<(string, int, int), (double Mean, double Variance)[]> Firsts = [];

        public string? By;
        public readonly ForwardPass[] Passes;
        public readonly double[] Log;
        public int Readings;

        public int Best
        {
            get
            {
                var best = 0;
                for (var g = 1; g < Log.Length; g++)
                {
                    if (Log[g] > Log[best]) best = g;
                }
                return best;
            }
        }

        /// <summary>The probabilities of a reading before it is seen; of a repeat given those before it.</summary>
        public double[] Of(CheckRead read, int g, double factor, out int seen) =>
            read.Earlier.Count > 0 && Firsts.TryGetValue(read.Like, out var first) ? read.GivenEarlier(error, first[g], factor, out seen) : read.Probabilities(Passes[g], factor, out seen);

        /// <summary>Keeps what first readings were read of, and says by how much repeats are likelier than the pass will take them to be.</summary>
        public double Repeats(List<CheckRead> reads, int g, double factor)
        {
            var more = 0.0;
            foreach (var read in reads)
            {
                if (read.Shared == 0) continue;
                if (read.Earlier.Count == 0)
                {
                    if (!Firsts.TryGetValue(read.Like, out var first)) Firsts[read.Like] = first = new (double, double)[Passes.Length];
                    first[g] = Passes[g].Current.Predict(read.Check.Terms);
                }
                else if (Firsts.ContainsKey(read.Like))
                {
                    var p = Of(read, g, factor, out var seen);
                    more += Math.Log(Math.Max(1e-300, p[seen])) - Math.Log(Math.Max(1e-300, read.Probabilities(Passes[g], factor, out seen)[seen]));
                }
            }
            return more;
        }

        public double[] Weights() => LogWeights.Shares(Log);

        public void CopyFrom(Hand other)
        {
            (By, Readings) = (other.By, other.Readings);
            for (var g = 0; g < Passes.Length; g++)
            {
                Passes[g].CopyFrom(other.Passes[g].Current);
                Log[g] = other.Log[g];
            }
            Firsts.Clear();
            foreach (var (like, at) in other.Firsts) Firsts[like] = [.. at];
        }
    }
}
