namespace Closemown.Estimation;

/// <summary>Block Cholesky factor of a <see cref="BlockChain"/>: elimination along the chain, then the Schur complement for θ.</summary>
/// <remarks>
/// H = LLᵀ with per step L_t (d×d lower), U_t = block (t+1, t) and V_t = block (θ, t) of L, and L_θ. Cost grows linearly with the steps.
/// Golub and Van Loan 2013, Matrix Computations, 4.5; Rue and Held 2005, Gaussian Markov Random Fields, 2.4.
/// A pivot below 1e-13 of its diagonal entry counts as zero.
/// </remarks>
internal sealed class BlockElimination
{
    private const double SmallestPivot = 1e-13;

    public int Steps;
    public int D;
    public int M;
    public int First;
    public double[] Lower = [];
    public double[] Next = [];
    public double[] Edge = [];
    public double[] Corner = [];

    /// <summary>Where the last factorisation failed: the step (−1 for a constant) and the index.</summary>
    public int FailedStep;
    public int FailedIndex;
    public bool FailedEmpty;

    /// <summary>Factorises; with <paramref name="first"/> above 0 only the states from there on, without the constants.</summary>
    /// <returns>False where the matrix is not positive definite; see <see cref="FailedStep"/>.</returns>
    public bool Factorise(BlockChain h, int first = 0)
    {
        (Steps, D, First, M) = (h.Steps, h.D, first, first == 0 ? h.M : 0);
        int d = D, m = M, dd = d * d, md = m * d;
        if (Lower.Length < Steps * dd || Edge.Length < Steps * h.M * d || Corner.Length < h.M * h.M)
        {
            Lower = new double[Steps * dd];
            Next = new double[Steps * dd];
            Edge = new double[Steps * h.M * d];
            Corner = new double[h.M * h.M];
        }

        for (var i = 0; i < m; i++) Array.Copy(h.Corner, i * m, Corner, i * m, i + 1);
        for (var t = first; t < Steps; t++)
        {
            var at = t * dd;
            Array.Copy(h.Diagonal, at, Lower, at, dd);
            if (t > first) SubtractOuter(Next, at - dd, Lower, at, d, d);
            if (!Cholesky(Lower, at, d, h.Diagonal, at, out FailedIndex, out FailedEmpty))
            {
                FailedStep = t;
                return false;
            }

            if (t + 1 < Steps)
            {
                Array.Copy(h.Below, at, Next, at, dd);
                SolveRows(Lower, at, Next, at, d, d);
            }

            Array.Copy(h.Border, t * md, Edge, t * md, md);
            if (t > first) SubtractProduct(Edge, (t - 1) * md, Next, at - dd, Edge, t * md, m, d);
            SolveRows(Lower, at, Edge, t * md, m, d);
            SubtractOuter(Edge, t * md, Corner, 0, m, d);
        }

        FailedStep = -1;
        return Cholesky(Corner, 0, m, h.Corner, 0, out FailedIndex, out FailedEmpty);
    }

    /// <summary>log |H| of what was factorised.</summary>
    public double LogDeterminant()
    {
        var sum = 0.0;
        for (var t = First; t < Steps; t++)
        {
            for (var i = 0; i < D; i++) sum += Math.Log(Lower[(((t * D) + i) * D) + i]);
        }

        for (var i = 0; i < M; i++) sum += Math.Log(Corner[(i * M) + i]);
        return 2 * sum;
    }

    /// <summary>Solves Hx = x in place; x holds the states in order and then the constants.</summary>
    public void Solve(double[] x)
    {
        int d = D, m = M, c = Steps * d;
        for (var t = First; t < Steps; t++)
        {
            var at = t * d;
            for (var i = 0; i < d; i++)
            {
                var sum = x[at + i];
                if (t > First)
                {
                    for (var k = 0; k < d; k++) sum -= Next[((at - d + i) * d) + k] * x[at - d + k];
                }

                var row = (at + i) * d;
                for (var k = 0; k < i; k++) sum -= Lower[row + k] * x[at + k];
                x[at + i] = sum / Lower[row + i];
            }

            for (var j = 0; j < m; j++)
            {
                var sum = 0.0;
                for (var k = 0; k < d; k++) sum += Edge[(((t * m) + j) * d) + k] * x[at + k];
                x[c + j] -= sum;
            }
        }

        for (var i = 0; i < m; i++)
        {
            var sum = x[c + i];
            for (var k = 0; k < i; k++) sum -= Corner[(i * m) + k] * x[c + k];
            x[c + i] = sum / Corner[(i * m) + i];
        }

        BackConstants(x, m);
        BackStates(x, Steps - 1);
    }

