using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>On which days the green is fed: every four or five weeks, as it suits.</summary>
internal static class OtherFeeding
{
    private const double MeanGap = 33;

    public static double[] Of(int seed, OtherMake make, int days)
    {
        var r = Chance.Stream(seed, GreenChance.OtherFeeding);
        var fed = new double[days];
        for (var t = (int)(MeanGap * r.NextDouble()); t < days;)
        {
            fed[t] = make.FeedGm2 * (0.7 + (0.6 * r.NextDouble()));
            // The sum of three waits: seldom soon after the last, seldom long after it.
            t += 5 + (int)(-(MeanGap - 5) / 3 * Math.Log((1 - r.NextDouble()) * (1 - r.NextDouble()) * (1 - r.NextDouble())));
        }
        return fed;
    }
}
