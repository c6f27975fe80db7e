namespace Closemown.Estimation;

/// <summary>Cholesky factor of a <see cref="BlockChain"/> in its place: elimination along the chain, then the Schur complement for θ.</summary>
/// <remarks>
/// H = RᵀR, R being upper triangular: a step's rows become [R_t | R_t⁻ᵀE | R_t⁻ᵀF | R_t⁻ᵀg], g the right-hand side, so the forward half of
/// solving costs nothing. Cost grows linearly with the steps. Golub and Van Loan 2013, Matrix Computations, 4.5; Rue and Held 2005, Gaussian Markov Random
/// Fields, 2.4. A pivot below 1e-13 of its diagonal entry counts as zero.
/// </remarks>
internal sealed class BlockElimination
{
    private const double SmallestPivot = 1e-13;
    private BlockChain _r = new();
    private double[] _whole = [];
    private double[] _row = [];
    private int _first;
    private double _product;
    private double _logs;

    /// <summary>Where the last factorisation failed: the step (−1 for a constant) and the index.</summary>
    public int FailedStep { get; private set; }

    public int FailedIndex { get; private set; }

    public bool FailedEmpty { get; private set; }

    /// <summary>log |H| of what was factorised.</summary>
    public double LogDeterminant => 2 * (_logs + Math.Log(_product));

    /// <summary>Factorises in place with a right-hand side; with <paramref name="first"/> above 0 only the states from there on, without the constants.</summary>
    /// <returns>False where the matrix is not positive definite; see <see cref="FailedStep"/>.</returns>
    public bool Factorise(BlockChain h, double[] right, int first = 0)
    {
        (_r, _first, _logs, _product) = (h, first, 0, 1);
        int d = h.D, m = first == 0 ? h.M : 0, stride = h.Stride, states = h.Steps * d;
        if (_whole.Length < d + h.M) _whole = new double[d + h.M];
        for (var j = 0; j < m; j++)
        {
            h.Corner[(j * h.CornerStride) + m] = right[states + j];
            _whole[d + j] = h.Corner[j * (h.CornerStride + 1)];
        }

        for (var t = first; t < h.Steps; t++)
        {
            var at = t * h.Block;
            for (var i = 0; i < d; i++)
            {
                h.Rows[at + (i * stride) + h.Right] = right[(t * d) + i];
                _whole[i] = h.Rows[at + (i * (stride + 1))];
            }

            if (t > first)
            {
                var before = at - h.Block;
                var next = new Strip(h.Rows, before + h.Next, 1, stride);
                RowMath.Subtract(new(h.Rows, at, stride), d, h.Next, next, new(h.Rows, before + h.Next, stride), d);
                RowMath.Subtract(new(h.Rows, at + h.Constants, stride), d, h.CornerStride, next, new(h.Rows, before + h.Constants, stride), d);
            }

            if (!Cholesky(h.Rows, at, d, stride, _whole.AsSpan(0, d), t)) return false;
            if (m > 0) Schur(h, at, m);
        }

        return Cholesky(h.Corner, 0, m, h.CornerStride, _whole.AsSpan(d, m), -1);
    }

    /// <summary>The solution for the right-hand side: states from the first on, and then the constants.</summary>
    public void Solve(double[] x)
    {
        int m = _first == 0 ? _r.M : 0, c = _r.Steps * _r.D;
        var z = Cleared(_r.Stride);
        z[_r.Right] = -1;
        for (var j = m - 1; j >= 0; j--)
        {
            z[_r.Constants + j] = x[c + j] = -RowMath.Dot(new(_r.Corner, j * _r.CornerStride, 0), new(z, _r.Constants, 0), _r.CornerStride) / _r.Corner[j * (_r.CornerStride + 1)];
        }

        BackStates(x, z, _r.Steps - 1);
    }