    /// <summary>A direction the matrix leaves free, after a failed factorisation.</summary>
    public double[] FreeDirection()
    {
        int d = D, m = M, c = Steps * d;
        var x = new double[c + m];
        var f = FailedIndex;
        if (FailedStep < 0)
        {
            x[c + f] = 1;
            for (var k = 0; k < f; k++) x[c + k] = -Corner[(f * m) + k];
            BackTriangle(Corner, 0, m, x, c, f);
            BackStates(x, Steps - 1);
            return x;
        }

        var at = FailedStep * d;
        x[at + f] = 1;
        for (var k = 0; k < f; k++) x[at + k] = -Lower[((at + f) * d) + k];
        BackTriangle(Lower, at * d, d, x, at, f);
        BackStates(x, FailedStep - 1);
        return x;
    }

    private void BackConstants(double[] x, int count) => BackTriangle(Corner, 0, M, x, Steps * D, count);

    private void BackStates(double[] x, int last)
    {
        int d = D, m = M, c = Steps * d;
        for (var t = last; t >= First; t--)
        {
            var at = t * d;
            for (var i = 0; i < d; i++)
            {
                var sum = x[at + i];
                if (t + 1 < Steps)
                {
                    for (var k = 0; k < d; k++) sum -= Next[((at + k) * d) + i] * x[at + d + k];
                }

                for (var k = 0; k < m; k++) sum -= Edge[(((t * m) + k) * d) + i] * x[c + k];
                x[at + i] = sum;
            }

            BackTriangle(Lower, at * d, d, x, at, d);
        }
    }

    /// <summary>Solves Lᵀx = x for the first <paramref name="count"/> rows of a lower triangle.</summary>
    private static void BackTriangle(double[] l, int at, int stride, double[] x, int xAt, int count)
    {
        for (var i = count - 1; i >= 0; i--)
        {
            var sum = x[xAt + i];
            for (var k = i + 1; k < count; k++) sum -= l[at + (k * stride) + i] * x[xAt + k];
            x[xAt + i] = sum / l[at + (i * stride) + i];
        }
    }

    private static bool Cholesky(double[] a, int at, int n, double[] original, int from, out int failed, out bool empty)
    {
        for (var j = 0; j < n; j++)
        {
            var row = at + (j * n);
            var pivot = a[row + j];
            for (var k = 0; k < j; k++) pivot -= a[row + k] * a[row + k];
            var whole = original[from + (j * n) + j];
            if (!(pivot > SmallestPivot * whole && pivot > 0))
            {
                (failed, empty) = (j, whole == 0);
                return false;
            }

            var root = Math.Sqrt(pivot);
            a[row + j] = root;
            for (var i = j + 1; i < n; i++)
            {
                var other = at + (i * n);
                var sum = a[other + j];
                for (var k = 0; k < j; k++) sum -= a[other + k] * a[row + k];
                a[other + j] = sum / root;
            }
        }

        (failed, empty) = (-1, false);
        return true;
    }

    /// <summary>Each of the rows of b becomes bL⁻ᵀ.</summary>
    private static void SolveRows(double[] l, int at, double[] b, int bAt, int rows, int d)
    {
        for (var r = 0; r < rows; r++)
        {
            var row = bAt + (r * d);
            for (var j = 0; j < d; j++)
            {
                var sum = b[row + j];
                var lower = at + (j * d);
                for (var k = 0; k < j; k++) sum -= b[row + k] * l[lower + k];
                b[row + j] = sum / l[lower + j];
            }
        }
    }

    /// <summary>Lower triangle of c −= aaᵀ, a having <paramref name="rows"/> rows of d.</summary>
    private static void SubtractOuter(double[] a, int aAt, double[] c, int cAt, int rows, int d)
    {
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = 0.0;
                for (var k = 0; k < d; k++) sum += a[aAt + (i * d) + k] * a[aAt + (j * d) + k];
                c[cAt + (i * rows) + j] -= sum;
            }
        }
    }

    /// <summary>c −= abᵀ, a and c having <paramref name="rows"/> rows of d, b being d×d.</summary>
    private static void SubtractProduct(double[] a, int aAt, double[] b, int bAt, double[] c, int cAt, int rows, int d)
    {
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < d; j++)
            {
                var sum = 0.0;
                for (var k = 0; k < d; k++) sum += a[aAt + (i * d) + k] * b[bAt + (j * d) + k];
                c[cAt + (i * d) + j] -= sum;
            }
        }
    }
}
