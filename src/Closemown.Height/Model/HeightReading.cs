using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>One reading of the height, mm.</summary>
/// <param name="Terms">As for every reading.</param>
/// <param name="Low">The value, or the low limit.</param>
/// <param name="High">The value again, or the high limit.</param>
/// <param name="Sd">Scatter before it is learned, mm.</param>
/// <param name="Hand">Number of the person whose scatter with the gauge it carries; −1 for none.</param>
/// <param name="Station">0 left, 1 right, −1 for a standing height or a told height.</param>
internal sealed record HeightReading(Term[] Terms, double Low, double High, double Sd, int Hand, int Station) : LinearReading(Terms, Low, High, Sd)
{
    /// <summary>Coarse readings make a group of their own, which no scatter of a gauge changes.</summary>
    public int AddTo(ChainModel chain, int step) => AddTo(chain, step, 1);
}
