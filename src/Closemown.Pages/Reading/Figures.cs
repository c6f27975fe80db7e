using System.Globalization;
using Closemown.Quantities;

namespace Closemown.Pages;

/// <summary>Numbers in the units and with the decimal sign of whoever reads.</summary>
public sealed class Figures(WritingStyle style)
{
    private const double UmPerThou = 25.4, UmPerHundredth = 10, MmPerInch = 25.4;

    /// <summary>How many µm the reader's unit of the gap has.</summary>
    public double UmPerGap => style.Gap switch { GapUnit.Thou => UmPerThou, GapUnit.HundredthMm => UmPerHundredth, _ => 1 };

    /// <summary>The reader's unit of the gap.</summary>
    public string GapUnitName => style.Gap switch { GapUnit.Thou => "thou", GapUnit.HundredthMm => "hundredths mm", _ => "µm" };

    /// <summary>How many mm the reader's unit of heights has.</summary>
    public double MmPerHeight => style.Height == HeightUnit.Mm ? 1 : MmPerInch;

    /// <summary>The reader's unit of heights, with decimals.</summary>
    public string HeightUnitName => style.Height == HeightUnit.Mm ? "mm" : "in";

    /// <summary>Whether turf, water and weather are told as in the US.</summary>
    public bool IsAmerican => style.Turf == TurfUnits.American;

    /// <summary>The reader's unit of water, rain and depths in the turf.</summary>
    public string WaterUnitName => IsAmerican ? "in" : "mm";

    /// <summary>The reader's unit of ground.</summary>
    public string GroundUnitName => IsAmerican ? "sq ft" : "m²";

    /// <summary>The reader's unit of distances on the ground.</summary>
    public string DistanceUnitName => IsAmerican ? "ft" : "m";

    /// <summary>The reader's unit of warmth.</summary>
    public string WarmthUnitName => IsAmerican ? "°F" : "°C";

    /// <summary>The reader's unit of nitrogen.</summary>
    public string FeedUnitName => IsAmerican ? "lb/1000 sq ft" : "g/m²";

    /// <summary>The reader's unit of sand and seed.</summary>
    public string DressingUnitName => IsAmerican ? "lb/sq ft" : "kg/m²";

    /// <summary>The reader's unit of clippings.</summary>
    public string ClippingsUnitName => IsAmerican ? "cu ft" : "litres";

    /// <summary>A gap, with its unit: "37 µm", "1.5 thou".</summary>
    public string Gap(double um) => $"{GapNumber(um)} {GapUnitName}";

    /// <summary>A gap as it is known: rounded to what a hand can set, and below nothing a touch.</summary>
    public string SaidGap(double um) => LengthPrinting.SaidGap(um, style);

    /// <summary>A gap, without its unit.</summary>
    public string GapNumber(double um) => Number(um / UmPerGap, style.Gap == GapUnit.Micrometre ? 0 : 1);

    /// <summary>A height, with its unit: "4.8 mm", "0.189 in".</summary>
    /// <param name="mm">mm.</param>
    /// <param name="decimals">Decimals in mm; one more in inches.</param>
    public string Height(double mm, int decimals = 1) => $"{HeightNumber(mm, decimals)} {HeightUnitName}";

    /// <summary>A height, without its unit.</summary>
    public string HeightNumber(double mm, int decimals = 1) => Number(mm / MmPerHeight, style.Height == HeightUnit.Mm ? decimals : decimals + 2);

    /// <summary>Water: "5 mm", "0.20 in".</summary>
    /// <param name="mm">mm.</param>
    /// <param name="decimals">Decimals in mm.</param>
    public string Water(double mm, int decimals) => IsAmerican ? TurfPrinting.Water(mm, style) : $"{Number(mm, decimals)} mm";

    /// <summary>Nitrogen: "1.5 g/m²", "0.31 lb/1000 sq ft".</summary>
    public string Feed(double gm2) => IsAmerican ? TurfPrinting.Feed(gm2, style) : $"{Number(gm2, 1)} g/m²";

    /// <summary>"94 in 100".</summary>
    public static string InHundred(double probability) => Chances.InHundred(probability);

    /// <summary>A number with so many decimals; none of them a needless "-0".</summary>
    public string Number(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('.', style.DecimalSign);
    }

    /// <summary>A word of the trade, as the reader says it.</summary>
    public string Word(WordKey key) => Words.For(style, key);

    /// <summary>With a capital, as at the beginning of a line.</summary>
    public static string Capital(string text) => string.IsNullOrEmpty(text) ? "" : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A station's word: left, centre (center), right.</summary>
    public string Station(string station) => station == "centre" ? Word(WordKey.Centre) : station;
}
