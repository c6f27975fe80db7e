namespace Closemown.Estimation;

/// <summary>A reading of a linear sum of the present state and the constants: a value, or limits where it was read coarsely.</summary>
/// <param name="Terms">The sum; state terms at step 0, moved to the step where it is read.</param>
/// <param name="Low">The value, or the low limit; −infinity for none.</param>
/// <param name="High">The value again, or the high limit; infinity for none.</param>
/// <param name="Sd">Scatter, in the unit of the sum, above 0.</param>
public record LinearReading(Term[] Terms, double Low, double High, double Sd)
{
    private bool IsValue => Low == High;

    /// <summary>Adds it to a chain at a step; limits go to the group.</summary>
    /// <returns>The factor's index.</returns>
    public int AddTo(ChainModel chain, int step, int group = 0)
    {
        ArgumentNullException.ThrowIfNull(chain);
        var terms = Array.ConvertAll(Terms, t => t.IsConstant ? t : Term.State(step, t.Index, t.Weight));
        return IsValue ? chain.AddGaussian(terms, Low, Sd) : chain.AddInterval(terms, 0, Low, High, Sd, group);
    }

    /// <summary>Lets a pass take it in.</summary>
    /// <returns>Logarithm of what was said of the reading before it was seen.</returns>
    public double Observe(ForwardPass pass, double factor = 1)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return IsValue ? pass.ObserveGaussian(Terms, Low, Sd * factor) : pass.ObserveInterval(Terms, 0, Low, High, Sd * factor);
    }

    /// <summary>Probability of a reading at least this far from what is believed; limits that hold the mean are no surprise.</summary>
    public double Surprise(GaussianState belief, double factor = 1)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var (mean, variance) = belief.Predict(Terms);
        return Estimation.Surprise.OfNumber(mean, variance + (Sd * Sd * factor * factor), Math.Clamp(mean, Low, High));
    }
}
