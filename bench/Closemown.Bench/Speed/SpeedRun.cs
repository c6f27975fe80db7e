using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Bench.Speed;

internal static class SpeedRun
{
    private static readonly SolveOptions Sweeps = new() { SweepTolerance = 1e-7 };
    private static readonly SolveOptions Mode = new() { Method = EstimateKind.Laplace };
    public static int Print(string[] args)
    {
        foreach (var n in args.Length > 0 ? args.Select(int.Parse) : [500, 5000])
        {
            var entries = InventedBook.Of(n + 1);
            var track = UnitTrack.Of("unit", [.. entries.Take(n)]);
            var w = new Workspace();
            Posterior p = null!;
            var mode = Timing.Of(() => p = Solver.SolveIn(w, track.Chain, Mode));
            var newton = p.NewtonSteps;
            var t = Timing.Of(() => p = Solver.SolveIn(w, track.Chain, Sweeps));
            Console.WriteLine($"{n}: steps {track.Chain.StepCount}, factors {track.Chain.FactorCount}; mode {mode}, Newton {newton}; sweeps {t}, {p.Sweeps} sweeps, settled {p.Settled}");
            track.Add(entries[n]);
            var warm = p;
            t = Timing.Of(() => p = Solver.SolveIn(w, track.Chain, Sweeps, warm));
            Console.WriteLine($"   warm {t} {p.NewtonSteps} {p.Sweeps}");
        }
        return 0;
    }
}
