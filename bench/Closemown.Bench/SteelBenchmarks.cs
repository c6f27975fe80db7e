using BenchmarkDotNet.Attributes;
using Closemown.Advice;
using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Bench;

/// <summary>A season of a bowling green: walking through its entries, estimating it, choosing the next step.</summary>
[MemoryDiagnoser]
public class SteelBenchmarks
{
    private readonly Desk desk = DemoBook.Desk();
    private readonly UnitTrack track = UnitTrack.Of(DemoBook.Unit, DemoBook.Desk().Standing);

    [Benchmark(Description = "read through all entries, each with its surprise")]
    public UnitTrack Walk() => UnitTrack.Of(DemoBook.Unit, desk.Standing);

    [Benchmark(Description = "estimate: mode only")]
    public Posterior Mode() => Solver.Solve(track.Chain, new SolveOptions { Method = EstimateKind.Laplace });

    [Benchmark(Description = "estimate: mode and sweeps", Baseline = true)]
    public Posterior Sweeps() => Solver.Solve(track.Chain);

    [Benchmark(Description = "next step, given the estimate")]
    public StepAdvice Next() => NextStep.Choose(belief ??= SteelBelief.Of(track), AdviceSettings.Default, new NextQuestion(DemoBook.Unit, track.Memory.Last!.At));

    private SteelBelief? belief;
}
