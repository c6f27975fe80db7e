namespace Closemown.Turf;

/// <summary>What each day of the solved horizon allows, whatever the turf does.</summary>
internal sealed class PlanCalendar
{
    private const int Week = 7;

    public PlanCalendar(PlanProblem p)
    {
        Solved = Math.Max(p.Days, PlanLimits.LeastSolvedDays);
        Free = new double[Solved];
        CanChange = new bool[Solved];
        Minutes = new double[Solved];
        ToFixture = new int[Solved];
        for (var t = 0; t < Solved; t++)
        {
            Minutes[t] = Repeated(p.FreeMinutes, t, double.PositiveInfinity);
            Free[t] = Minutes[t] >= p.MowingMinutes ? Repeated(p.Free, t, 1) : 0;
            ToFixture[t] = -1;
            foreach (var f in p.Fixtures)
            {
                var days = f.DayNumber - p.From.DayNumber - t;
                if (days >= 0 && (ToFixture[t] < 0 || days < ToFixture[t])) ToFixture[t] = days;
            }
            CanChange[t] = !Held(t, p) && Minutes[t] >= p.MowingMinutes + p.HeightChangeMinutes;
        }
    }

    public int Solved { get; }

    /// <summary>Probability that a mowing can be made, the ground apart.</summary>
    public double[] Free { get; }

    public bool[] CanChange { get; }

    public double[] Minutes { get; }

    /// <summary>Days to the next match, −1 where none comes.</summary>
    public int[] ToFixture { get; }

    public bool Held(int t, PlanProblem p) => ToFixture[t] >= 0 && ToFixture[t] <= p.NoHeightChangeDays;

    /// <summary>The day of the traces that stands for a day: past their end their last week again.</summary>
    public static int TraceDay(int t, int days)
    {
        if (t < days) return t;
        var span = Math.Min(Week, days);
        return days - span + ((t - days) % span);
    }

    private static double Repeated(IReadOnlyList<double> list, int t, double none) => list.Count == 0 ? none : list[TraceDay(t, list.Count)];
}
