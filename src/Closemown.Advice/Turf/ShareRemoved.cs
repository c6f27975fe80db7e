using Closemown.Estimation;

namespace Closemown.Advice;

/// <summary>A share of the leaf that a mowing takes, as it is known: (canopy − cut) / canopy, 0 where the cut passes over it.</summary>
public static class ShareRemoved
{
    private const int Samples = 400;
    private const ulong Seed = 31;
    private const double LeastMm = 0.5;

    /// <summary>Mean, spread, points and the probability of more than a third, from independent heights.</summary>
    /// <param name="canopyMm">Mean and spread of what it stands at, mm.</param>
    /// <param name="cutMm">Mean and spread of the cut, mm.</param>
    public static SampledNumber Of((double Mean, double Sd) canopyMm, (double Mean, double Sd) cutMm)
    {
        var noise = new SeededNormal(Seed);
        var shares = new double[Samples];
        for (var i = 0; i < Samples; i += 2)
        {
            double a = noise.Next(), b = noise.Next();
            (shares[i], shares[i + 1]) = (Share(a, b), Share(-a, -b));
        }
        return SampledNumber.Of(shares);

        double Share(double a, double b)
        {
            var canopy = Math.Max(LeastMm, canopyMm.Mean + (canopyMm.Sd * a));
            return Math.Clamp((canopy - (cutMm.Mean + (cutMm.Sd * b))) / canopy, 0, 1);
        }
    }
}
