namespace Closemown.Estimation;

/// <summary>I_k = ∫₀^∞ t^k exp(−at − t²/2) dt for k = 0, 1, 2 and a ≥ 0, each with full relative accuracy.</summary>
/// <remarks>
/// Integration by parts gives I_{k+1} = k·I_{k−1} − a·I_k; forward it loses digits for large a, so there the ratios come from the
/// continued fraction I_k/I_{k−1} = k/(a + (k+1)/(a + (k+2)/…)) of the minimal solution, evaluated backward
/// (Abramowitz and Stegun 1964, 7.2.5 and 26.2.14).
/// </remarks>
internal readonly struct TailMoments
{
    public readonly double I0, I1, I2;

    public TailMoments(double a)
    {
        if (a < 4)
        {
            I0 = NormalMath.Mills(a);
            I1 = 1 - (a * I0);
            I2 = I0 - (a * I1);
            return;
        }

        var depth = a < 8 ? 48 : a < 20 ? 24 : 12;
        var r = 1 / a;
        for (var k = depth; k > 2; k--) r = k / (a + r);
        var r2 = 2 / (a + r);
        var r1 = 1 / (a + r2);
        I0 = 1 / (a + r1);
        I1 = I0 * r1;
        I2 = I1 * r2;
    }
}
