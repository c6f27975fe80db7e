using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>One reading of the height: a value, or limits where it was read coarsely, of a linear sum of state and constants.</summary>
/// <param name="Terms">The sum; state terms at step 0, moved to the step where it is read.</param>
/// <param name="Low">The value, or the low limit.</param>
/// <param name="High">The value again, or the high limit.</param>
/// <param name="SdMm">Scatter before it is learned, mm.</param>
/// <param name="Hand">Number of the person whose scatter with the gauge it carries; −1 for none.</param>
/// <param name="Station">0 left, 1 right, −1 for a standing height or a told height.</param>
internal sealed record HeightReading(Term[] Terms, double Low, double High, double SdMm, int Hand, int Station)
{
    private bool IsValue => Low == High;

    public int AddTo(ChainModel chain, int step)
    {
        var terms = Array.ConvertAll(Terms, t => t.IsConstant ? t : Term.State(step, t.Index, t.Weight));
        return IsValue ? chain.AddGaussian(terms, Low, SdMm) : chain.AddInterval(terms, 0, Low, High, SdMm, 1);
    }

    /// <returns>Logarithm of what was said of the reading before it was seen.</returns>
    public double Observe(ForwardPass pass, double factor) => IsValue
        ? pass.ObserveGaussian(Terms, Low, SdMm * factor)
        : pass.ObserveInterval(Terms, 0, Low, High, SdMm * factor);

    /// <summary>Probability of a reading at least this far from what is believed; limits that hold the mean are no surprise.</summary>
    public double Surprise(GaussianState belief, double factor)
    {
        var (mean, variance) = belief.Predict(Terms);
        return Estimation.Surprise.OfNumber(mean, variance + (SdMm * SdMm * factor * factor), Math.Clamp(mean, Low, High));
    }
}
