namespace Closemown.Bench.Green;

/// <summary>The kinds of weather of the other world: each lasts some days and gives way to another.</summary>
internal enum AirMass
{
    /// <summary>Dry and bright; hot in summer once it has stood for some days, cold nights otherwise.</summary>
    High,

    /// <summary>Dull, wide rain.</summary>
    Fronts,

    /// <summary>Sun and showers, each place by luck.</summary>
    Showers,

    /// <summary>Air from the pole, mostly dry.</summary>
    Cold,

    /// <summary>Hot and close, with a thunderstorm now and then.</summary>
    Sultry,
}

/// <summary>A day as it is, with the sun that no station of the person's reads.</summary>
/// <param name="Seen">What the person's station reads.</param>
/// <param name="SunMj">Radiation, MJ/m².</param>
/// <param name="Air">The air of that day.</param>
internal readonly record struct OtherDay(SkyDay Seen, double SunMj, AirMass Air);

/// <summary>What an air mass brings. Assumptions.</summary>
/// <param name="Days">How long it lasts past its first day, mean.</param>
/// <param name="SummerC">Against the usual mean temperature, in the warm half of the year.</param>
/// <param name="WinterC">The same in the cold half.</param>
/// <param name="RangeC">Between night and day.</param>
/// <param name="RainChance">A day.</param>
/// <param name="RainMm">Where it rains, mean.</param>
/// <param name="Clear">Sun as a share of a cloudless day's.</param>
internal readonly record struct AirTraits(
    double Days, double SummerC, double WinterC, double RangeC, double RainChance, double RainMm, double Clear)
{
    public static AirTraits Of(AirMass air) => air switch
    {
        AirMass.High => new(5.5, 1.5, -1.5, 12.5, 0.03, 1, 0.85),
        AirMass.Fronts => new(2, -1, 1.5, 5.5, 0.75, 7, 0.3),
        AirMass.Showers => new(2, -1.5, 0, 8, 0.55, 4, 0.55),
        AirMass.Cold => new(3, -4, -3.5, 9, 0.2, 2, 0.65),
        _ => new(1.8, 4.5, 3, 11, 0.35, 9, 0.65),
    };

    /// <summary>Rain that falls here and not there, and that no forecast sees.</summary>
    public static bool Convective(AirMass air) => air is AirMass.Showers or AirMass.Sultry;
}
