using Closemown.Estimation;
using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>Expected loss of taking more than a third or a half, the share uncertain.</summary>
internal static class OverLoss
{
    public static double Of(double canopyMm, double cutMm, double sdMm, PlanLosses losses)
    {
        var share = (canopyMm - cutMm) / canopyMm;
        var sd = Math.Max(0.01, sdMm * cutMm / (canopyMm * canopyMm));
        var z = (share - (1 / 3.0)) / sd;
        var p = NormalMath.Phi(z);
        return (losses.OverThird * p) + (losses.ExcessShare * sd * ((z * p) + NormalMath.Density(z))) + (losses.OverHalf * NormalMath.Phi((share - 0.5) / sd));
    }
}
