using Closemown.Bench.Workshop;
using Closemown.Estimation;

namespace Closemown.Bench.Green;

/// <summary>What a green, its mower and its person are like; nobody is told.</summary>
internal sealed class GreenMake
{
    /// <param name="seed">Which green.</param>
    /// <param name="wide">Growth rates with 1.6 as their standard deviation; otherwise 1.6 is the most either way.</param>
    public GreenMake(int seed, bool wide)
    {
        var r = Chance.Stream(seed, GreenChance.Making);
        var z = Chance.Normal(r, 0, 1);
        RateMm = 0.95 * Math.Pow(1.6, wide ? z : (2 * NormalMath.Phi(z)) - 1);
        CutOffMm = Chance.Normal(r, 0, 0.2);
        BaseShare = Math.Clamp(Chance.Normal(r, 0.55, 0.04), 0.42, 0.66);
        ClipLitres = 0.05 * Math.Pow(1.4, Chance.Normal(r, 0, 1));
        var count = 3 + r.Next(3);
        Weekdays = [.. Enum.GetValues<DayOfWeek>().OrderBy(_ => r.Next()).Take(count).Order()];
        Waters = 0.3 + (0.6 * r.NextDouble());
        StepsDown = seed % 2 == 1;
        HasFixtures = seed % 3 == 1;
    }

    /// <summary>Growth in height at its best and 5 mm, mm a day.</summary>
    public double RateMm { get; }

    /// <summary>What the mower leaves more than it is set to, mm.</summary>
    public double CutOffMm { get; }

    /// <summary>Green base as a share of the height kept.</summary>
    public double BaseShare { get; }

    /// <summary>Clippings, litres a m² and mm taken off.</summary>
    public double ClipLitres { get; }

    /// <summary>The person's usual days.</summary>
    public DayOfWeek[] Weekdays { get; }

    /// <summary>How likely it is watered on a dry day.</summary>
    public double Waters { get; }

    /// <summary>Whether a lower cut is wished for during the season.</summary>
    public bool StepsDown { get; }

    public bool HasFixtures { get; }
}
