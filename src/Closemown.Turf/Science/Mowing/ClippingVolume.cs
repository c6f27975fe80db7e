namespace Closemown.Turf;

/// <summary>What the clippings in the box tell: growth, dry matter, nitrogen taken away.</summary>
/// <remarks>
/// 1 g of dry clippings fills 16.67 mL (bentgrass, annual bluegrass, bermudagrass) and holds 0.04 g of nitrogen: Woods 2019. In 2020 the same author uses 15.9 mL/g:
/// take it as ± 10 %. A vigorous green gives 20 to 50 mL/m² a mowing, below 10 in tournament condition: Woods 2018.
/// </remarks>
public static class ClippingVolume
{
    /// <summary>Volume of a gram of dry clippings, mL/g.</summary>
    public const double MlPerDryG = 16.67;

    /// <summary>Nitrogen in dry clippings, g/g.</summary>
    public const double NitrogenShare = 0.04;

    /// <summary>One mowing of a vigorous green: outside it the box was told wrongly, or the turf is not growing.</summary>
    public static PublishedRange VigorousMlM2 { get; } = new("clippings", 20, 50, "mL/m²");

    /// <summary>Volume on the ground, mL/m²; exact by definition.</summary>
    /// <example>1.5 L from 100 m²: 15 mL/m².</example>
    /// <param name="litres">Volume of clippings, L, 0 or more.</param>
    /// <param name="areaM2">Area they came from, m², above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double MlM2(double litres, double areaM2)
    {
        Must.NotBeNegative(litres);
        Must.BePositive(areaM2);
        return litres * 1000 / areaM2;
    }

    /// <summary>Volume of dry matter, mL/m².</summary>
    /// <param name="dryGm2">Dry clippings, g/m², 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
    public static double OfDryMlM2(double dryGm2)
    {
        Must.NotBeNegative(dryGm2);
        return dryGm2 * MlPerDryG;
    }

    /// <summary>Nitrogen taken away, g/m².</summary>
    /// <example>450 mL/m² in a month: 1.08 g/m².</example>
    /// <param name="mlM2">Clippings, mL/m², 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
    public static double NitrogenGm2(double mlM2)
    {
        Must.NotBeNegative(mlM2);
        return mlM2 / MlPerDryG * NitrogenShare;
    }
}
