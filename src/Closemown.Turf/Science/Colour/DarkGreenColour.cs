namespace Closemown.Turf;

/// <summary>Dark green colour index: how dark and green turf looks in a photo, 0 to 1.</summary>
/// <remarks>
/// ((H − 60)/60 + (1 − S) + (1 − B))/3, H in °, S and B 0 to 1: Karcher &amp; Richardson 2003, Crop Sci. 43:943. It is made for hues from yellow (60°) to green
/// (120°), where it lies in 0 to 1 (these limits from memory); other hues are marked. Light changes it: compare only photos taken alike, with a card of known colour in them.
/// </remarks>
/// <example>76, 115, 51: 0.534.</example>
public static class DarkGreenColour
{
    /// <summary>The hues the index is made for.</summary>
    public static PublishedRange HueDeg { get; } = new("hue", 60, 120, "°");

    /// <summary>The index, 0 to 1 within its hues.</summary>
    /// <param name="r">Red, 0 to 255.</param>
    /// <param name="g">Green, 0 to 255.</param>
    /// <param name="b">Blue, 0 to 255.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged Index(double r, double g, double b)
    {
        var colour = HueSaturationBrightness.Of(r, g, b);
        var index = (((colour.HueDeg - 60) / 60) + (1 - colour.Saturation) + (1 - colour.Brightness)) / 3;
        return new(index, HueDeg.MarkOf(colour.HueDeg));
    }
}
