namespace Closemown.Height;

/// <summary>A bench height that a person tells with a mowing: a new setting where it is not what was believed.</summary>
/// <remarks>Who says "mown at 4.25 on the bench" has set it to 4.25 (common practice, no source). Taken as a reading of an unchanged height it would drag
/// the height before along, and the sink with it.</remarks>
internal static class ToldSetting
{
    /// <summary>So many spreads of the belief are still the same height.</summary>
    private const double SameSpreads = 2;

    /// <summary>Nearer than this is the same height whatever is believed: people round, mm.</summary>
    private const double SameMm = 0.05;

    /// <summary>Told twice, it is the same only where the same was said, mm.</summary>
    private const double SameSaidMm = 0.005;

    /// <summary>Whether it is another setting than the one believed.</summary>
    /// <param name="mm">What is told, mm.</param>
    /// <param name="lastTold">What was told last, where nothing was gauged or turned since; null for none.</param>
    /// <param name="known">Whether anything ever said how it stands: else there is nothing to differ from.</param>
    /// <param name="believed">What is believed of the middle of both sides.</param>
    public static bool IsNew(double mm, double? lastTold, bool known, HeightEstimate believed) =>
        lastTold is { } said ? Math.Abs(mm - said) > SameSaidMm
            : known && Math.Abs(mm - believed.Mean) > Math.Max(SameMm, SameSpreads * believed.Sd);

    /// <summary>Both sides set to it, each as well as a person sets and tells a height.</summary>
    public static HeightStep Step(double mm)
    {
        var step = new HeightStep();
        for (var side = 0; side < 2; side++) step.Keep(side, 0).Add(side, mm).Noise(side, HeightDefaults.ToldBenchSdMm);
        return step;
    }
}
