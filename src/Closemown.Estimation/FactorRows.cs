namespace Closemown.Estimation;

/// <summary>The factors' sparse rows in flat arrays.</summary>
/// <remarks>
/// Local position of a weight: 0…d−1 the state at the row's step, d…2d−1 the next state, 2d…2d+m−1 the constants. Within a row the
/// positions rise and none is repeated.
/// </remarks>
internal sealed class FactorRows
{
    public int Count;
    public int[] Start = new int[65];
    public int[] Step = new int[64];
    public bool[] Interval = new bool[64];
    public int[] Group = new int[64];
    public double[] Offset = new double[64];
    public double[] Low = new double[64];
    public double[] High = new double[64];
    public double[] Sd = new double[64];
    public double[] Shared = new double[64];             // share of the variance that readings of the same predictor, group and kin have in common
    public int[] Kin = new int[64];
    public int[] Local = new int[256];
    public double[] Weight = new double[256];

    /// <summary>Adds a row of <paramref name="local"/> positions; step is −1 for constants alone.</summary>
    public int Add(int step, ReadOnlySpan<int> local, ReadOnlySpan<double> weight, double offset, double low, double high, double sd, bool interval, int group, double shared, int kin)
    {
        var at = Start[Count];
        if (Count + 1 == Start.Length) Grow();
        while (at + local.Length > Local.Length)
        {
            Array.Resize(ref Local, Local.Length * 2);
            Array.Resize(ref Weight, Weight.Length * 2);
        }

        local.CopyTo(Local.AsSpan(at));
        weight.CopyTo(Weight.AsSpan(at));
        (Step[Count], Interval[Count], Group[Count], Offset[Count]) = (step, interval, group, offset);
        (Low[Count], High[Count], Sd[Count], Shared[Count], Kin[Count]) = (low, high, sd, shared, kin);
        Start[++Count] = at + local.Length;
        return Count - 1;
    }

    /// <summary>Forgets all rows from <paramref name="count"/> on; the room stays.</summary>
    public void BackTo(int count) => Count = count;

    /// <summary>Σ w·u of row k, without its offset; u holds all states in order and then the constants from <paramref name="constants"/> on.</summary>
    public double Dot(int k, double[] u, int d, int constants)
    {
        var sum = 0.0;
        var first = Step[k] * d;
        for (int p = Start[k], end = Start[k + 1]; p < end; p++)
        {
            var at = Local[p];
            sum += Weight[p] * u[at < 2 * d ? first + at : constants + at - (2 * d)];
        }

        return sum;
    }

    /// <summary>Adds scale × row k to v, laid out like u.</summary>
    public void AddTo(int k, double scale, double[] v, int d, int constants)
    {
        var first = Step[k] * d;
        for (int p = Start[k], end = Start[k + 1]; p < end; p++)
        {
            var at = Local[p];
            v[at < 2 * d ? first + at : constants + at - (2 * d)] += scale * Weight[p];
        }
    }

    private void Grow()
    {
        var size = Step.Length * 2;
        Array.Resize(ref Start, size + 1);
        Array.Resize(ref Step, size);
        Array.Resize(ref Interval, size);
        Array.Resize(ref Group, size);
        Array.Resize(ref Offset, size);
        Array.Resize(ref Low, size);
        Array.Resize(ref High, size);
        Array.Resize(ref Sd, size);
        Array.Resize(ref Shared, size);
        Array.Resize(ref Kin, size);
    }
}
