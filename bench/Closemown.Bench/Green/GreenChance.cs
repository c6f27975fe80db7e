using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>Names of the streams of chance of a green, apart from those of the workshop and the heights. World and readings never share one.</summary>
internal static class GreenChance
{
    public const int Making = 201, Weather = 202, Growth = 203, Cut = 204, Away = 205, Holiday = 206, Water = 207, Spots = 208, WhenRead = 209, Forecast = 210, Clippings = 211, Guess = 212, Wishes = 213;

    /// <summary>Those of the other world.</summary>
    public const int OtherMaking = 231, OtherWeather = 232, OtherLuck = 233, OtherFeeding = 234, OtherCut = 235, OtherTrips = 236,
        OtherThere = 237, OtherWatering = 238, OtherForecast = 239;

    public static double Normal(params ReadOnlySpan<int> key) => Chance.Normal(key);

    public static double Uniform(params ReadOnlySpan<int> key) => Chance.Uniform(key);
}
