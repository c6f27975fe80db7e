using System.Globalization;

namespace Closemown.Bench.Workshop;

/// <summary>A number with one standard error over units: mowings of one unit are not independent.</summary>
internal readonly record struct OverUnits(double Value, double Se)
{
    public static OverUnits Mean(IReadOnlyList<double> v)
    {
        var mean = v.Count > 0 ? v.Average() : double.NaN;
        return new(mean, v.Count > 1 ? Math.Sqrt(v.Sum(x => (x - mean) * (x - mean)) / (v.Count - 1) / v.Count) : double.NaN);
    }

    /// <summary>Sum of the one over sum of the other, units as clusters.</summary>
    public static OverUnits Ratio(IReadOnlyList<double> above, IReadOnlyList<double> below)
    {
        var (n, under) = (above.Count, below.Sum());
        var ratio = above.Sum() / under;
        var square = above.Zip(below, (a, b) => (a - (ratio * b)) * (a - (ratio * b))).Sum();
        return new(ratio, n > 1 ? Math.Sqrt(square * n / (n - 1)) / under : double.NaN);
    }

    /// <summary>Mean of the least tenth of the values, at least one; its error by drawing units again.</summary>
    public static OverUnits WorstTenth(IReadOnlyList<double> v)
    {
        const int Again = 400;
        var r = new Random(1);
        var drawn = Enumerable.Range(0, Again).Select(_ => Worst(Enumerable.Range(0, v.Count).Select(_ => v[r.Next(v.Count)]))).ToArray();
        var mean = drawn.Average();
        return new(Worst(v), v.Count > 1 ? Math.Sqrt(drawn.Average(x => (x - mean) * (x - mean))) : double.NaN);
        double Worst(IEnumerable<double> all) => all.Order().Take((int)Math.Ceiling(v.Count / 10.0)).Average();
    }

    public string Text(string form) => !double.IsFinite(Value) ? "–" : $"{Value.ToString(form, CultureInfo.InvariantCulture)} ± {Se.ToString(form, CultureInfo.InvariantCulture)}";
}
