using System.Diagnostics;
using Closemown.Bench.Workshop;
using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>How long a mowing plan takes, on one core.</summary>
internal static class PlanSpeed
{
    private const int Times = 15;

    public static int Print(string[] args)
    {
        var lines = new List<string[]> { (string[])["days", "traces", "ms, median", "ms, longest"] };
        var space = new PlanWorkspace();
        foreach (var (days, traces) in ((int, int)[])[(14, 60), (14, 200), (60, 200), (366, 200)])
        {
            var problem = Problem(days, traces, 1);
            MowingPlanner.Plan(problem, space);
            var took = new double[Times];
            for (var i = 0; i < Times; i++)
            {
                var watch = Stopwatch.StartNew();
                MowingPlanner.Plan(problem, space);
                took[i] = watch.Elapsed.TotalMilliseconds;
            }
            Array.Sort(took);
            lines.Add([Table.Number(days), Table.Number(traces), Table.Number(took[Times / 2], "0.0"), Table.Number(took[^1], "0.0")]);
        }
        Table.Write(lines);
        return 0;
    }

    private static PlanProblem Problem(int days, int count, int seed)
    {
        var traces = new PlanTraces(count, days);
        var r = new Random(seed);
        for (var n = 0; n < count; n++)
        {
            var rate = 0.9 * Math.Exp(Chance.Normal(r, 0, 0.3));
            for (var t = 0; t < days; t++)
            {
                traces.GrowthMm[n, t] = rate * Math.Exp(Chance.Normal(r, 0, 0.22));
                traces.KeepOff[n, t] = r.NextDouble() < 0.05;
                traces.Wilting[n, t] = r.NextDouble() < 0.05;
                traces.StressInput[n, t] = r.NextDouble() < 0.1 ? 2 : 0.2;
            }
        }
        return new()
        {
            From = new(2026, 5, 4),
            Days = days,
            Traces = traces,
            CanopyMm = new(7, 0.4),
            Stress = new(0.3, 0.3),
            CutMm = new(6, 0.12),
            GreenBaseMm = new(3.3, 0.6),
            WishMm = 5,
            WishBy = new(2026, 6, 20),
            Free = [0.85, 0.07, 0.85, 0.07, 0.85, 0.85, 0.07],
        };
    }
}
