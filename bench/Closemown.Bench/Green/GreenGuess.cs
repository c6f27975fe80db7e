using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>Futures as a person's forecast and record allow them: a week by forecast with its error, then weather as of late.</summary>
internal static class GreenGuess
{
    private const double Persists = 0.75, LateSd = 3;

    public static void Fill(PlanTraces traces, GreenFilter filter, GreenDay d, double recentC, double wetShare, double rangeC, int seed)
    {
        for (var n = 0; n < traces.Count; n++)
        {
            // The same draws on every day: what changes from one plan to the next is what is known.
            var rate = Math.Max(0.1, filter.RateMm + (filter.RateSd * GreenChance.Normal(seed, GreenChance.Guess, n)));
            var run = filter.Run;
            var off = 0.0;
            for (var t = 0; t < traces.Days; t++)
            {
                off = (Persists * off) + ((t < d.Forecast.Length ? 0.6 + (0.15 * t) : LateSd * 0.66) * GreenChance.Normal(seed, GreenChance.Guess, n, t));
                SkyDay s;
                if (t < d.Forecast.Length)
                {
                    var f = d.Forecast[t];
                    var wrong = GreenChance.Uniform(seed, GreenChance.Guess, n, t, 1) < 0.1 + (0.04 * t);
                    s = new(f.TMinC + off, f.TMaxC + off, wrong ? (f.RainMm > 0 ? 0 : 4) : f.RainMm);
                }
                else
                {
                    var mean = recentC + off;
                    var wet = GreenChance.Uniform(seed, GreenChance.Guess, n, t, 2) < wetShare;
                    s = new(mean - (rangeC / 2), mean + (rangeC / 2), wet ? 6 : 0);
                }
                var dry = run.WaterMm < 13 && s.RainMm < 1;
                var (after, share, input, wilts) = run.Next(s, d.Date.AddDays(t).DayOfYear, dry ? 5 : 0);
                run = after;
                traces.GrowthMm[n, t] = rate * share * Math.Exp(0.22 * GreenChance.Normal(seed, GreenChance.Guess, n, t, 3));
                traces.KeepOff[n, t] = t == 0 ? d.KeepOff : s.TMinC < 0.3;
                traces.Wilting[n, t] = t == 0 ? d.Wilting : wilts;
                traces.StressInput[n, t] = Math.Min(3, filter.Feels * input);
            }
        }
    }
}
