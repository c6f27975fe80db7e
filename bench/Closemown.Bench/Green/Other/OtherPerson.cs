using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>
/// On which days the person of the other world is there: trips that come as one waits for them, and nobody mows in the rain.
/// </summary>
/// <remarks>A usual day that was rained off is made up for on the next fine one, often. Assumptions.</remarks>
internal static class OtherPerson
{
    private const double Dry = 0.9, Wet = 0.7, Pouring = 0.35, WetMm = 2, PouringMm = 8, ThereOther = 0.05, MakesUp = 0.35, MeanGap = 38;

    public static bool[] Free(int seed, GreenMake make, DateOnly first, int days, Func<int, SkyDay> sky)
    {
        var away = Away(seed, days);
        var free = new bool[days];
        var owed = false;
        for (var t = 0; t < days; t++)
        {
            var usual = make.Weekdays.Contains(first.AddDays(t).DayOfWeek);
            var rain = sky(t).RainMm;
            var comes = usual ? (rain >= PouringMm ? Pouring : rain >= WetMm ? Wet : Dry) : owed && rain < 1 ? MakesUp : ThereOther;
            free[t] = !away[t] && GreenChance.Uniform(seed, GreenChance.OtherThere, t) < comes;
            owed = !away[t] && !free[t] && (owed || (usual && rain >= WetMm));
        }
        return free;
    }

    /// <summary>
    /// Trips: the wait for the next is the sum of two, so that they seldom follow close; most are a few days, some a fortnight's
    /// holiday or nearly.
    /// </summary>
    private static bool[] Away(int seed, int days)
    {
        var r = Chance.Stream(seed, GreenChance.OtherTrips);
        var away = new bool[days];
        for (var t = (int)(MeanGap * r.NextDouble()); t < days;)
        {
            var kind = r.NextDouble();
            var length = kind < 0.45 ? 2 + r.Next(2) : kind < 0.8 ? 4 + r.Next(4) : 8 + r.Next(5);
            for (var a = 0; a < length && t < days; a++) away[t++] = true;
            t += 1 + (int)(-MeanGap / 2 * Math.Log((1 - r.NextDouble()) * (1 - r.NextDouble())));
        }
        return away;
    }
}
