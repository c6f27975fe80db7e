namespace Closemown.Turf;

/// <summary>What a night does to the leaf, mildest first.</summary>
public enum Frost
{
    /// <summary>Neither air nor grass comes near freezing.</summary>
    None,

    /// <summary>The grass may freeze though the air does not, on a clear still night.</summary>
    GroundFrostPossible,

    /// <summary>The grass is expected to freeze though the air does not.</summary>
    GroundFrost,

    /// <summary>The air itself freezes.</summary>
    AirFrost,
}

/// <summary>How far the sky lets the turf cool below the air.</summary>
public enum NightSky
{
    /// <summary>Not told.</summary>
    Unknown,

    /// <summary>Clear and nearly calm.</summary>
    ClearAndStill,

    /// <summary>Overcast, or windy.</summary>
    CloudyOrWindy,
}

/// <summary>Frost and ground frost from the night's lowest air temperature.</summary>
/// <remarks>
/// Air frost: the air in the screen, 1.25 to 2 m up, falls below 0 °C. Ground frost: a thermometer at the tips of short grass does, which on most nights reads lower; on a
/// clear, calm night over snow by as much as 10 °C (Brugge, answer to a letter in Weather, doi:10.1002/wea.760). How much lower is not one number: the figures here, 4 °C clear
/// and still, 1 °C cloudy or windy, are common practice, no source, and so no probability is made of them. Frozen turf is not mown or walked on, whatever this says:
/// look at it.
/// </remarks>
public static class FrostRisk
{
    /// <summary>How much colder than the air short grass gets on a clear still night, °C (common practice, no source).</summary>
    public const double ClearDropC = 4;

    /// <summary>How much colder under cloud or in wind, °C (common practice, no source).</summary>
    public const double CloudyDropC = 1;

    private const double FreezingC = 0;

    /// <summary>The lowest temperature at the tips of short grass that must be reckoned with, °C. Not told: as on a clear still night.</summary>
    /// <param name="tMinC">Lowest air temperature of the night, °C, −100 to 100.</param>
    /// <param name="sky">The sky, where it is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static double GrassMinimumC(double tMinC, NightSky sky = NightSky.Unknown)
    {
        Must.BeTemperature(tMinC);
        return tMinC - (sky == NightSky.CloudyOrWindy ? CloudyDropC : ClearDropC);
    }

    /// <summary>What the night does.</summary>
    /// <example>3 °C: ground frost under a clear still sky, possible where the sky is not known, none under cloud.</example>
    /// <param name="tMinC">Lowest air temperature of the night, °C, −100 to 100.</param>
    /// <param name="sky">The sky, where it is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static Frost Of(double tMinC, NightSky sky = NightSky.Unknown)
    {
        var grass = GrassMinimumC(tMinC, sky);
        if (tMinC < FreezingC) return Frost.AirFrost;
        if (grass >= FreezingC) return Frost.None;
        return sky == NightSky.Unknown && tMinC >= CloudyDropC ? Frost.GroundFrostPossible : Frost.GroundFrost;
    }

    /// <summary>Whether frozen leaves turn white: rime forms where the grass is colder than the frost point; dry air freezes the leaf without a sign.</summary>
    /// <param name="grassC">Temperature of the grass, °C, −100 to 100.</param>
    /// <param name="vapourKpa">Vapour pressure of the air, kPa, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static bool Rime(double grassC, double vapourKpa)
    {
        Must.BeTemperature(grassC);
        return grassC < FreezingC && grassC < IceVapourPressure.FrostPointC(vapourKpa).Value;
    }
}
