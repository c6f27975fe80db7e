namespace Closemown.Bench.Green;

/// <summary>An ordinary forecast: its error grows with the days ahead and hangs together.</summary>
internal static class GreenForecast
{
    public const int Days = 7;

    public static SkyDay[] Of(int seed, GreenWorld world, int t)
    {
        var said = new SkyDay[Days];
        var off = 0.0;
        for (var a = 0; a < said.Length; a++)
        {
            off = (0.8 * off) + ((0.6 + (0.15 * a)) * GreenChance.Normal(seed, GreenChance.Forecast, t, a));
            var true0 = world.Sky(t + a);
            var wrong = GreenChance.Uniform(seed, GreenChance.Forecast, t, a, 1) < 0.1 + (0.04 * a);
            var scale = Math.Pow(1.5, GreenChance.Normal(seed, GreenChance.Forecast, t, a, 2));
            var rain = wrong ? (true0.RainMm > 0 ? 0 : 4) : true0.RainMm * scale;
            said[a] = new(true0.TMinC + off + (0.6 * GreenChance.Normal(seed, GreenChance.Forecast, t, a, 3)), true0.TMaxC + off, rain);
        }
        return said;
    }
}
