using Closemown.Bench.Workshop;
using Closemown.Estimation;

namespace Closemown.Bench.Green;

/// <summary>What a green, its mower and its person are like; nobody is told.</summary>
internal sealed record GreenMake
{
    /// <summary>A green of the first world.</summary>
    /// <param name="seed">Which green.</param>
    /// <param name="wide">Growth rates with 1.6 as their standard deviation; otherwise 1.6 is the most either way.</param>
    public static GreenMake Of(int seed, bool wide)
    {
        var r = Chance.Stream(seed, GreenChance.Making);
        var z = Chance.Normal(r, 0, 1);
        return new()
        {
            RateMm = 0.95 * Math.Pow(1.6, wide ? z : (2 * NormalMath.Phi(z)) - 1),
            CutOffMm = Chance.Normal(r, 0, 0.2),
            BaseShare = Math.Clamp(Chance.Normal(r, 0.55, 0.04), 0.42, 0.66),
            ClipLitres = 0.05 * Math.Pow(1.4, Chance.Normal(r, 0, 1)),
            Weekdays = Days(r, 3 + r.Next(3)),
            Waters = 0.3 + (0.6 * r.NextDouble()),
            StepsDown = LowersIn(seed),
            HasFixtures = PlaysIn(seed),
        };
    }

    /// <summary>In every second season of any world a lower cut is wished for.</summary>
    public static bool LowersIn(int seed) => seed % 2 == 1;

    /// <summary>In every third there are matches.</summary>
    public static bool PlaysIn(int seed) => seed % 3 == 1;

    /// <summary>Growth in height at its best and 5 mm, mm a day.</summary>
    public required double RateMm { get; init; }

    /// <summary>What the mower leaves more than it is set to, mm.</summary>
    public required double CutOffMm { get; init; }

    /// <summary>Green base as a share of the height kept.</summary>
    public required double BaseShare { get; init; }

    /// <summary>Clippings, litres a m² and mm taken off.</summary>
    public required double ClipLitres { get; init; }

    /// <summary>The person's usual days.</summary>
    public required DayOfWeek[] Weekdays { get; init; }

    /// <summary>How likely it is watered on a dry day.</summary>
    public required double Waters { get; init; }

    /// <summary>Whether a lower cut is wished for during the season.</summary>
    public required bool StepsDown { get; init; }

    public required bool HasFixtures { get; init; }

    private static DayOfWeek[] Days(Random r, int count) => [.. Enum.GetValues<DayOfWeek>().OrderBy(_ => r.Next()).Take(count).Order()];
}
