namespace Closemown.Estimation;

/// <summary>Probabilities of ordered categories.</summary>
public static class Categories
{
    /// <summary>The probability of each category of a predictor known as N(mean, variance) and read with spread <paramref name="sd"/>.</summary>
    /// <remarks>Category k lies between cut-points k − 1 and k; Rasmussen and Williams 2006, 3.9, for the averaged probit.</remarks>
    /// <param name="mean">The predictor's mean.</param>
    /// <param name="variance">Its variance, not negative.</param>
    /// <param name="sd">The reading's spread, positive.</param>
    /// <param name="cutPoints">Rising, in the predictor's unit.</param>
    /// <param name="into">One more than there are cut-points; receives probabilities that sum to one.</param>
    /// <exception cref="ArgumentException">The lengths disagree or the cut-points do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The variance is negative, the spread is not positive, or the mean is not finite.</exception>
    public static void Probabilities(double mean, double variance, double sd, ReadOnlySpan<double> cutPoints, Span<double> into)
    {
        if (!double.IsFinite(mean)) throw new ArgumentOutOfRangeException(nameof(mean), mean, ErrorText.NotFinite("The mean", mean));
        if (!(variance >= 0 && double.IsFinite(variance)))
            throw new ArgumentOutOfRangeException(nameof(variance), variance, $"The variance must not be negative, but is {ErrorText.N(variance)}.");
        if (!(sd > 0 && double.IsFinite(sd))) throw new ArgumentOutOfRangeException(nameof(sd), sd, ErrorText.Spread(sd));
        if (into.Length != cutPoints.Length + 1)
            throw new ArgumentException(ErrorText.Length("The room for probabilities", cutPoints.Length + 1, into.Length), nameof(into));
        ChainModel.CheckCuts(cutPoints);
        var scale = Math.Sqrt(variance + (sd * sd));
        var low = double.NegativeInfinity;
        for (var k = 0; k < into.Length; k++)
        {
            var high = k < cutPoints.Length ? (cutPoints[k] - mean) / scale : double.PositiveInfinity;
            into[k] = Math.Max(0, NormalMath.Mass(low, high));
            low = high;
        }
    }
}
