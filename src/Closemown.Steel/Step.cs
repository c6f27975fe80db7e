using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>One step of the chain: what an action does to the state, linear in state and constants, with independent noise.</summary>
/// <remarks>x' = A x + B θ + offset + noise; A 7×7, B 7×15, row by row. Starts as "nothing happens".</remarks>
internal sealed class Step
{
    private const int D = Layout.StateSize;
    private const int M = Layout.ConstantCount;
    private readonly double[] a = new double[D * D];
    private readonly double[] b = new double[D * M];
    private readonly double[] offset = new double[D];
    private readonly double[] variance = new double[D];

    public Step()
    {
        for (var i = 0; i < D; i++)
        {
            a[(i * D) + i] = 1;
            variance[i] = SteelDefaults.StillNoiseUm * SteelDefaults.StillNoiseUm;
        }
    }

    /// <summary>How much of the state before stays; 0 forgets it.</summary>
    public Step Keep(int state, double share)
    {
        a[(state * D) + state] = share;
        return this;
    }

    /// <summary>Takes another state's value before the step instead of its own.</summary>
    public Step From(int state, int other)
    {
        a[(state * D) + state] = 0;
        a[(state * D) + other] = 1;
        return this;
    }

    public Step Constant(int state, int constant, double weight)
    {
        b[(state * M) + constant] += weight;
        return this;
    }

    public Step Add(int state, double um)
    {
        offset[state] += um;
        return this;
    }

    public Step Noise(int state, double sdUm)
    {
        variance[state] += sdUm * sdUm;
        return this;
    }

    /// <summary>Forgets a state and gives it a new mean and spread.</summary>
    public Step Reset(int state, Entries.Prior p) => Keep(state, 0).Add(state, p.Mean).Noise(state, p.Sd);

    /// <summary>Spread of the noise on a state, µm.</summary>
    public double SdUm(int state) => Math.Sqrt(variance[state]);

    /// <summary>What is added to a state, µm.</summary>
    public double OffsetUm(int state) => offset[state];

    public void MoveForward(ForwardPass pass)
    {
        Span<double> sd = stackalloc double[D];
        for (var i = 0; i < D; i++) sd[i] = Math.Sqrt(variance[i]);
        pass.Move(a, b, offset, sd);
    }

    /// <summary>Adds the step to a chain: one factor for each component of the state, in order.</summary>
    public void AddTo(ChainModel chain)
    {
        var t = chain.AddStep();
        Span<Term> terms = stackalloc Term[D + D + M];
        for (var i = 0; i < D; i++)
        {
            var n = 0;
            terms[n++] = Term.State(t, i, 1);
            for (var j = 0; j < D; j++)
            {
                if (a[(i * D) + j] != 0) terms[n++] = Term.State(t - 1, j, -a[(i * D) + j]);
            }
            for (var j = 0; j < M; j++)
            {
                if (b[(i * M) + j] != 0) terms[n++] = Term.Constant(j, -b[(i * M) + j]);
            }
            chain.AddGaussian(terms[..n], offset[i], Math.Sqrt(variance[i]));
        }
    }
}
