namespace Closemown.Turf;

/// <summary>What each day of the solved horizon allows, whatever the turf does.</summary>
internal sealed class PlanCalendar
{
    private const int Week = 7;
    private const double Likely = 0.5;
    private readonly double[] aheadMm, toNextMm;
    private readonly int noLoweringDays;
    private readonly IReadOnlyList<bool> growingOn;

    public PlanCalendar(PlanProblem p)
    {
        Solved = Math.Max(p.Days, PlanLimits.LeastSolvedDays);
        Free = new double[Solved];
        CanChange = new bool[Solved];
        Minutes = new double[Solved];
        ToFixture = new int[Solved];
        (aheadMm, noLoweringDays, growingOn) = (Ahead(p.Traces, Solved), p.NoLoweringDays, p.GrowingOn);
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
        toNextMm = ToNext(p.Traces);
    }

    public int Solved { get; }

    /// <summary>Probability that a mowing can be made, the ground apart.</summary>
    public double[] Free { get; }

    public bool[] CanChange { get; }

    public double[] Minutes { get; }

    /// <summary>Days to the next match, −1 where none comes.</summary>
    public int[] ToFixture { get; }

    public bool Held(int t, PlanProblem p) => ToFixture[t] >= 0 && ToFixture[t] <= p.NoHeightChangeDays;

    /// <summary>What grows in the days that a lowering looks ahead, mm, mean over traces.</summary>
    public double AheadMm(int t) => aheadMm[t];

    /// <summary>What grows until the next day on which someone is probably there, a week at most, mm, mean over traces.</summary>
    public double ToNextMm(int t) => toNextMm[t];

    /// <summary>Whether it grows enough there for a height that the turf is not used to.</summary>
    public bool GrowsAhead(int t, double usedMm) =>
        (growingOn.Count == 0 || growingOn[Math.Min(t, growingOn.Count - 1)]) && aheadMm[t] >= PlanLimits.LowerAheadShare * usedMm;

    /// <summary>Whether a height may be lowered that day as far as days go: it grows enough ahead, and no work lies in the turf.</summary>
    public bool MayLower(int t, double usedMm) => t >= noLoweringDays && GrowsAhead(t, usedMm);

    /// <summary>The day of the traces that stands for a day: past their end their last week again.</summary>
    public static int TraceDay(int t, int days)
    {
        if (t < days) return t;
        var span = Math.Min(Week, days);
        return days - span + ((t - days) % span);
    }

    private double[] ToNext(PlanTraces traces)
    {
        var mean = Means(traces);
        var grows = new double[Solved];
        for (var t = 0; t < Solved; t++)
        {
            var next = t;
            do grows[t] += mean[TraceDay(next++, traces.Days)];
            while (next < t + Week && Free[Math.Min(next, Solved - 1)] < Likely);
        }
        return grows;
    }

    private static double[] Means(PlanTraces traces)
    {
        var mean = new double[traces.Days];
        for (var n = 0; n < traces.Count; n++)
        {
            for (var d = 0; d < traces.Days; d++) mean[d] += traces.GrowthMm[n, d] / traces.Count;
        }
        return mean;
    }

    private static double[] Ahead(PlanTraces traces, int solved)
    {
        var mean = Means(traces);
        var ahead = new double[solved];
        for (var t = 0; t < solved; t++)
        {
            for (var d = t; d < t + PlanLimits.LowerAheadDays; d++) ahead[t] += mean[TraceDay(d, traces.Days)];
        }
        return ahead;
    }

    private static double Repeated(IReadOnlyList<double> list, int t, double none) => list.Count == 0 ? none : list[TraceDay(t, list.Count)];
}
