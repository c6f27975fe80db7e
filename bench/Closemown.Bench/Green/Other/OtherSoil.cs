namespace Closemown.Bench.Green;

/// <summary>
/// Water in two layers: thatch and sand on top, the rest of the roots below. Rain on dry thatch runs past it and down the cracks.
/// </summary>
/// <remarks>
/// Use by radiation and warmth: Priestley &amp; Taylor 1972 (from memory), net radiation a share of the sun's; all else assumptions.
/// </remarks>
/// <param name="TopMm">In the top layer.</param>
/// <param name="LowMm">Below it.</param>
/// <param name="Drawn">What was drawn of yesterday's demand, a share.</param>
/// <param name="DrainedMm">What ran through yesterday, mm.</param>
/// <param name="Soaked">Whether yesterday's water could not all sink in.</param>
/// <param name="Wetted">Whether yesterday wetted dry thatch.</param>
internal readonly record struct OtherSoil(double TopMm, double LowMm, double Drawn, double DrainedMm, bool Soaked, bool Wetted)
{
    public const double TopHolds = 16, LowHolds = 26;

    private const double Caught = 0.7, DryFrom = 0.28, RunsPast = 0.4, OfItDown = 0.5, SinksMm = 18, EasyFrom = 0.38, Helps = 1.5;

    public static OtherSoil Moist { get; } = new(0.8 * TopHolds, 0.9 * LowHolds, 1, 0, false, false);

    public double TopShare => TopMm / TopHolds;

    public bool Wilts => Drawn < 0.5;

    /// <summary>How far growth goes with that water: the leaf stops stretching well before it stops drawing.</summary>
    public double Stretch => Math.Clamp((Drawn - 0.35) / 0.5, 0, 1);

    /// <summary>A day on.</summary>
    public OtherSoil After(OtherDay day, double wateredMm, double deepRoots)
    {
        var fell = Math.Max(0, day.Seen.RainMm - Caught) + wateredMm;
        var dry = TopShare < DryFrom;
        var past = dry ? RunsPast * fell : 0;
        var top = TopMm + fell - past;
        var sinks = Math.Min(SinksMm, Math.Max(0, top - TopHolds));
        var low = LowMm + sinks + (OfItDown * past);
        var drained = Math.Max(0, low - LowHolds);
        low = Math.Min(low, LowHolds);
        var soaked = top - sinks > TopHolds + 1 || (drained > 8 && fell > 10);
        top = Math.Min(top - sinks, TopHolds);
        var asks = Asks(day);
        var fromTop = (1 - deepRoots) * Math.Min(1, top / TopHolds / EasyFrom);
        // What the top withholds the deeper roots take up in part.
        var fromLow = Math.Min(Helps * deepRoots, 1 - fromTop) * Math.Min(1, low / LowHolds / EasyFrom);
        return new(
            Math.Max(0, top - (asks * fromTop)),
            Math.Max(0, low - (asks * fromLow)),
            Math.Min(1, fromTop + fromLow),
            drained,
            soaked,
            dry && fell > 6);
    }

    private static double Asks(OtherDay day)
    {
        const double Alpha = 1.26, Psychrometric = 0.066, LatentMj = 2.45, NetShare = 0.55, NetLess = 0.5, ShortTurf = 0.8;
        var t = day.Seen.MeanC;
        var slope = 4098 * 0.6108 * Math.Exp(17.27 * t / (t + 237.3)) / Math.Pow(t + 237.3, 2);
        return ShortTurf * Alpha * slope / (slope + Psychrometric) * Math.Max(0.2, (NetShare * day.SunMj) - NetLess) / LatentMj;
    }
}
