using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>What no law explains: weeks in which the green hangs back, days on which it bursts, a little every day.</summary>
/// <remarks>Bursts come mostly on warm days after a good rain. Assumptions.</remarks>
internal static class OtherLuck
{
    private const double Slack = 1 / 50.0, SlackShare = 0.65, Burst = 1 / 60.0, BurstAfterRain = 0.2, BurstShare = 1.5, RainMm = 8,
        DayShare = 0.12;

    public static double[] Of(int seed, OtherDay[] sky)
    {
        var r = Chance.Stream(seed, GreenChance.OtherLuck);
        var luck = new double[sky.Length];
        var (left, share) = (0, 1.0);
        for (var i = 0; i < sky.Length; i++)
        {
            if (left-- <= 0)
            {
                (left, share) = (0, 1.0);
                var wetted = i > 0 && sky[i - 1].Seen.RainMm > RainMm && sky[i].Seen.MeanC > 12;
                var at = r.NextDouble();
                if (at < Slack) (left, share) = (3 + r.Next(9), SlackShare);
                else if (at < Slack + (wetted ? BurstAfterRain : Burst)) (left, share) = (r.Next(3), BurstShare);
            }
            // Two draws: mostly near the middle, and never further than that.
            luck[i] = share * (1 + (DayShare * (r.NextDouble() - r.NextDouble())));
        }
        return luck;
    }
}
