namespace Closemown.Turf;

/// <summary>Whether a pixel of a photo shows green leaf.</summary>
/// <remarks>
/// By ratios: R/G &lt; 0.95, B/G &lt; 0.95 and 2G − R − B &gt; 20: Patrignani &amp; Ochsner 2015, Agron. J. 107:2312 (thresholds read in two public listings; an early listing tests
/// G &gt; 20 instead of the last). By hue: 57 to 107°, any saturation: Richardson, Karcher &amp; Purcell 2001, Crop Sci. 41:1884 (window from memory; later
/// papers use others, so it is a setting). Both are rules, without a range.
/// </remarks>
public static class GreenCover
{
    private const double MostRatio = 0.95, LeastExcess = 20;

    /// <summary>Hues of green turf, ° (from memory).</summary>
    public static PublishedRange HueDeg { get; } = new("hue", 57, 107, "°");

    /// <summary>Whether it is leaf, by ratios.</summary>
    /// <param name="r">Red, 0 to 255.</param>
    /// <param name="g">Green, 0 to 255.</param>
    /// <param name="b">Blue, 0 to 255.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static bool ByRatios(double r, double g, double b)
    {
        Must.Lie(r, 0, 255);
        Must.Lie(g, 0, 255);
        Must.Lie(b, 0, 255);
        return r < MostRatio * g && b < MostRatio * g && (2 * g) - r - b > LeastExcess;
    }

    /// <summary>Whether it is turf, by hue; grey has none.</summary>
    /// <param name="colour">The pixel.</param>
    /// <param name="window">Hues that count; the published ones where null.</param>
    public static bool ByHue(HueSaturationBrightness colour, PublishedRange? window = null) =>
        colour.Saturation > 0 && (window ?? HueDeg).Contains(colour.HueDeg);
}
