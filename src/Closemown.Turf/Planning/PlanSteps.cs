namespace Closemown.Turf;

/// <summary>What traces bring from one morning to the next, thinned to a few points of growth for each kind of next morning.</summary>
/// <remarks>Growth, the ground and wilting belong together: it grows where it is warm, and on warm mornings nobody is kept off. So points are made within each kind.</remarks>
internal sealed class PlanSteps
{
    public const int Clear = 0, Wilting = 1, KeptOff = 2, Kinds = 3, MostPoints = 6;
    private readonly double[] growth, input;
    private readonly int[] counts = new int[Kinds];
    private readonly double[][] sortedGrowth, sortedInput;

    public PlanSteps(int traces)
    {
        (growth, input) = (new double[Kinds * MostPoints], new double[Kinds * MostPoints]);
        (sortedGrowth, sortedInput) = (new double[Kinds][], new double[Kinds][]);
        for (var k = 0; k < Kinds; k++) (sortedGrowth[k], sortedInput[k]) = (new double[traces], new double[traces]);
    }

    /// <summary>Points, each with kind, weight, growth and stress input.</summary>
    public int Points { get; private set; }

    public int[] Kind { get; } = new int[Kinds * MostPoints];

    public double[] Weight { get; } = new double[Kinds * MostPoints];

    public ReadOnlySpan<double> GrowthMm => growth;

    public ReadOnlySpan<double> StressInput => input;

    public void Make(PlanTraces traces, int day, int next)
    {
        counts.AsSpan().Clear();
        for (var n = 0; n < traces.Count; n++)
        {
            var k = traces.KeepOff[n, next] ? KeptOff : traces.Wilting[n, next] ? Wilting : Clear;
            var at = counts[k]++;
            sortedGrowth[k][at] = traces.GrowthMm[n, day];
            sortedInput[k][at] = traces.StressInput[n, day];
        }
        Points = 0;
        for (var k = 0; k < Kinds; k++)
        {
            var count = counts[k];
            if (count == 0) continue;
            Array.Sort(sortedGrowth[k], sortedInput[k], 0, count);
            var points = Math.Min(count, MostPoints);
            for (var q = 0; q < points; q++)
            {
                var (from, to) = (count * q / points, count * (q + 1) / points);
                double g = 0, x = 0;
                for (var i = from; i < to; i++)
                {
                    g += sortedGrowth[k][i];
                    x += sortedInput[k][i];
                }
                (growth[Points], input[Points]) = (g / (to - from), x / (to - from));
                Kind[Points] = k;
                Weight[Points++] = (to - from) / (double)traces.Count;
            }
        }
    }
}
