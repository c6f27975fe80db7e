namespace Closemown.Estimation;

/// <summary>A symmetric matrix over (x₀ … x_T, θ) that is block-tridiagonal with a border and a corner, in flat arrays.</summary>
/// <remarks>
/// Per step t: <see cref="Diagonal"/> block (t, t) d×d, <see cref="Below"/> block (t+1, t) d×d, <see cref="Border"/> block (θ, t) m×d;
/// <see cref="Corner"/> (θ, θ) m×m. All row-major; of symmetric blocks the lower triangle counts. It holds a precision, and as well
/// those blocks of a covariance.
/// </remarks>
internal sealed class BlockChain
{
    public int Steps;
    public int D;
    public int M;
    public double[] Diagonal = [];
    public double[] Below = [];
    public double[] Border = [];
    public double[] Corner = [];

    public int Size => (Steps * D) + M;

    /// <summary>Takes a shape, keeping arrays that are large enough, and clears to zero.</summary>
    public void Reset(int steps, int d, int m)
    {
        (Steps, D, M) = (steps, d, m);
        Diagonal = Room(Diagonal, steps * d * d);
        Below = Room(Below, steps * d * d);
        Border = Room(Border, steps * m * d);
        Corner = Room(Corner, m * m);
    }

    public void CopyFrom(BlockChain other)
    {
        Reset(other.Steps, other.D, other.M);
        Array.Copy(other.Diagonal, Diagonal, Steps * D * D);
        Array.Copy(other.Below, Below, Steps * D * D);
        Array.Copy(other.Border, Border, Steps * M * D);
        Array.Copy(other.Corner, Corner, M * M);
    }

    /// <summary>Adds scale × aaᵀ for row k of the factors.</summary>
    public void AddOuter(FactorRows rows, int k, double scale)
    {
        int start = rows.Start[k], end = rows.Start[k + 1], step = rows.Step[k];
        for (var p = start; p < end; p++)
        {
            var w = scale * rows.Weight[p];
            for (var q = start; q <= p; q++) At(step, rows.Local[p], rows.Local[q]) += w * rows.Weight[q];
        }
    }

    /// <summary>aᵀMa for row k of the factors.</summary>
    public double Quadratic(FactorRows rows, int k) =>
        Quadratic(rows.Step[k], rows.Local.AsSpan(rows.Start[k], rows.Start[k + 1] - rows.Start[k]), rows.Weight.AsSpan(rows.Start[k]));

    /// <summary>aᵀMa for a row given by its local positions (rising).</summary>
    public double Quadratic(int step, ReadOnlySpan<int> local, ReadOnlySpan<double> weight)
    {
        var sum = 0.0;
        for (var p = 0; p < local.Length; p++)
        {
            var part = 0.5 * weight[p] * At(step, local[p], local[p]);
            for (var q = 0; q < p; q++) part += weight[q] * At(step, local[p], local[q]);
            sum += 2 * weight[p] * part;
        }

        return sum;
    }

    /// <summary>The entry at two local positions of a row (see <see cref="FactorRows"/>), p not before q.</summary>
    private ref double At(int step, int p, int q)
    {
        if (p < D) return ref Diagonal[(((step * D) + p) * D) + q];
        if (p < 2 * D)
        {
            if (q < D) return ref Below[(((step * D) + p - D) * D) + q];
            return ref Diagonal[((((step + 1) * D) + p - D) * D) + q - D];
        }

        var c = p - (2 * D);
        if (q < D) return ref Border[(((step * M) + c) * D) + q];
        if (q < 2 * D) return ref Border[((((step + 1) * M) + c) * D) + q - D];
        return ref Corner[(c * M) + q - (2 * D)];
    }

    private static double[] Room(double[] old, int size)
    {
        if (old.Length < size || old.Length > 4 * (size + 64)) return new double[size];
        Array.Clear(old, 0, size);
        return old;
    }
}
