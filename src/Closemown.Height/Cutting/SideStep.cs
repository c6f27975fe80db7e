namespace Closemown.Height;

/// <summary>What the eye sees of two sides that are not cut alike.</summary>
public static class SideStep
{
    /// <summary>A step lower than this is hardly seen, mm (common practice, no source).</summary>
    public const double SeenFromMm = 0.1;

    /// <summary>How much higher one edge of the cut is than the other, mm: the difference of the sides carried out to the width of cut.</summary>
    /// <example>0.10 mm between readings 460 mm apart, cut 510 wide: 0.111 mm.</example>
    /// <param name="differenceMm">Difference of the two readings, mm; the sign does not matter.</param>
    /// <param name="readApartMm">Distance between the places read, mm, more than 0.</param>
    /// <param name="widthMm">Width of cut, mm; null where it was not told: then as between the places read.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width is not positive.</exception>
    public static double Mm(double differenceMm, double readApartMm, double? widthMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(readApartMm);
        if (widthMm is { } w) ArgumentOutOfRangeException.ThrowIfNegativeOrZero(w, nameof(widthMm));
        return Math.Abs(differenceMm) * (widthMm ?? readApartMm) / readApartMm;
    }

    /// <summary>It in words: passes the same way put a low edge beside a high one (a step), to and fro puts like beside like (a stripe two passes wide).</summary>
    public static string Seen(double stepMm) => stepMm < SeenFromMm
        ? "nothing that an eye sees"
        : $"a step of about {(Math.Round(10 * stepMm) is var tenths and > 1 ? $"{Text.N(tenths)} tenths" : "a tenth")} of a millimetre where passes run the same way, a stripe two passes wide to and fro";
}
