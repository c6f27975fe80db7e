namespace Closemown.Estimation;

/// <summary>The pseudo-readings a posterior ended with, in the order of the model's intervals: where the next solution starts.</summary>
internal sealed class Sites
{
    private readonly double[] _precision;
    private readonly double[] _shift;
    private readonly long[] _reading;

    public Sites(ChainModel model, Workspace w)
    {
        (_precision, _shift, _reading) = (new double[model.IntervalCount], new double[model.IntervalCount], new long[model.IntervalCount]);
        var ordinal = 0;
        w.Sites.Share(model.Rows, w);
        for (var k = 0; k < model.FactorCount; k++)
        {
            if (!model.Rows.Interval[k]) continue;
            _reading[ordinal] = Reading(model.Rows, k);
            var left = double.IsPositiveInfinity(w.Sd[k]);
            _precision[ordinal] = left ? 0 : w.SitePrecision[k];
            _shift[ordinal++] = left ? 0 : w.SiteShift[k];
        }
    }

    /// <summary>Takes over the sites of readings that are still the same; a new one starts from what was known of its predictor, or with none.</summary>
    /// <returns>False where most are others, and so nothing worth starting from.</returns>
    public bool TakeOver(ChainModel model, Workspace w, Posterior warm)
    {
        int ordinal = 0, same = 0;
        for (var k = 0; k < model.FactorCount; k++)
        {
            if (!model.Rows.Interval[k]) continue;
            var known = ordinal < _reading.Length && _reading[ordinal] == Reading(model.Rows, k);
            (w.SitePrecision[k], w.SiteShift[k]) = known ? (_precision[ordinal], _shift[ordinal]) : First(model, w, k, warm);
            same += known ? 1 : 0;
            ordinal++;
        }

        w.Sites.Gather(model.Rows, w);
        return same >= 0.9 * ordinal;
    }

    /// <summary>The site that the reading alone would have on top of the earlier posterior, whose means are in U.</summary>
    private static (double Precision, double Shift) First(ChainModel model, Workspace w, int k, Posterior warm)
    {
        var rows = model.Rows;
        var last = rows.Step[k];
        for (var p = rows.Start[k]; p < rows.Start[k + 1]; p++) last += rows.Local[p] >= model.StateSize && rows.Local[p] < 2 * model.StateSize && last == rows.Step[k] ? 1 : 0;
        if (last >= warm.StepCount || !double.IsFinite(w.Sd[k])) return (0, 0);
        var mean = rows.Dot(k, w.U, model.StateSize, w.StateCount) - rows.Offset[k];
        var read = new TiltedReading(rows, k, w.Sd[k], mean, warm.VarianceOf(rows, k));
        return double.IsFinite(read.Precision + read.Shift) ? (read.Precision, read.Shift) : (0, 0);
    }

    /// <summary>A number that differs between readings but for a chance of about 2⁻⁶⁴; a mistaken one would only be a worse start.</summary>
    private static long Reading(FactorRows rows, int k)
    {
        long mixed = rows.Step[k];
        foreach (var x in (ReadOnlySpan<double>)[rows.Low[k], rows.High[k], rows.Sd[k], rows.Offset[k]])
        {
            mixed = (mixed ^ BitConverter.DoubleToInt64Bits(x)) * -7046029254386353131;
            mixed ^= (long)((ulong)mixed >> 29);
        }

        return mixed;
    }
}
