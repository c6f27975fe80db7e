using System.Globalization;
using Closemown.Estimation;

namespace Closemown.Bench.Speed;

/// <summary>One solution of the 240-step book beside 1,000 effective draws of samplers.</summary>
internal static class AgainstSampling
{
    private const int Batches = 50;

    public static void Print(int rounds)
    {
        var book = new ShearBook(Path.Combine(AppContext.BaseDirectory, "Checks", "posterior", "shear-240.json"));
        var (chain, space) = (book.Chain(), new Workspace());
        Posterior p = null!;
        var one = Timing.Of(() => p = Solver.SolveIn(space, chain), 40);
        Console.WriteLine($"\nThe 240-step book of tests/Checks, one cold solution with sweeps (to 1e-10): {one.Cpu.ToString("0.00", CultureInfo.InvariantCulture)} CPU ms, least {one.Least.ToString("0.00", CultureInfo.InvariantCulture)} ({p.NewtonSteps} Newton steps, {p.Sweeps} sweeps).");
        var (seconds, effective, worst, off) = Sample(book, p, rounds);
        Console.WriteLine(FormattableString.Invariant($"\n| 1,000 effective samples by | CPU s | times one solution | |\n|---|---|---|---|"));
        Row("an exact sampler, run here", seconds * 1000 / effective, $"{rounds} rounds, {effective.ToString("0", CultureInfo.InvariantCulture)} effective of the worst unknown; means within {worst.ToString("0.0", CultureInfo.InvariantCulture)} Monte Carlo errors and {off.ToString("0.000", CultureInfo.InvariantCulture)} sd of ours");
        Row("an exact sampler, as recorded in tests/Checks/posterior/README.md", 7.43, "not run here");
        Row("a general sampler, best form, as recorded there", 3020, "not run here");
        Row("a general sampler, plain form, as recorded there", 17_300, "not run here");

        void Row(string what, double s, string note) => Console.WriteLine(FormattableString.Invariant($"| {what} | {s:0.00} | {s * 1000 / one.Cpu:0} | {note} |"));
    }

    /// <summary>CPU seconds, effective samples of the worst of the 11 unknowns by batch means, and the largest gap of a mean from ours in Monte Carlo errors and in sd.</summary>
    private static (double Seconds, double Effective, double Worst, double Off) Sample(ShearBook book, Posterior ours, int rounds)
    {
        var sampler = new ExactSampler(book, 1);
        for (var k = 0; k < rounds / 20; k++) sampler.Next();
        var used = Environment.CpuUsage.TotalTime;
        var draws = new double[ShearBook.N][];
        for (var i = 0; i < ShearBook.N; i++) draws[i] = new double[rounds];
        for (var k = 0; k < rounds; k++)
        {
            sampler.Next();
            for (var i = 0; i < ShearBook.D; i++) draws[i][k] = sampler.State[^1][i];
            for (var j = 0; j < ShearBook.M; j++) draws[ShearBook.D + j][k] = sampler.Constants[j];
        }
        var seconds = (Environment.CpuUsage.TotalTime - used).TotalSeconds;
        double least = double.PositiveInfinity, worst = 0, off = 0;
        var last = ours.LastState();
        for (var i = 0; i < ShearBook.N; i++)
        {
            var mean = draws[i].Average();
            var variance = draws[i].Sum(x => (x - mean) * (x - mean)) / (rounds - 1);
            var size = rounds / Batches;
            var error = Math.Sqrt(Enumerable.Range(0, Batches).Sum(b => Math.Pow(draws[i].AsSpan(b * size, size).ToArray().Average() - mean, 2)) / (Batches - 1) / Batches);
            least = Math.Min(least, variance / (error * error));
            worst = Math.Max(worst, Math.Abs(mean - last.Mean[i]) / error);
            off = Math.Max(off, Math.Abs(mean - last.Mean[i]) / Math.Sqrt(variance));
        }
        return (seconds, least, worst, off);
    }
}
