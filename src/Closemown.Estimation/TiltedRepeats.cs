namespace Closemown.Estimation;

/// <summary>Moments of N(m_c, v_c) times several interval likelihoods of the same predictor, by one-dimensional quadrature.</summary>
/// <remarks>
/// The log density h is concave. Its mode is found by Newton with bisection; beyond the points where h has fallen by
/// <see cref="Fall"/> nothing is left that counts. In between it is cut into panels of 20 Gauss–Legendre points. As
/// |Φ(b + iy) − Φ(a + iy)| ≤ exp(y²/2)·(Φ(b) − Φ(a)), the density grows off the real line no faster than exp(y²/2s²) with
/// 1/s² = 1/v_c + Σ 1/σ²; a panel of at most 6s then has an error of about 1e-16 of the peak (Trefethen 2008, SIAM Review 50:67,
/// on Gauss quadrature of analytic integrands, with an ellipse of ρ² near 18; the citation is from memory). Further inside a limit than 8.5σ
/// the likelihood is 1 to rounding and does not count in s, so sharp readings cost panels only at their limits. A panel is also no wider
/// than a quarter of all, so that the density falls by no more than a few powers of e within it where it is all slope.
/// </remarks>
internal sealed class TiltedRepeats
{
    private const double Fall = 40;
    private const double Reach = 8.5;
    private const double PanelWidth = 6;
    private const double FewestPanels = 4;

    /// <summary>Only reached where a reading is sharper than the spacing of doubles, whose limit is then a plain step.</summary>
    private const double MostPanels = 10_000;

    private double[] _cuts = [];

    /// <summary>The pseudo-reading that stands for all of them.</summary>
    public TiltedReading Match(ReadOnlySpan<RepeatedReading> readings, double mc, double vc)
    {
        if (!double.IsFinite(mc) || !(vc > 0 && double.IsFinite(vc))) return TiltedReading.None;
        var mode = Mode(readings, mc, vc);
        var peak = Log(readings, mc, vc, mode);
        if (!double.IsFinite(peak)) return TiltedReading.None;
        double low = End(readings, mc, vc, mode, peak, -1), high = End(readings, mc, vc, mode, peak, 1);
        var cuts = Cut(readings, low, high);
        double i0 = 0, i1 = 0, i2 = 0;
        for (var c = 1; c < cuts.Length; c++)
        {
            double from = cuts[c - 1], to = cuts[c];
            if (!(to > from)) continue;
            var narrow = Math.Max(Math.Sqrt(Sharpness(readings, vc, 0.5 * (from + to))) / PanelWidth, FewestPanels / (high - low));
            var panels = (int)Math.Ceiling(Math.Min(MostPanels, (to - from) * narrow));
            var half = 0.5 * (to - from) / panels;
            for (var p = 0; p < panels; p++)
            {
                var middle = from + (((2 * p) + 1) * half);
                for (var n = 0; n < GaussLegendre.Count; n++)
                {
                    var x = middle + (half * ((n & 1) == 0 ? GaussLegendre.Nodes[n / 2] : -GaussLegendre.Nodes[n / 2]));
                    var weight = half * GaussLegendre.Weights[n / 2] * Math.Exp(Log(readings, mc, vc, x) - peak);
                    var t = x - mode;
                    i0 += weight;
                    i1 += weight * t;
                    i2 += weight * t * t;
                }
            }
        }

        var shift = i1 / i0;
        var logMass = peak + Math.Log(i0) - (0.5 * Math.Log(vc)) - NormalMath.LogRoot2Pi;
        return new TiltedReading(logMass, mode + shift, (i2 / i0) - (shift * shift), mc, vc);
    }

    private static double Log(ReadOnlySpan<RepeatedReading> readings, double mc, double vc, double x)
    {
        var sum = -0.5 * (x - mc) * (x - mc) / vc;
        foreach (var r in readings) sum += r.Log(x);
        return sum;
    }

    /// <summary>Where the slope is zero, near enough: it need only lie within the peak.</summary>
    private static double Mode(ReadOnlySpan<RepeatedReading> readings, double mc, double vc)
    {
        double x = mc, left = double.NegativeInfinity, right = double.PositiveInfinity;
        for (var round = 0; round < 200; round++)
        {
            double slope = (mc - x) / vc, curvature = -1 / vc;
            foreach (var r in readings) r.AddSlope(x, ref slope, ref curvature);
            if (slope * slope <= 1e-6 * -curvature) break;
            if (slope > 0) left = x;
            else right = x;
            var next = x - (slope / curvature);
            if (next <= left || next >= right) next = 0.5 * (left + right);
            if (!double.IsFinite(next) || next == x) break;
            x = next;
        }

        return x;
    }

    /// <summary>A point on one side where the log density has fallen by <see cref="Fall"/>, but not by much more than twice.</summary>
    /// <remarks>
    /// The prior alone gives it a farthest place, the sharpest it can be a nearest one. What lies behind a sharp limit is cut off, as panels there would be many and add nothing.
    /// </remarks>
    private static double End(ReadOnlySpan<RepeatedReading> readings, double mc, double vc, double mode, double peak, int side)
    {
        var all = 1 / vc;
        foreach (var r in readings) all += r.Times / (r.Sd * r.Sd);
        double step = Math.Sqrt(2 * Fall / all), farthest = Math.Sqrt(2 * Fall * vc);
        var near = 0.0;
        while (step < farthest && Log(readings, mc, vc, mode + (side * step)) > peak - Fall) (near, step) = (step, 1.4 * step);
        step = Math.Min(step, farthest);
        for (var round = 0; round < 100 && Log(readings, mc, vc, mode + (side * step)) < peak - (2 * Fall); round++)
        {
            var half = 0.5 * (near + step);
            if (half <= near || half >= step) break;
            if (Log(readings, mc, vc, mode + (side * half)) > peak - Fall) near = half;
            else step = half;
        }

        return mode + (side * step);
    }

    /// <summary>The ends, and between them where a limit begins or ceases to be felt.</summary>
    private ReadOnlySpan<double> Cut(ReadOnlySpan<RepeatedReading> readings, double low, double high)
    {
        if (_cuts.Length < (2 * readings.Length) + 2) _cuts = new double[(4 * readings.Length) + 2];
        var count = 0;
        _cuts[count++] = low;
        foreach (var r in readings)
        {
            double above = r.Low + (Reach * r.Sd), below = r.High - (Reach * r.Sd);
            if (above > low && above < high) _cuts[count++] = above;
            if (below > low && below < high) _cuts[count++] = below;
        }

        _cuts[count++] = high;
        var cuts = _cuts.AsSpan(0, count);
        cuts.Sort();
        return cuts;
    }

    /// <summary>1/s² at x, of the readings that are felt there.</summary>
    private static double Sharpness(ReadOnlySpan<RepeatedReading> readings, double vc, double x)
    {
        var sum = 1 / vc;
        foreach (var r in readings)
        {
            if (x < r.Low + (Reach * r.Sd) || x > r.High - (Reach * r.Sd)) sum += r.Times / (r.Sd * r.Sd);
        }

        return sum;
    }
}