    /// <summary>A direction the matrix leaves free, after a failed factorisation.</summary>
    public double[] FreeDirection()
    {
        int d = _r.D, c = _r.Steps * d, f = FailedIndex;
        var x = new double[c + _r.M];
        var z = Cleared(_r.Stride);
        if (FailedStep < 0)
        {
            BackTriangle(_r.Corner, 0, _r.CornerStride, f, x, c);
            for (var j = 0; j <= f; j++) z[_r.Constants + j] = x[c + j];
            BackStates(x, z, _r.Steps - 1);
            return x;
        }

        BackTriangle(_r.Rows, FailedStep * _r.Block, _r.Stride, f, x, FailedStep * d);
        for (var i = 0; i <= f; i++) z[i] = x[(FailedStep * d) + i];
        BackStates(x, z, FailedStep - 1);
        return x;
    }

    private double[] Cleared(int length)
    {
        if (_row.Length < length) _row = new double[length];
        Array.Clear(_row);
        return _row;
    }

    /// <summary>States from <paramref name="last"/> back; z holds [the state after it | – | θ | −1 where the right-hand side counts].</summary>
    private void BackStates(double[] x, double[] z, int last)
    {
        var d = _r.D;
        for (var t = last; t >= _first; t--)
        {
            Array.Copy(z, 0, z, _r.Next, d);
            Array.Clear(z, 0, d);
            for (var i = d - 1; i >= 0; i--)
            {
                var row = (t * _r.Block) + (i * _r.Stride);
                z[i] = x[(t * d) + i] = -RowMath.Dot(new(_r.Rows, row, 0), new(z, 0, 0), _r.Stride) / _r.Rows[row + i];
            }
        }
    }

    /// <summary>Solves Rx = 0 with x_f = 1 for the rows before f.</summary>
    private static void BackTriangle(double[] r, int at, int stride, int f, double[] x, int xAt)
    {
        x[xAt + f] = 1;
        for (var i = f - 1; i >= 0; i--)
        {
            var sum = 0.0;
            for (var k = i + 1; k <= f; k++) sum += r[at + (i * stride) + k] * x[xAt + k];
            x[xAt + i] = -sum / r[at + (i * (stride + 1))];
        }
    }

    /// <summary>Rows [A | B] become [R | R⁻ᵀB] with A = RᵀR.</summary>
    private bool Cholesky(double[] a, int at, int n, int stride, ReadOnlySpan<double> whole, int step)
    {
        for (var i = 0; i < n; i++)
        {
            var row = at + (i * stride);
            RowMath.Subtract(new(a, row, stride), 1, stride, new(a, at + i, 0, stride), new(a, at, stride), i);
            var pivot = a[row + i];
            if (!(pivot > SmallestPivot * whole[i] && pivot > 0))
            {
                (FailedStep, FailedIndex, FailedEmpty) = (step, i, whole[i] == 0);
                return false;
            }

            var root = Math.Sqrt(pivot);
            Count(root);
            RowMath.Scale(new(a, row, stride), stride, 1 / root);
            a[row + i] = root;
        }

        return true;
    }

    /// <summary>G −= VᵀV. Of the lower half of the rows only the right half is in the upper triangle.</summary>
    private static void Schur(BlockChain h, int at, int m)
    {
        int left = h.CornerStride / 2 / 4 * 4, upper = Math.Min(m, left), v = at + h.Constants;
        RowMath.Subtract(new(h.Corner, 0, h.CornerStride), upper, h.CornerStride, new(h.Rows, v, 1, h.Stride), new(h.Rows, v, h.Stride), h.D);
        RowMath.Subtract(new(h.Corner, (left * h.CornerStride) + left, h.CornerStride), m - left, h.CornerStride - left, new(h.Rows, v + left, 1, h.Stride), new(h.Rows, v + left, h.Stride), h.D);
    }

    /// <summary>Products are cheaper than logs; one log is taken before they leave what numbers hold.</summary>
    private void Count(double root)
    {
        _product *= root;
        if (_product is > 1e-150 and < 1e150) return;
        _logs += Math.Log(_product);
        _product = 1;
    }
}
