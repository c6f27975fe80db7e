using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>The planner, with the small filter's estimate, told of the green and its weather, of the days the person is there, or of both.</summary>
internal sealed class PlannedGreen(GreenTruth truth, bool told, bool toldDays, double startMm, int count = 60, int horizon = 14, PlanLosses? losses = null) : IGreenStrategy, ISays
{
    private const double Away = 0.15, ThereOther = 0.07, RecentDays = 14;
    private readonly GreenFilter filter = new(startMm + 1);
    private readonly PlanWorkspace space = new();
    private readonly int solved = Math.Max(horizon, PlanLimits.LeastSolvedDays);
    private double recentC = double.NaN, wet = 0.3, range = 9;
    private readonly List<(DateOnly Date, double Mm)> cuts = [];
    private int since = 99;

    public (double Mean, double Sd)? Said { get; private set; }

    /// <inheritdoc/>
    /// <remarks>By the futures it plans by; the one that is told the green has one future and no spread.</remarks>
    public (double Mean, double Sd)? WeekGrowth { get; private set; }

    public (double Mean, double Sd)? InAWeek => null;

    public WishPromise? Promise { get; private set; }

    public double? RateMm => filter.RateMm;

    public Decision Day(GreenDay d)
    {
        filter.Morning(d);
        Said = d.Free ? filter.Foreseen : null;
        (WeekGrowth, Promise) = (null, null);
        if (double.IsNaN(recentC)) recentC = d.Yesterday.MeanC;
        recentC += (d.Yesterday.MeanC - recentC) / RecentDays;
        wet += ((d.Yesterday.RainMm > 0.5 ? 1 : 0) - wet) / (2 * RecentDays);
        range += (d.Yesterday.TMaxC - d.Yesterday.TMinC - range) / RecentDays;
        if (d.MownYesterday is { } mown) cuts.Add((d.Date.AddDays(-1), mown.SetMm));
        if (!d.Free || d.KeepOff) return Decision.None;
        var used = UsedHeight.Of(cuts, told ? truth.World.CanopyMm - truth.World.Make.CutOffMm : filter.CanopyMm, d.Date);
        var free = new double[solved];
        for (var t = 0; t < solved; t++) free[t] = toldDays ? (truth.Free[d.Number + t] ? 1 : 0) : d.Weekdays.Contains(d.Date.AddDays(t).DayOfWeek) ? 1 - Away : ThereOther;
        free[0] = 1;
        var traces = new PlanTraces(told ? 8 : count, solved);
        if (told) Tell(traces, d);
        else GreenGuess.Fill(traces, filter, d, recentC, wet, range, truth.Seed);
        if (!told) WeekGrowth = Week(traces);
        var world = truth.World;
        var whole = MowingPlanner.Plan(
            new()
            {
                From = d.Date,
                Days = horizon,
                Traces = traces,
                CanopyMm = told ? new(world.CanopyMm - world.Make.CutOffMm, 0.01) : new(filter.CanopyMm, filter.CanopySd),
                CanopySdMm = told ? 0.05 : 0.3,
                Stress = told ? new(world.Stress, 0) : new(Math.Clamp(filter.Stress, 0, 3), 0.3),
                CutMm = new(d.SetMm, 0.12),
                UsedMm = used?.Mm,
                DaysSinceRaised = used?.DaysSinceRaised,
                GreenBaseMm = told ? new(world.BaseMm - world.Make.CutOffMm, 0.05) : new(filter.BaseMm, filter.BaseSd),
                GreenBaseShare = Math.Min(0.8, told ? world.Make.BaseShare : filter.BaseShare),
                WishMm = d.WishMm,
                WishBy = d.WishBy,
                Free = free,
                Fixtures = d.Fixtures,
                MowingsSinceLowering = since,
                Losses = losses ?? new(),
            },
            space);
        if (whole.Wish.Earliest is { } on) Promise = new(on, whole.Wish.Extrapolated);
        var plan = whole.Days[0];
        if (!plan.Mow) return Decision.None;
        since = plan.Move == CutMove.Lowered ? 0 : since + 1;
        return new(true, plan.CutMm);
    }

    private void Tell(PlanTraces traces, GreenDay d)
    {
        var future = truth.World.Future(d.Number, solved, 1.2 * d.SetMm);
        for (var n = 0; n < traces.Count; n++)
        {
            for (var t = 0; t < solved; t++)
                (traces.GrowthMm[n, t], traces.KeepOff[n, t], traces.Wilting[n, t], traces.StressInput[n, t]) = future[t];
        }
    }

    private static (double Mean, double Sd) Week(PlanTraces traces)
    {
        const int Days = 7;
        var sums = new double[traces.Count];
        for (var n = 0; n < sums.Length; n++)
        {
            for (var t = 0; t < Days; t++) sums[n] += traces.GrowthMm[n, t];
        }
        var mean = sums.Average();
        return (mean, Math.Sqrt(sums.Sum(s => (s - mean) * (s - mean)) / (sums.Length - 1)));
    }
}
