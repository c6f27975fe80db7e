namespace Closemown.Estimation;

/// <summary>An interval reading of a site that has several, with how often it was read just so; limits count from the site's offset.</summary>
/// <remarks>The width is given apart, since the offset may have cost the limits digits.</remarks>
internal readonly record struct RepeatedReading(double Low, double High, double Width, double Sd, int Times)
{
    public bool IsLike(RepeatedReading other) => Low == other.Low && High == other.High && Width == other.Width && Sd == other.Sd;

    public RepeatedReading OnceMore() => this with { Times = Times + 1 };

    /// <summary>log(Φ((high − x)/σ) − Φ((low − x)/σ)), times how often.</summary>
    public double Log(double x)
    {
        if (double.IsPositiveInfinity(High)) return Times * NormalMath.LogPhi((x - Low) / Sd);
        if (double.IsNegativeInfinity(Low)) return Times * NormalMath.LogPhi((High - x) / Sd);
        IntervalLikelihood.Moments((Low - x) / Sd, (High - x) / Sd, Width / Sd, out var f, out _, out _, out _);
        return Times * f;
    }

    /// <summary>Adds its first and second derivative by x.</summary>
    public void AddSlope(double x, ref double slope, ref double curvature)
    {
        IntervalLikelihood.Moments((Low - x) / Sd, (High - x) / Sd, Width / Sd, out _, out var f1, out var f2, out _);
        slope += Times * f1 / Sd;
        curvature += Times * Math.Min(0, f2) / (Sd * Sd);
    }
}
