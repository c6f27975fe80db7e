namespace Closemown.Turf;

/// <summary>A nutrient of a soil test.</summary>
public enum SoilNutrient
{
    /// <summary>Potassium, K.</summary>
    Potassium,

    /// <summary>Phosphorus, P.</summary>
    Phosphorus,

    /// <summary>Calcium, Ca.</summary>
    Calcium,

    /// <summary>Magnesium, Mg.</summary>
    Magnesium,

    /// <summary>Sulphur, S.</summary>
    Sulphur,
}

/// <summary>Lowest levels a soil test should show, mg/kg, by Mehlich 3.</summary>
/// <remarks>
/// Minimum levels for sustainable nutrition: reference sheet of September 2014 (3721 samples of turf that does well, the value which 1 in 10 of them falls below); authors
/// of Woods, Stowell &amp; Gelernter 2016, PeerJ Preprints. For soils of pH above 5.5 and Mehlich 3 only: numbers of other extractants cannot be compared.
/// </remarks>
public static class SoilGuideline
{
    /// <summary>The pH the guideline is for; the top is that of any soil.</summary>
    public static PublishedRange Ph { get; } = new("pH", 5.5, 14, "");

    /// <summary>The guideline, mg/kg.</summary>
    /// <param name="nutrient">The nutrient.</param>
    /// <param name="ph">pH of the soil, 0 to 14, where known; marked below 5.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such nutrient or pH.</exception>
    public static Ranged MgKg(SoilNutrient nutrient, double? ph = null)
    {
        if (ph is { } p) Must.Lie(p, 0, 14, nameof(ph));
        double level = nutrient switch
        {
            SoilNutrient.Potassium => 37,
            SoilNutrient.Phosphorus => 21,
            SoilNutrient.Calcium => 331,
            SoilNutrient.Magnesium => 47,
            SoilNutrient.Sulphur => 7,
            _ => throw new ArgumentOutOfRangeException(nameof(nutrient), nutrient, "No such nutrient."),
        };
        return new(level, ph is { } told ? Ph.MarkOf(told) : null);
    }
}
