using Closemown.Turf;

namespace Closemown.Tests.Turf;

/// <summary>Plans to ask for: a green at its wish in steady growth, and what a test changes of it.</summary>
internal static class PlanCase
{
    public static readonly DateOnly Monday = new(2026, 5, 4);

    public static PlanTraces Traces(int days, Func<int, int, double> growthMm, int count = 30, Func<int, int, bool>? keepOff = null, Func<int, int, bool>? wilting = null, double stress = 0)
    {
        var traces = new PlanTraces(count, days);
        for (var n = 0; n < count; n++)
        {
            for (var t = 0; t < days; t++)
            {
                traces.GrowthMm[n, t] = growthMm(n, t);
                traces.KeepOff[n, t] = keepOff?.Invoke(n, t) ?? false;
                traces.Wilting[n, t] = wilting?.Invoke(n, t) ?? false;
                traces.StressInput[n, t] = stress;
            }
        }
        return traces;
    }

    /// <summary>Growth about a rate, a little apart from trace to trace and day to day.</summary>
    public static Func<int, int, double> About(double mm) => (n, t) => mm * (1 + (0.2 * Math.Sin((n * 1.7) + (t * 2.3))));

    public static PlanProblem Of(PlanTraces traces, double canopyMm = 6, double cutMm = 5, double wishMm = 5) => new()
    {
        From = Monday,
        Days = traces.Days,
        Traces = traces,
        CanopyMm = new(canopyMm, 0.3),
        CutMm = new(cutMm, 0.12),
        WishMm = wishMm,
    };
}
