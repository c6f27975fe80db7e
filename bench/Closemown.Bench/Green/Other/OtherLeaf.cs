namespace Closemown.Bench.Green;

/// <summary>Green leaf and the reserve that it fills: leaf takes light, the reserve feeds growth, and growth makes leaf.</summary>
/// <remarks>
/// Light taken by 1 − e^(−k·leaf) (Monsi &amp; Saeki 1953, from memory). The reserve is told in mm of growth that it feeds. A hard cut
/// takes leaf: growth goes on from the reserve
/// for some days and then slackens. Numbers are assumptions.
/// </remarks>
/// <param name="Area">Green leaf, m² a m² of ground.</param>
/// <param name="Reserve">mm of growth.</param>
internal readonly record struct OtherLeaf(double Area, double Reserve)
{
    public const double Holds = 6;

    private const double Light = 0.6, HalfSunMj = 12, BrightMj = 25, AreaPerMm = 0.7, LivesDegrees = 380, Crowded = 8, UsualArea = 2,
        Mobile = 0.35, Ready = 3, ReadyHalf = 0.35;
    private const double Breathes = 0.28, BreathesAtC = 18, StubbleArea = 0.1, StandsLow = 0.6;

    public double Filled => Reserve / Holds;

    /// <summary>What a day's light brings.</summary>
    public double Fixed(OtherDay day, double fixesMm, double stretch)
    {
        var c = day.Seen.MeanC;
        var warm = Math.Clamp((c + 1) / 11, 0, 1) * Math.Clamp((36 - c) / 12, 0, 1);
        var sun = day.SunMj / (day.SunMj + HalfSunMj) * (BrightMj + HalfSunMj) / BrightMj;
        return fixesMm * sun * warm * (1 - Math.Exp(-Light * Area)) * (0.35 + (0.65 * stretch));
    }

    /// <summary>Growth that comes of what the meristems ask: less where little is at hand for it, and less where leaf crowds.</summary>
    public double Grows(double asksMm, double fixedMm)
    {
        if (asksMm <= 0) return 0;
        var ready = ((Mobile * Reserve) + fixedMm) / asksMm;
        var fed = ready / (ready + ReadyHalf) * (Ready + ReadyHalf) / Ready;
        var crowd = Math.Max(0, 1 - (Area / Crowded)) / (1 - (UsualArea / Crowded));
        return Math.Min(asksMm * fed * crowd, (Mobile * Reserve) + fixedMm);
    }

    /// <summary>A day on.</summary>
    public OtherLeaf After(OtherDay day, double fixedMm, double grewMm)
    {
        var breathes = Breathes * Math.Pow(2, (day.Seen.MeanC - BreathesAtC) / 10) * (0.4 + (0.6 * Filled));
        var area = (Area + (AreaPerMm * grewMm)) * (1 - Math.Min(0.2, OtherWarmth.Degrees(day.Seen) / LivesDegrees));
        return new(area, Math.Clamp(Reserve + fixedMm - grewMm - breathes, 0, Holds));
    }

    /// <summary>Cut from one height to another: leaf stands between the base and the tips, more of it low than high.</summary>
    public OtherLeaf Cut(double fromMm, double toMm, double baseMm)
    {
        var left = Math.Clamp((toMm - baseMm) / Math.Max(0.1, fromMm - baseMm), 0, 1);
        return this with { Area = Area * Math.Max(StubbleArea, Math.Pow(left, StandsLow)) };
    }
}
