namespace Closemown.Bench.Green;

/// <summary>Places of the other world: the year's usual warmth, and how often each kind of weather comes.</summary>
/// <remarks>Invented, in the manner of a wet lowland by the sea, an inland plain, a cool upland and a dry south. Assumptions.</remarks>
/// <param name="UsualC">Mean temperature.</param>
/// <param name="Comes">How often each air mass follows another, in the order of <see cref="AirMass"/>.</param>
/// <param name="RangeTimes">Range between night and day against the air mass's own.</param>
/// <param name="RainTimes">Amounts of rain so.</param>
/// <param name="FirstDay">Around this day of the year the season begins.</param>
internal sealed record OtherClimate(MonthTable UsualC, double[] Comes, double RangeTimes, double RainTimes, int FirstDay)
{
    private static readonly OtherClimate[] Places =
    [
        new(new(4.5, 4.8, 6.5, 8.8, 12, 15, 17, 16.8, 14.2, 10.8, 7.2, 5), [0.25, 0.35, 0.25, 0.1, 0.05], 0.85, 1, 85),
        new(new(-1, 0.5, 5, 10, 14.8, 18.2, 20.3, 19.8, 15.3, 10, 4.5, 0.5), [0.3, 0.2, 0.15, 0.15, 0.2], 1.15, 1, 95),
        new(new(1.5, 1.8, 3.8, 6.5, 10, 12.8, 14.6, 14.3, 11.8, 8.4, 4.6, 2.2), [0.2, 0.32, 0.28, 0.17, 0.03], 0.85, 1.2, 110),
        new(new(7.5, 8.5, 11, 13.5, 17, 21, 23.5, 23.5, 20.3, 16, 11.2, 8.2), [0.45, 0.18, 0.12, 0.1, 0.15], 1.1, 0.9, 65),
    ];

    /// <summary>Sun of a cloudless day some 50° from the equator, MJ/m².</summary>
    public static MonthTable CloudlessMj { get; } = new(6, 10, 17, 24, 29, 31, 30, 26, 19, 12, 7, 5);

    /// <summary>
    /// Seeds go round the places so that every place has seasons with and without a lower wish, and with and without matches.
    /// </summary>
    public static OtherClimate Of(int seed) => Places[seed / 6 % Places.Length];

    public static bool Summer(int dayOfYear) => dayOfYear is > 120 and < 275;

    /// <summary>What a forecast falls back to: usual rain a day, mm, and usual range, °C.</summary>
    public (double RainMm, double RangeC) Usual
    {
        get
        {
            double days = 0, rain = 0, range = 0;
            foreach (var air in Enum.GetValues<AirMass>())
            {
                var a = AirTraits.Of(air);
                var share = Comes[(int)air] * (1 + a.Days);
                (days, rain, range) = (days + share, rain + (share * a.RainChance * a.RainMm), range + (share * a.RangeC));
            }
            return (RainTimes * rain / days, RangeTimes * range / days);
        }
    }
}
