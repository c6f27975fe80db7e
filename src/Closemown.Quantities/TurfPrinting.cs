namespace Closemown.Quantities;

/// <summary>Prints areas, distances, warmth, rain, wind and what is spread in the person's units.</summary>
public static class TurfPrinting
{
    private const double MmPerInch = 25.4;

    /// <summary>An area: <c>120 m²</c>, <c>1292 sq ft</c>.</summary>
    public static string Ground(double squareMetres, WritingStyle style) =>
        American(style) ? Area.Print(squareMetres, AreaUnit.SquareFoot, style, 0) : Area.Print(squareMetres, AreaUnit.SquareMetre, style);

    /// <summary>A distance on the ground, or a height of the land: <c>2.4 m</c>, <c>7.9 ft</c>.</summary>
    public static string Distance(double metres, WritingStyle style) =>
        American(style) ? Length.Print(metres * 1000, LengthUnit.Foot, style, Math.Abs(metres) < 30 ? 1 : 0) : Length.Print(metres * 1000, LengthUnit.M, style);

    /// <summary>How warm it is: <c>20 °C</c>, <c>68 °F</c>.</summary>
    public static string Warmth(double celsius, WritingStyle style) =>
        American(style) ? Temperature.Print(celsius, TemperatureUnit.Fahrenheit, style, 0) : Temperature.Print(celsius, TemperatureUnit.Celsius, style);

    /// <summary>Rain, or water given: <c>5 mm</c>, <c>0.2 in</c>.</summary>
    public static string Water(double mm, WritingStyle style) =>
        American(style) ? Length.Print(Math.Round(mm / MmPerInch, 2) * MmPerInch, LengthUnit.Inch, style) : Length.Print(mm, LengthUnit.Mm, style);

    /// <summary>Wind: <c>3 m/s</c>, <c>6.7 mph</c>.</summary>
    public static string Wind(double metresPerSecond, WritingStyle style) =>
        American(style) ? Speed.Print(metresPerSecond, SpeedUnit.MilePerHour, style, 0) : Speed.Print(metresPerSecond, SpeedUnit.MetrePerSecond, style);

    /// <summary>Nitrogen: <c>1.5 g/m²</c>, <c>0.31 lb/1000 sq ft</c>.</summary>
    public static string Feed(double gramsPerSquareMetre, WritingStyle style) =>
        SpreadRate.Print(gramsPerSquareMetre, American(style) ? SpreadRateUnit.PoundPerThousandSquareFeet : SpreadRateUnit.GramPerSquareMetre, style);

    /// <summary>Sand, or seed: <c>1 kg/m²</c>, <c>0.2 lb/sq ft</c>.</summary>
    public static string Dressing(double kilogramsPerSquareMetre, WritingStyle style) =>
        SpreadRate.Print(kilogramsPerSquareMetre * 1000, American(style) ? SpreadRateUnit.PoundPerSquareFoot : SpreadRateUnit.KilogramPerSquareMetre, style);

    /// <summary>What came off: <c>12 l</c>, <c>0.42 cu ft</c>.</summary>
    public static string Clippings(double litres, WritingStyle style) =>
        Volume.Print(litres, American(style) ? VolumeUnit.CubicFoot : VolumeUnit.Litre, style);

    private static bool American(WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return style.Turf == TurfUnits.American;
    }
}
