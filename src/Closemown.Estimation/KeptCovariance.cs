namespace Closemown.Estimation;

/// <summary>The covariance blocks that a posterior keeps, without padding, in pieces small enough to be cleared away cheaply when it is forgotten.</summary>
/// <remarks>
/// A step has d rows, whose columns are the local positions of <see cref="FactorRows"/>: own state, next state, constants. One array of all steps
/// would be a large object of the runtime, which is cleared away only by going through the whole memory.
/// </remarks>
internal sealed class KeptCovariance
{
    /// <summary>Numbers of a piece at most: below the 85,000 bytes from which the runtime calls an object large.</summary>
    private const int Piece = 10_000;

    private readonly double[][] _pieces;
    private readonly double[] _corner;
    private readonly int _row;
    private readonly int _stepsInPiece;

    public KeptCovariance(BlockChain sigma)
    {
        (Steps, D, M) = (sigma.Steps, sigma.D, sigma.M);
        _row = (2 * D) + M;
        _stepsInPiece = Math.Max(1, Piece / Math.Max(1, D * _row));
        _pieces = new double[(Steps + _stepsInPiece - 1) / _stepsInPiece][];
        for (var first = 0; first < Steps; first += _stepsInPiece)
        {
            var piece = GC.AllocateUninitializedArray<double>(Math.Min(_stepsInPiece, Steps - first) * D * _row);
            _pieces[first / _stepsInPiece] = piece;
            for (var row = 0; row < piece.Length / _row; row++)
            {
                var from = (first * sigma.Block) + (row * sigma.Stride);
                var into = piece.AsSpan(row * _row, _row);
                sigma.Rows.AsSpan(from, D).CopyTo(into);
                sigma.Rows.AsSpan(from + sigma.Next, D).CopyTo(into[D..]);
                sigma.Rows.AsSpan(from + sigma.Constants, M).CopyTo(into[(2 * D)..]);
            }
        }

        _corner = new double[M * M];
        for (var j = 0; j < M; j++) sigma.Corner.AsSpan(j * sigma.CornerStride, M).CopyTo(_corner.AsSpan(j * M));
    }

    public int Steps { get; }

    public int D { get; }

    public int M { get; }

    /// <summary>Between component i of a step and a local position.</summary>
    public double Of(int step, int i, int position) => _pieces[step / _stepsInPiece][(((step % _stepsInPiece * D) + i) * _row) + position];

    /// <summary>Between two constants.</summary>
    public double OfConstants(int i, int j) => _corner[(i * M) + j];

    /// <summary>aᵀΣa for a row given by its local positions (rising).</summary>
    public double Quadratic(int step, ReadOnlySpan<int> local, ReadOnlySpan<double> weight)
    {
        var sum = 0.0;
        for (var q = 0; q < local.Length; q++)
        {
            var part = 0.5 * weight[q] * At(step, local[q], local[q]);
            for (var p = q + 1; p < local.Length; p++) part += weight[p] * At(step, local[q], local[p]);
            sum += 2 * weight[q] * part;
        }

        return sum;
    }

    /// <summary>The entry at two local positions, q not after p.</summary>
    private double At(int step, int q, int p)
    {
        if (q < D) return Of(step, q, p);
        if (q < 2 * D) return Of(step + 1, q - D, p < 2 * D ? p - D : p);
        return OfConstants(q - (2 * D), p - (2 * D));
    }
}
