using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What pressing of blade on bedknife wears off: the pair opens by itself, and its edges blunt. Assumptions, no source.</summary>
public static class Pressing
{
    private const double OpensPerHour = 0.5;
    private const double BluntsPerUmHour = 0.08;

    /// <summary>Mean depth of pressing, µm, where the clearance is known with a spread.</summary>
    public static double ExpectedUm(double clearanceUm, double varianceUm2)
    {
        var sd = Math.Sqrt(Math.Max(1e-12, varianceUm2));
        var z = -clearanceUm / sd;
        return (sd * NormalMath.Density(z)) - (clearanceUm * NormalMath.Phi(z));
    }

    /// <summary>What a pressing of that depth opens in some hours, µm.</summary>
    public static double Opens(double depthUm, double hours) => depthUm * (1 - Math.Exp(-OpensPerHour * hours));

    /// <summary>What it blunts the edges, µm.</summary>
    public static double Blunts(double depthUm, double hours) => depthUm * BluntsPerUmHour * hours;
}
