using Closemown.Advice;
using Closemown.Entries;
using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Bench.Speed;

/// <summary>Invented books of growing length: from nothing, with one more entry, and what they weigh.</summary>
internal static class LongBooks
{
    private static readonly SolveOptions Sweeps = new() { SweepTolerance = 1e-7 };      // as for what is shown (SteelBelief)
    private static readonly SolveOptions Mode = new() { Method = EstimateKind.Laplace };

    public static void Print()
    {
        Console.WriteLine("| work | CPU ms, median | least | clock ms, median | |\n|---|---|---|---|---|");
        var of = new Dictionary<int, Timing>();
        foreach (var n in (int[])[500, 5000, 50_000]) of[n] = Book(n);
        var exponent = Math.Log(of[50_000].Least / of[500].Least) / Math.Log(100);
        Console.WriteLine(FormattableString.Invariant($"\nCost of a cold solution with sweeps grows as entries to the power {exponent:0.000} between 500 and 50,000 (least CPU times)."));
    }

    private static Timing Book(int n)
    {
        var entries = InventedBook.Of(n + 40);
        IReadOnlyList<Entry> first = [.. entries.Take(n)];
        var before = GC.GetTotalMemory(true);
        var track = UnitTrack.Of("unit", first);
        var trackBytes = GC.GetTotalMemory(true) - before;
        var space = new Workspace();
        var posterior = Solver.SolveIn(space, track.Chain, Sweeps);
        var bytes = GC.GetTotalMemory(true) - before;
        Row($"{n} entries: walked through ({track.Chain.StepCount} steps, {track.Chain.FactorCount} factors)", Timing.Of(() => UnitTrack.Of("unit", first), 3), $"{(double)trackBytes / n:0} bytes an entry");
        Posterior mode = null!;
        Row($"{n} entries: cold, mode only", Timing.Of(() => mode = Solver.SolveIn(space, track.Chain, Mode)), $"{mode.NewtonSteps} Newton steps");
        var cold = Timing.Of(() => posterior = Solver.SolveIn(space, track.Chain, Sweeps));
        Row($"{n} entries: cold, with sweeps", cold, $"{posterior.NewtonSteps} Newton steps, {posterior.Sweeps} sweeps, {(posterior.Settled ? "settled" : posterior.Remark)}");
        var allocated = GC.GetAllocatedBytesForCurrentThread();
        posterior = Solver.SolveIn(space, track.Chain, Sweeps);
        allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
        Console.WriteLine(FormattableString.Invariant($"| {n} entries: chain, workspace and posterior | | | | {(double)bytes / n:0} bytes an entry; a second solution takes {(double)allocated / track.Chain.StepCount:0} new bytes a step, the same for any number of sweeps (AllocationTests) |"));
        if (n == 5000)
        {
            Walks.Print(n);
            var belief = SteelBelief.Of(track);
            Row("5000 entries: advice, given the belief", Timing.Of(() => NextStep.Choose(belief, AdviceSettings.Default, new NextQuestion("unit", track.Memory.Last!.At))), "");
        }
        Warm(n, entries, track, space, posterior);
        return cold;
    }

    /// <summary>The next action and the next reading, each from the posterior before it, against a cold solution.</summary>
    private static void Warm(int n, IReadOnlyList<Entry> entries, UnitTrack track, Workspace space, Posterior posterior)
    {
        var (action, reading) = (false, false);
        for (var at = n; !(action && reading); at++)
        {
            var reads = track.Add(entries[at]) is not null;
            var warm = posterior;
            var timing = Timing.Of(() => posterior = Solver.SolveIn(space, track.Chain, Sweeps, warm));
            if (reads ? reading : action) continue;
            (action, reading) = (action || !reads, reading || reads);
            var off = Off(Solver.Solve(track.Chain, Sweeps), posterior);
            Row($"{n} entries and one more {(reads ? "reading" : "action")}: warm, with sweeps", timing, FormattableString.Invariant($"{posterior.Sweeps} sweeps; off the cold solution by {off:0.0e+0} sd at most"));
        }
    }

    private static double Off(Posterior a, Posterior b)
    {
        var worst = 0.0;
        for (var t = 0; t < a.StepCount; t++)
        {
            for (var i = 0; i < a.StateSize; i++) worst = Math.Max(worst, Math.Abs(a.StateMean(t, i) - b.StateMean(t, i)) / Math.Sqrt(a.StateVariance(t, i)));
        }
        for (var j = 0; j < a.ConstantCount; j++) worst = Math.Max(worst, Math.Abs(a.ConstantMean(j) - b.ConstantMean(j)) / Math.Sqrt(a.ConstantVariance(j)));
        return worst;
    }

    private static void Row(string what, Timing timing, string note) => Console.WriteLine($"| {what} | {timing} | {note} |");
}
