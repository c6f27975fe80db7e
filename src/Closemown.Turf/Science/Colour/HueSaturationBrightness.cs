namespace Closemown.Turf;

/// <summary>A colour by hue, saturation and brightness.</summary>
/// <remarks>The hexagonal model of Smith 1978, Computer Graphics 12(3):12 (reference from memory). Exact by definition.</remarks>
/// <param name="HueDeg">Hue, °, 0 to below 360; 0 for grey, which has none.</param>
/// <param name="Saturation">Saturation, 0 to 1.</param>
/// <param name="Brightness">Brightness, 0 to 1.</param>
public readonly record struct HueSaturationBrightness(double HueDeg, double Saturation, double Brightness)
{
    private const double Full = 255, Sextant = 60;

    /// <summary>From red, green, blue.</summary>
    /// <param name="r">Red, 0 to 255.</param>
    /// <param name="g">Green, 0 to 255.</param>
    /// <param name="b">Blue, 0 to 255.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static HueSaturationBrightness Of(double r, double g, double b)
    {
        Must.Lie(r, 0, Full);
        Must.Lie(g, 0, Full);
        Must.Lie(b, 0, Full);
        double most = Math.Max(r, Math.Max(g, b)), span = most - Math.Min(r, Math.Min(g, b));
        if (span == 0) return new(0, 0, most / Full);
        var hue = most == r ? (g - b) / span : most == g ? 2 + ((b - r) / span) : 4 + ((r - g) / span);
        return new(Sextant * (hue < 0 ? hue + 6 : hue), span / most, most / Full);
    }
}
