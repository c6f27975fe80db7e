namespace Closemown.Estimation;

/// <summary>A symmetric matrix over (x₀ … x_T, θ) that is block-tridiagonal with a border and a corner, in two flat arrays.</summary>
/// <remarks>
/// Per step t there are d rows [own | next | θ | right-hand side]: blocks (t, t), (t, t+1) and (t, θ), and one number of a vector that rides along;
/// the corner has m rows [θ | right-hand side]. Parts are padded (<see cref="RowMath.Pad"/>). Of symmetric blocks the upper triangle
/// counts. It holds a precision, its Cholesky factor, or those blocks of a covariance.
/// </remarks>
internal sealed class BlockChain
{
    public int Steps;
    public int D;
    public int M;
    public double[] Rows = [];
    public double[] Corner = [];

    /// <summary>Where the next state's columns begin: the padded d.</summary>
    public int Next { get; private set; }

    /// <summary>Where the constants' columns begin.</summary>
    public int Constants { get; private set; }

    /// <summary>Length of a row.</summary>
    public int Stride { get; private set; }

    /// <summary>Length of a row of the corner.</summary>
    public int CornerStride { get; private set; }

    /// <summary>Numbers of a step.</summary>
    public int Block { get; private set; }

    /// <summary>Column of the right-hand side.</summary>
    public int Right => Constants + M;

    /// <summary>Takes a shape, keeping arrays that are large enough, and clears to zero.</summary>
    public void Reset(int steps, int d, int m)
    {
        Shape(steps, d, m);
        Array.Clear(Rows, 0, Steps * Block);
        Array.Clear(Corner, 0, M * CornerStride);
    }

    /// <summary>The same numbers.</summary>
    public void CopyFrom(BlockChain other)
    {
        Shape(other.Steps, other.D, other.M);
        Array.Copy(other.Rows, Rows, Steps * Block);
        Array.Copy(other.Corner, Corner, M * CornerStride);
    }

    /// <summary>Adds scale × aaᵀ for row k of the factors.</summary>
    public void AddOuter(FactorRows rows, int k, double scale)
    {
        int start = rows.Start[k], end = rows.Start[k + 1], step = rows.Step[k];
        for (var q = start; q < end; q++)
        {
            var w = scale * rows.Weight[q];
            for (var p = q; p < end; p++) At(step, rows.Local[q], rows.Local[p]) += w * rows.Weight[p];
        }
    }

    /// <summary>aᵀMa for row k of the factors.</summary>
    public double Quadratic(FactorRows rows, int k)
    {
        int start = rows.Start[k], end = rows.Start[k + 1], step = rows.Step[k];
        var sum = 0.0;
        for (var q = start; q < end; q++)
        {
            var part = 0.5 * rows.Weight[q] * At(step, rows.Local[q], rows.Local[q]);
            for (var p = q + 1; p < end; p++) part += rows.Weight[p] * At(step, rows.Local[q], rows.Local[p]);
            sum += 2 * rows.Weight[q] * part;
        }

        return sum;
    }

    /// <summary>The diagonal entry of unknown i, states in order and then the constants.</summary>
    public double DiagonalAt(int i) => i < Steps * D ? Rows[((i / D) * Block) + ((i % D) * (Stride + 1))] : Corner[(i - (Steps * D)) * (CornerStride + 1)];

    /// <summary>The entry at two local positions of a row (see <see cref="FactorRows"/>), q not after p.</summary>
    private ref double At(int step, int q, int p)
    {
        if (q >= 2 * D) return ref Corner[((q - (2 * D)) * CornerStride) + p - (2 * D)];
        var row = q < D ? (step * Block) + (q * Stride) : ((step + 1) * Block) + ((q - D) * Stride);
        if (p >= 2 * D) return ref Rows[row + Constants + p - (2 * D)];
        if (p < D) return ref Rows[row + p];
        return ref Rows[q < D ? row + Next + p - D : row + p - D];
    }

    private void Shape(int steps, int d, int m)
    {
        (Steps, D, M) = (steps, d, m);
        Next = RowMath.Pad(d);
        Constants = 2 * Next;
        CornerStride = RowMath.Pad(m + 1);
        Stride = Constants + CornerStride;
        Block = d * Stride;
        Rows = Room(Rows, steps * Block);
        Corner = Room(Corner, m * CornerStride);
    }

    /// <summary>Not cleared: every caller writes all that it reads.</summary>
    private static double[] Room(double[] old, int size) =>
        old.Length < size || old.Length > 4 * (size + 64) ? GC.AllocateUninitializedArray<double>(size + (size / 16)) : old;
}
