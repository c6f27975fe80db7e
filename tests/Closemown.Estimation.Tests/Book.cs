namespace Closemown.Estimation.Tests;

/// <summary>A small model in plain parts, from which the chain, the forward pass and dense matrices are all built.</summary>
internal sealed class Book
{
    internal sealed record Reading(Term[] Terms, double Offset, double Low, double High, double Sd, bool Interval);

    internal sealed record Move(double[] A, double[] B, double[] Offset, double[] Sd);

    public required int D;
    public required int M;
    public double[] StartMean = [];
    public double[] StartSd = [];
    public double[] ConstantMean = [];
    public double[] ConstantSd = [];

    /// <summary>Moves[t] leads to state t + 1.</summary>
    public List<Move> Moves = [];

    /// <summary>Readings in the order of their last step.</summary>
    public List<Reading> Readings = [];

    public int Steps => Moves.Count + 1;

    public int Size => (Steps * D) + M;

    public static Book Random(int d, int m, int steps, int seed, double intervals = 0.6, double wild = 1, int perStep = 2)
    {
        var r = new Random(seed);
        double Normal() => NormalMath.InversePhi((r.NextDouble() * 0.999998) + 1e-6);
        var book = new Book
        {
            D = d,
            M = m,
            StartMean = [.. Enumerable.Range(0, d).Select(_ => 5 * Normal())],
            StartSd = [.. Enumerable.Range(0, d).Select(_ => 0.5 + (3 * r.NextDouble()))],
            ConstantMean = [.. Enumerable.Range(0, m).Select(_ => Normal())],
            ConstantSd = [.. Enumerable.Range(0, m).Select(_ => 0.2 + r.NextDouble())],
        };
        var x = book.StartMean.Zip(book.StartSd, (a, b) => a + (b * Normal())).ToArray();
        var theta = book.ConstantMean.Zip(book.ConstantSd, (a, b) => a + (b * Normal())).ToArray();
        for (var t = 0; t < steps; t++)
        {
            if (t > 0)
            {
                var a = Enumerable.Range(0, d * d).Select(i => i / d == i % d ? 0.7 + (0.3 * r.NextDouble()) : 0.1 * Normal() / d).ToArray();
                var b = Enumerable.Range(0, d * m).Select(_ => r.Next(2) * Normal()).ToArray();
                var offset = Enumerable.Range(0, d).Select(_ => 0.3 * Normal()).ToArray();
                var sd = Enumerable.Range(0, d).Select(_ => 0.2 + r.NextDouble()).ToArray();
                book.Moves.Add(new(a, b, offset, sd));
                x = [.. Enumerable.Range(0, d).Select(i => Enumerable.Range(0, d).Sum(k => a[(i * d) + k] * x[k])
                    + Enumerable.Range(0, m).Sum(k => b[(i * m) + k] * theta[k]) + offset[i] + (sd[i] * Normal()))];
            }

            for (var k = r.Next(perStep + 1); k > 0; k--)
            {
                List<Term> terms = [];
                for (var i = 0; i < d; i++)
                {
                    if (i == 0 || r.Next(2) == 0) terms.Add(Term.State(t, i, Normal()));
                }

                if (m > 0 && r.Next(3) == 0) terms.Add(Term.Constant(r.Next(m), Normal()));
                var eta = terms.Sum(p => p.Weight * (p.IsConstant ? theta[p.Index] : x[p.Index]));
                var sd = 0.3 + r.NextDouble();
                var read = eta + (sd * wild * Normal());
                if (r.NextDouble() >= intervals)
                {
                    book.Readings.Add(new([.. terms], read, 0, 0, sd, false));
                    continue;
                }

                var (low, high) = r.Next(3) switch
                {
                    0 => (read - r.NextDouble(), double.PositiveInfinity),
                    1 => (double.NegativeInfinity, read + r.NextDouble()),
                    _ => (read - r.NextDouble() - 0.01, read + r.NextDouble()),
                };
                var shift = Normal();
                book.Readings.Add(new([.. terms], shift, low - shift, high - shift, sd, true));
            }
        }

        return book;
    }

    public IEnumerable<Reading> All()
    {
        for (var i = 0; i < D; i++) yield return new([Term.State(0, i, 1)], StartMean[i], 0, 0, StartSd[i], false);
        for (var j = 0; j < M; j++) yield return new([Term.Constant(j, 1)], ConstantMean[j], 0, 0, ConstantSd[j], false);
        for (var t = 1; t < Steps; t++)
        {
            var move = Moves[t - 1];
            for (var i = 0; i < D; i++)
            {
                List<Term> terms = [Term.State(t, i, 1)];
                for (var k = 0; k < D; k++) terms.Add(Term.State(t - 1, k, -move.A[(i * D) + k]));
                for (var k = 0; k < M; k++) terms.Add(Term.Constant(k, -move.B[(i * M) + k]));
                yield return new([.. terms], move.Offset[i], 0, 0, move.Sd[i], false);
            }
        }

        foreach (var reading in Readings) yield return reading;
    }

    public ChainModel Chain() => Chain(Steps, All());

    public ChainModel Chain(int steps, IEnumerable<Reading> factors)
    {
        var chain = new ChainModel([.. Enumerable.Range(0, D).Select(i => $"x{i}")], [.. Enumerable.Range(0, M).Select(j => $"c{j}")]);
        for (var t = 0; t < steps; t++) chain.AddStep();
        foreach (var f in factors) Add(chain, f);
        return chain;
    }

    public static void Add(ChainModel chain, Reading f)
    {
        if (f.Interval) chain.AddInterval(f.Terms, f.Offset, f.Low, f.High, f.Sd);
        else chain.AddGaussian(f.Terms, f.Offset, f.Sd);
    }

    /// <summary>The book with nothing after a step.</summary>
    public Book Until(int steps) => new()
    {
        D = D,
        M = M,
        StartMean = StartMean,
        StartSd = StartSd,
        ConstantMean = ConstantMean,
        ConstantSd = ConstantSd,
        Moves = [.. Moves.Take(steps - 1)],
        Readings = [.. Readings.Where(r => r.Terms.Max(t => t.Step) < steps)],
    };

    public int Position(Term t) => t.IsConstant ? (Steps * D) + t.Index : (t.Step * D) + t.Index;

    public static double[] Means(Posterior p)
    {
        var u = new double[(p.StepCount * p.StateSize) + p.ConstantCount];
        for (var i = 0; i < p.StepCount * p.StateSize; i++) u[i] = p.StateMean(i / p.StateSize, i % p.StateSize);
        for (var j = 0; j < p.ConstantCount; j++) u[(p.StepCount * p.StateSize) + j] = p.ConstantMean(j);
        return u;
    }

    public static double[] Sds(Posterior p)
    {
        var u = new double[(p.StepCount * p.StateSize) + p.ConstantCount];
        for (var i = 0; i < p.StepCount * p.StateSize; i++) u[i] = Math.Sqrt(p.StateVariance(i / p.StateSize, i % p.StateSize));
        for (var j = 0; j < p.ConstantCount; j++) u[(p.StepCount * p.StateSize) + j] = Math.Sqrt(p.ConstantVariance(j));
        return u;
    }
}
