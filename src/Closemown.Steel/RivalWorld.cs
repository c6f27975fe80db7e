using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What the rivals of a unit are lived in: the unit, the main person and everyone's scatter, and a pass to read the other way round.</summary>
internal sealed class RivalWorld(UnitDescription unit, GaussianState start)
{
    private double[] factors = [];
    private RunningBelief? now;
    private int hand = -1;

    public UnitDescription Unit { get; } = unit;

    public ForwardPass Back { get; } = new(start);

    /// <summary>Takes over who reads most and how much each person scatters.</summary>
    /// <returns>False where that is not as it was: what was lived under it counts no more.</returns>
    public bool Same(RunningBelief belief)
    {
        var best = belief.BestFactors;
        best[belief.Main] = 0;                           // every factor of the main person is lived
        var same = hand == belief.Main && factors.AsSpan().SequenceEqual(best);
        (now, hand, factors) = (belief, belief.Main, best);
        return same;
    }

    /// <summary>The factor of a person's scatter where the main person's is the g-th.</summary>
    public double Factor(int person, int g) => person == hand ? now!.Factor(g) : factors[person];
}
