namespace Closemown.Estimation;

/// <summary>One non-zero weight of a linear predictor: a component of a state at a step, or a constant.</summary>
/// <remarks>Unit-free: a weight has the predictor's unit over the unknown's unit.</remarks>
public readonly record struct Term
{
    private Term(int step, int index, double weight) => (Step, Index, Weight) = (step, index, weight);

    /// <summary>The step of the state, from 0; −1 for a constant.</summary>
    public int Step { get; }

    /// <summary>The component within the state, or the constant's index; both from 0.</summary>
    public int Index { get; }

    /// <summary>The weight; finite.</summary>
    public double Weight { get; }

    /// <summary>True for a weight on a constant.</summary>
    public bool IsConstant => Step < 0;

    /// <summary>A weight on component <paramref name="component"/> of the state at <paramref name="step"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step or the component is negative.</exception>
    public static Term State(int step, int component, double weight)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(step);
        ArgumentOutOfRangeException.ThrowIfNegative(component);
        return new(step, component, weight);
    }

    /// <summary>A weight on the constant <paramref name="index"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The index is negative.</exception>
    public static Term Constant(int index, double weight)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        return new(-1, index, weight);
    }
}
