namespace Closemown.Bench.Green;

/// <summary>A forecast that leans to what is usual the further it looks, misses showers, and is sometimes a day early or late.</summary>
/// <remarks>Warmth and rain are shrunk to the usual; of showers it knows that they are about, not where they fall. Assumptions.</remarks>
internal static class OtherForecast
{
    private const double Knows = 0.95, Forgets = 0.88, SlipFirst = 0.03, SlipMore = 0.015, BiasSdC = 0.4, ErrorSdC = 0.5,
        ErrorMoreC = 0.12, NightSdC = 0.7;
    private const double ShowersMissed = 0.4, ShowersInVain = 0.35, AmountTimes = 1.4, LeastMm = 0.3;

    public static SkyDay[] Of(int seed, int day, Func<int, OtherDay> sky, OtherClimate climate, DateOnly first)
    {
        var said = new SkyDay[GreenForecast.Days];
        var (usualRain, usualRange) = climate.Usual;
        var bias = BiasSdC * GreenChance.Normal(seed, GreenChance.OtherForecast, day, -1);
        var (slip, knows) = (0, Knows);
        for (var a = 0; a < said.Length; a++)
        {
            double U(int what) => GreenChance.Uniform(seed, GreenChance.OtherForecast, day, a, what);
            double N(int what) => GreenChance.Normal(seed, GreenChance.OtherForecast, day, a, what);
            // Once it is a day out, so is all that follows.
            if (slip == 0 && U(0) < SlipFirst + (SlipMore * a)) slip = U(1) < 0.5 ? -1 : 1;
            var true0 = sky(day + Math.Max(0, a + slip));
            var usualC = climate.UsualC.On(first.AddDays(day + a).DayOfYear);
            var mean = (knows * true0.Seen.MeanC) + ((1 - knows) * usualC) + bias + ((ErrorSdC + (ErrorMoreC * a)) * N(2));
            var range = (knows * (true0.Seen.TMaxC - true0.Seen.TMinC)) + ((1 - knows) * usualRange);
            var foreseen = Rain(true0, U(3), N(4));
            var rain = (knows * foreseen) + ((1 - knows) * usualRain);
            said[a] = new(mean - (range / 2) + (NightSdC * N(5)), mean + (range / 2), rain < LeastMm ? 0 : rain);
            knows *= Forgets;
        }
        return said;
    }

    private static double Rain(OtherDay d, double u, double z)
    {
        if (!AirTraits.Convective(d.Air)) return d.Seen.RainMm * Math.Pow(AmountTimes, z);
        var usual = AirTraits.Of(d.Air).RainMm;
        return d.Seen.RainMm > 0 ? (u < ShowersMissed ? 0 : usual) : u < ShowersInVain ? usual / 2 : 0;
    }
}
