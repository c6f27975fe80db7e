namespace Closemown.Estimation;

/// <summary>One step of a chain: what an action does to the state, linear in state and constants, with independent noise.</summary>
/// <remarks>x' = A x + B θ + offset + noise; A states × states, B states × constants, row by row. Starts as "nothing happens". Units are the model's own.</remarks>
/// <typeparam name="TSelf">The model's own step.</typeparam>
public abstract class ChainStep<TSelf>
    where TSelf : ChainStep<TSelf>
{
    private readonly int states;
    private readonly int constants;
    private readonly double[] a;
    private readonly double[] b;
    private readonly double[] offset;
    private readonly double[] variance;

    /// <summary>A step at which nothing happens.</summary>
    /// <param name="states">Components of the state.</param>
    /// <param name="constants">Constants.</param>
    /// <param name="stillSd">Noise given to what the step cannot move, so that the chain stays regular; above 0.</param>
    protected ChainStep(int states, int constants, double stillSd)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stillSd);
        (this.states, this.constants) = (states, constants);
        (a, b, offset, variance) = (new double[states * states], new double[states * constants], new double[states], new double[states]);
        for (var i = 0; i < states; i++)
        {
            a[(i * states) + i] = 1;
            variance[i] = stillSd * stillSd;
        }
    }

    /// <summary>How much of the state before stays; 0 forgets it.</summary>
    public TSelf Keep(int state, double share)
    {
        a[(state * states) + state] = share;
        return (TSelf)this;
    }

    /// <summary>Takes another state's value before the step instead of its own.</summary>
    public TSelf From(int state, int other)
    {
        a[(state * states) + state] = 0;
        a[(state * states) + other] = 1;
        return (TSelf)this;
    }

    /// <summary>Adds another state's value before the step, weighted, to a state.</summary>
    public TSelf Also(int state, int other, double weight)
    {
        a[(state * states) + other] += weight;
        return (TSelf)this;
    }

    /// <summary>Adds a constant, weighted, to a state.</summary>
    public TSelf Constant(int state, int constant, double weight)
    {
        b[(state * constants) + constant] += weight;
        return (TSelf)this;
    }

    /// <summary>Adds a known shift to a state.</summary>
    public TSelf Add(int state, double shift)
    {
        offset[state] += shift;
        return (TSelf)this;
    }

    /// <summary>Adds noise to a state.</summary>
    public TSelf Noise(int state, double sd)
    {
        variance[state] += sd * sd;
        return (TSelf)this;
    }

    /// <summary>Spread of the noise on a state.</summary>
    public double Sd(int state) => Math.Sqrt(variance[state]);

    /// <summary>What is added to a state.</summary>
    public double Offset(int state) => offset[state];

    /// <summary>Moves a pass through the step.</summary>
    public void MoveForward(ForwardPass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        Span<double> sd = stackalloc double[states];
        for (var i = 0; i < states; i++) sd[i] = Math.Sqrt(variance[i]);
        pass.Move(a, b, offset, sd);
    }

    /// <summary>Whether a coefficient says anything: one that has decayed to next to nothing is nothing, and too small to be squared.</summary>
    private static bool Counts(double coefficient) => Math.Abs(coefficient) > 1e-100;

    /// <summary>Adds the step to a chain: one factor for each component of the state, in order.</summary>
    public void AddTo(ChainModel chain)
    {
        ArgumentNullException.ThrowIfNull(chain);
        var t = chain.AddStep();
        Span<Term> terms = stackalloc Term[1 + states + constants];
        for (var i = 0; i < states; i++)
        {
            var n = 0;
            terms[n++] = Term.State(t, i, 1);
            for (var j = 0; j < states; j++)
            {
                if (Counts(a[(i * states) + j])) terms[n++] = Term.State(t - 1, j, -a[(i * states) + j]);
            }
            for (var j = 0; j < constants; j++)
            {
                if (Counts(b[(i * constants) + j])) terms[n++] = Term.Constant(j, -b[(i * constants) + j]);
            }
            chain.AddGaussian(terms[..n], offset[i], Math.Sqrt(variance[i]));
        }
    }
}
