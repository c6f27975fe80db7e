using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>A green of the other world: one of three kinds of grass, and what else that green is like. Nobody is told.</summary>
/// <remarks>Kinds in the manner of fine fescues, bentgrass and annual meadow-grass; how far they differ is an assumption.</remarks>
/// <param name="Seen">What any world's green has.</param>
/// <param name="HeatC">Days warmer than this hurt.</param>
/// <param name="DeepRoots">Share of the roots below the thatch, with reserves full.</param>
/// <param name="FixesMm">What leaf that takes all light of a bright day brings, as growth it can feed, mm.</param>
/// <param name="Clock">Watered by a clock, not by hand.</param>
/// <param name="FeedGm2">Nitrogen of a feeding, g/m².</param>
internal sealed record OtherMake(GreenMake Seen, double HeatC, double DeepRoots, double FixesMm, bool Clock, double FeedGm2)
{
    private const double RateSd = 0.15, WideRateSd = 0.45;

    private static readonly (double Often, double RateMm, double BaseShare, double HeatC, double DeepRoots)[] Kinds =
        [(0.25, 0.7, 0.49, 31, 0.45), (0.45, 0.95, 0.52, 30, 0.38), (0.3, 1.2, 0.55, 28.5, 0.25)];

    private static readonly DayOfWeek[][] Weeks =
    [
        [DayOfWeek.Monday, DayOfWeek.Wednesday, DayOfWeek.Friday],
        [DayOfWeek.Tuesday, DayOfWeek.Thursday, DayOfWeek.Saturday],
        [DayOfWeek.Sunday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Saturday],
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Thursday, DayOfWeek.Friday],
        [DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday, DayOfWeek.Saturday],
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday],
    ];

    public static OtherMake Of(int seed, bool wide)
    {
        var r = Chance.Stream(seed, GreenChance.OtherMaking);
        var at = r.NextDouble();
        var kind = at < Kinds[0].Often ? Kinds[0] : at < Kinds[0].Often + Kinds[1].Often ? Kinds[1] : Kinds[2];
        var seen = new GreenMake
        {
            RateMm = kind.RateMm * Math.Exp(Chance.Normal(r, 0, wide ? WideRateSd : RateSd)),
            CutOffMm = Chance.Normal(r, 0.05, 0.2),
            BaseShare = Math.Clamp(Chance.Normal(r, kind.BaseShare, 0.04), 0.4, 0.65),
            ClipLitres = 0.05 * Math.Exp(Chance.Normal(r, 0, 0.35)),
            Weekdays = [.. Weeks[r.Next(Weeks.Length)].Order()],
            Waters = 0.5 + (0.45 * r.NextDouble()),
            StepsDown = GreenMake.LowersIn(seed),
            HasFixtures = GreenMake.PlaysIn(seed),
        };
        return new(
            seen,
            kind.HeatC + Chance.Normal(r, 0, 0.7),
            kind.DeepRoots,
            (1.4 + (0.9 * seen.RateMm)) * Math.Exp(Chance.Normal(r, 0, 0.08)),
            r.NextDouble() < 0.5,
            0.8 + (1.4 * r.NextDouble()));
    }
}
