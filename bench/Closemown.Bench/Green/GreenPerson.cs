namespace Closemown.Bench.Green;

/// <summary>On which days the person is there: usual weekdays mostly, others now and then, and weeks away.</summary>
internal static class GreenPerson
{
    private const double AwayUsual = 0.15, ThereOther = 0.07, HolidayStarts = 1 / 60.0;

    public static bool[] Free(int seed, GreenMake make, DateOnly first, int days)
    {
        var free = new bool[days];
        var away = 0;
        for (var t = 0; t < days; t++)
        {
            if (away > 0) away--;
            else if (GreenChance.Uniform(seed, GreenChance.Holiday, t) < HolidayStarts) away = 5 + (int)(5 * GreenChance.Uniform(seed, GreenChance.Holiday, t, 1));
            var usual = make.Weekdays.Contains(first.AddDays(t).DayOfWeek);
            free[t] = away == 0 && GreenChance.Uniform(seed, GreenChance.Away, t) < (usual ? 1 - AwayUsual : ThereOther);
        }
        return free;
    }
}
