namespace Closemown.Height;

/// <summary>Regularised incomplete beta function, and the two distributions that come from it.</summary>
/// <remarks>Continued fraction, Abramowitz and Stegun 1964, 26.5.8, by the modified Lentz method; log Γ by Lanczos 1964 with g = 7 and nine terms (from memory).</remarks>
internal static class IncompleteBeta
{
    private static readonly double[] Lanczos =
    [
        0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
        12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
    ];

    /// <summary>I_x(a, b) for positive a and b and x within 0 to 1.</summary>
    public static double Of(double x, double a, double b)
    {
        if (x <= 0) return 0;
        if (x >= 1) return 1;
        return x < (a + 1) / (a + b + 2) ? Fraction(x, a, b) : 1 - Fraction(1 - x, b, a);
    }

    /// <summary>The probability that an F ratio with these degrees of freedom exceeds f.</summary>
    public static double FAbove(double f, double above, double below) => f <= 0 ? 1 : Of(below / (below + (above * f)), below / 2, above / 2);

    /// <summary>The t that a share <paramref name="p"/> of a t distribution lies within, two-sided; p from 0 to below 1.</summary>
    public static double TWithin(double p, double freedom)
    {
        double low = 0, high = 1;
        double Within(double t) => 1 - Of(freedom / (freedom + (t * t)), freedom / 2, 0.5);
        while (Within(high) < p) high *= 2;
        for (var i = 0; i < 200 && high - low > 1e-14 * high; i++)
        {
            var mid = (low + high) / 2;
            if (Within(mid) < p) low = mid;
            else high = mid;
        }
        return (low + high) / 2;
    }

    private static double Fraction(double x, double a, double b)
    {
        const double Tiny = 1e-300;
        var front = Math.Exp((a * Math.Log(x)) + (b * Math.Log(1 - x)) + LogGamma(a + b) - LogGamma(a) - LogGamma(b)) / a;
        double c = 1, d = 1 - ((a + b) * x / (a + 1));
        d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
        var h = d;
        for (var m = 1; m < 10000; m++)
        {
            Next(m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m))));
            var before = h;
            Next(-(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1)));
            if (Math.Abs(h - before) < 1e-16 * Math.Abs(h)) break;
        }
        return front * h;

        void Next(double term)
        {
            d = 1 + (term * d);
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = 1 + (term / c);
            if (Math.Abs(c) < Tiny) c = Tiny;
            h *= d * c;
        }
    }

    private static double LogGamma(double x)
    {
        if (x < 0.5) return Math.Log(Math.PI / Math.Sin(Math.PI * x)) - LogGamma(1 - x);
        var sum = Lanczos[0];
        for (var i = 1; i < Lanczos.Length; i++) sum += Lanczos[i] / (x - 1 + i);
        var t = x + 6.5;
        return (0.5 * Math.Log(2 * Math.PI)) + ((x - 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }
}
