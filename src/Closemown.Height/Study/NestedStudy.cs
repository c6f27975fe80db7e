namespace Closemown.Height;

/// <summary>Day average and short-term scatter of one part in one run of a nested gauge study.</summary>
public readonly record struct DayAverage(string Run, string Part, double Mean, double Sd);

/// <summary>Scatter at three levels of time: within a sitting, from day to day, from run to run. Spreads in the readings' unit.</summary>
/// <param name="ShortTerm">Level 1: within a sitting.</param>
/// <param name="DayToDay">Level 2: of day averages within a run.</param>
/// <param name="RunToRun">Level 3: of run averages.</param>
/// <remarks>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 2.4.4 and 2.6.1: each level pooled over all parts, runs and days.</remarks>
public sealed record NestedStudy(double ShortTerm, double DayToDay, double RunToRun)
{
    /// <summary>Analyses day averages.</summary>
    /// <exception cref="ArgumentException">There are fewer than two runs, or a part has fewer than two days in a run.</exception>
    public static NestedStudy Of(IEnumerable<DayAverage> days)
    {
        ArgumentNullException.ThrowIfNull(days);
        var all = days.ToList();
        var cells = all.GroupBy(d => (d.Run, d.Part)).ToList();
        if (all.Select(d => d.Run).Distinct().Count() < 2) throw new ArgumentException("Two runs are needed at least: repeat the whole study some weeks later.", nameof(days));
        if (cells.Exists(c => c.Count() < 2)) throw new ArgumentException("Each part must be read on two days at least in each run.", nameof(days));
        return new(
            Math.Sqrt(all.Average(d => d.Sd * d.Sd)),
            Math.Sqrt(cells.Average(c => Variance([.. c.Select(d => d.Mean)]))),
            Math.Sqrt(cells.GroupBy(c => c.Key.Part).Average(p => Variance([.. p.Select(c => c.Average(d => d.Mean))]))));
    }

    private static double Variance(double[] x)
    {
        var mean = x.Average();
        return x.Sum(v => (v - mean) * (v - mean)) / (x.Length - 1);
    }
}
