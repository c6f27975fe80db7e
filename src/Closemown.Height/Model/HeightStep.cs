using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>One step of the chain: x' = A x + B θ + offset + noise, the noise independent. Starts as "nothing happens".</summary>
internal sealed class HeightStep
{
    private const int D = HeightLayout.StateSize;
    private const int M = HeightLayout.ConstantCount;
    private const double StillMm = 2e-4;                 // what a step cannot move gets a hair of noise, so that the chain stays regular
    private readonly double[] a = new double[D * D];
    private readonly double[] b = new double[D * M];
    private readonly double[] offset = new double[D];
    private readonly double[] variance = new double[D];

    public HeightStep()
    {
        for (var i = 0; i < D; i++)
        {
            a[(i * D) + i] = 1;
            variance[i] = StillMm * StillMm;
        }
    }

    public HeightStep Constant(int state, int constant, double weight)
    {
        b[(state * M) + constant] += weight;
        return this;
    }

    public HeightStep Add(int state, double mm)
    {
        offset[state] += mm;
        return this;
    }

    public HeightStep Noise(int state, double sdMm)
    {
        variance[state] += sdMm * sdMm;
        return this;
    }

    public HeightStep BothSides(double sdMm) => Noise(HeightLayout.Left, sdMm).Noise(HeightLayout.Right, sdMm);

    /// <summary>Forgets a state and gives it a new spread about zero.</summary>
    public HeightStep Renew(int state, double sdMm)
    {
        a[(state * D) + state] = 0;
        return Noise(state, sdMm);
    }

    public double SdMm(int state) => Math.Sqrt(variance[state]);

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
        Span<Term> terms = stackalloc Term[2 + M];
        for (var i = 0; i < D; i++)
        {
            var n = 0;
            terms[n++] = Term.State(t, i, 1);
            if (a[(i * D) + i] != 0) terms[n++] = Term.State(t - 1, i, -a[(i * D) + i]);
            for (var j = 0; j < M; j++)
            {
                if (b[(i * M) + j] != 0) terms[n++] = Term.Constant(j, -b[(i * M) + j]);
            }
            chain.AddGaussian(terms[..n], offset[i], Math.Sqrt(variance[i]));
        }
    }
}
