namespace Closemown.Bench.Speed;

/// <summary>Small dense matrices, row by row, in the plainest form: nothing in common with the kernel.</summary>
internal static class Dense
{
    public static double[] Times(double[] a, double[] b, int rows, int inner, int columns)
    {
        var c = new double[rows * columns];
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                for (var k = 0; k < inner; k++) c[(i * columns) + j] += a[(i * inner) + k] * b[(k * columns) + j];
            }
        }
        return c;
    }

    public static double[] Turned(double[] a, int rows, int columns)
    {
        var b = new double[a.Length];
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++) b[(j * rows) + i] = a[(i * columns) + j];
        }
        return b;
    }

    public static double[] Part(double[] a, int stride, int row, int column, int rows, int columns)
    {
        var b = new double[rows * columns];
        for (var i = 0; i < rows; i++) Array.Copy(a, ((row + i) * stride) + column, b, i * columns, columns);
        return b;
    }

    public static double[] Less(double[] a, double[] b) => [.. a.Zip(b, (x, y) => x - y)];

    /// <summary>L with LLᵀ = a, a positive definite.</summary>
    public static double[] Root(double[] a, int n)
    {
        var l = new double[n * n];
        for (var j = 0; j < n; j++)
        {
            for (var i = j; i < n; i++)
            {
                var sum = a[(i * n) + j];
                for (var k = 0; k < j; k++) sum -= l[(i * n) + k] * l[(j * n) + k];
                l[(i * n) + j] = i == j ? Math.Sqrt(sum) : sum / l[j * (n + 1)];
            }
        }
        return l;
    }

    public static double[] Inverse(double[] a, int n)
    {
        var l = Root(a, n);
        var x = new double[n * n];
        for (var c = 0; c < n; c++)
        {
            for (var i = 0; i < n; i++)
            {
                var sum = i == c ? 1.0 : 0.0;
                for (var k = 0; k < i; k++) sum -= l[(i * n) + k] * x[(k * n) + c];
                x[(i * n) + c] = sum / l[i * (n + 1)];
            }
            for (var i = n - 1; i >= 0; i--)
            {
                var sum = x[(i * n) + c];
                for (var k = i + 1; k < n; k++) sum -= l[(k * n) + i] * x[(k * n) + c];
                x[(i * n) + c] = sum / l[i * (n + 1)];
            }
        }
        return x;
    }

    /// <summary>into += a·x.</summary>
    public static void Add(double[] a, ReadOnlySpan<double> x, Span<double> into)
    {
        for (var i = 0; i < into.Length; i++)
        {
            var sum = 0.0;
            for (var k = 0; k < x.Length; k++) sum += a[(i * x.Length) + k] * x[k];
            into[i] += sum;
        }
    }
}
