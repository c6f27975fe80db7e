namespace Closemown.Estimation;

/// <summary>The blocks of H⁻¹ that the chain needs: Σ_tt, Σ_{t,t+1}, Σ_{tθ}, Σ_θθ, by backward recursion, in place of the factor.</summary>
/// <remarks>
/// With S the blocks (t+1, θ) and W = R_t⁻¹(R_t⁻ᵀE | R_t⁻ᵀF): Σ_{t,S} = −WΣ_SS and Σ_tt = R_t⁻¹R_t⁻ᵀ − Σ_{t,S}Wᵀ. Takahashi, Fagan and Chin 1973;
/// Rue and Martino 2007, J. Stat. Plan. Inference 137:3177. No dense inverse is formed.
/// </remarks>
internal sealed class SelectedInverse
{
    private double[] _after = [];       // Σ_SS: rows of the state after and of θ, [state | θ]
    private double[] _w = [];           // W: [R⁻¹ | next | θ]
    private double[] _turned = [];      // Wᵀ, and R⁻ᵀ after it

    /// <summary>Replaces the factor by the covariance blocks; symmetric blocks come out whole.</summary>
    public void Fill(BlockChain chain)
    {
        int d = chain.D, m = chain.M, wide = chain.Next, length = chain.Stride - wide;
        Room(ref _after, (d + m) * length);
        Room(ref _w, d * chain.Stride);
        Room(ref _turned, (d + m + d) * wide);
        Array.Clear(_after);
        Corner(chain);
        for (var j = 0; j < m; j++) Array.Copy(chain.Corner, j * chain.CornerStride, _after, ((d + j) * length) + wide, m);
        for (var t = chain.Steps - 1; t >= 0; t--)
        {
            Back(chain, t, last: t == chain.Steps - 1);
            Fill(chain, t);
            Keep(chain, t);
        }
    }

    /// <summary>Σ_θθ = R_θ⁻¹R_θ⁻ᵀ.</summary>
    private static void Corner(BlockChain chain)
    {
        int m = chain.M, stride = chain.CornerStride;
        var inverse = new double[m * stride];
        var turned = new double[m * stride];
        for (var i = m - 1; i >= 0; i--)
        {
            var own = 1 / chain.Corner[i * (stride + 1)];
            inverse[i * (stride + 1)] = 1;
            if (i + 1 < m) RowMath.Subtract(inverse, i * stride, stride, 1, chain.Corner, (i * stride) + i + 1, 0, 1, inverse, (i + 1) * stride, stride, m - 1 - i, stride);
            RowMath.Scale(inverse, i * stride, stride, own);
        }

        for (var i = 0; i < m; i++)
        {
            for (var j = 0; j < m; j++) turned[(j * stride) + i] = -inverse[(i * stride) + j];
        }

        Array.Clear(chain.Corner, 0, m * stride);
        RowMath.Subtract(chain.Corner, 0, stride, m, inverse, 0, stride, 1, turned, 0, stride, m, stride);
        Mirror(chain.Corner, 0, m, stride);
    }

    /// <summary>W and R⁻¹ by back-substitution of [I | R⁻ᵀE | R⁻ᵀF].</summary>
    private void Back(BlockChain chain, int t, bool last)
    {
        int d = chain.D, stride = chain.Stride, at = t * chain.Block, wide = chain.Next;
        for (var i = d - 1; i >= 0; i--)
        {
            var row = at + (i * stride);
            Array.Clear(_w, i * stride, wide);
            _w[(i * stride) + i] = 1;
            Array.Copy(chain.Rows, row + wide, _w, (i * stride) + wide, stride - wide);
            if (last) Array.Clear(_w, (i * stride) + wide, wide);
            if (i + 1 < d) RowMath.Subtract(_w, i * stride, stride, 1, chain.Rows, row + i + 1, 0, 1, _w, (i + 1) * stride, stride, d - 1 - i, stride);
            RowMath.Scale(_w, i * stride, stride, 1 / chain.Rows[row + i]);
        }
    }

    /// <summary>Σ_{t,S} and Σ_tt into the step's rows.</summary>
    private void Fill(BlockChain chain, int t)
    {
        int d = chain.D, m = chain.M, stride = chain.Stride, at = t * chain.Block, wide = chain.Next, length = stride - wide, both = (d + m) * wide;
        for (var i = 0; i < d; i++)
        {
            var row = i * stride;
            for (var j = 0; j < d; j++)
            {
                _turned[(j * wide) + i] = _w[row + wide + j];
                _turned[both + (j * wide) + i] = -_w[row + j];
            }

            for (var j = 0; j < m; j++) _turned[((d + j) * wide) + i] = _w[row + chain.Constants + j];
        }

        Array.Clear(chain.Rows, at, chain.Block);
        RowMath.Subtract(chain.Rows, at + wide, stride, d, _w, wide, stride, 1, _after, 0, length, d, length);
        RowMath.Subtract(chain.Rows, at + wide, stride, d, _w, chain.Constants, stride, 1, _after, d * length, length, m, length);
        RowMath.Subtract(chain.Rows, at, stride, d, _w, 0, stride, 1, _turned, both, wide, d, wide);
        RowMath.Subtract(chain.Rows, at, stride, d, chain.Rows, at + wide, stride, 1, _turned, 0, wide, d, wide);
        RowMath.Subtract(chain.Rows, at, stride, d, chain.Rows, at + chain.Constants, stride, 1, _turned, d * wide, wide, m, wide);
        Mirror(chain.Rows, at, d, stride);
    }

    /// <summary>The state's rows and columns of Σ_SS for the step before.</summary>
    private void Keep(BlockChain chain, int t)
    {
        int d = chain.D, m = chain.M, stride = chain.Stride, at = t * chain.Block, wide = chain.Next, length = stride - wide;
        for (var i = 0; i < d; i++)
        {
            var row = at + (i * stride);
            Array.Copy(chain.Rows, row, _after, i * length, d);
            Array.Copy(chain.Rows, row + chain.Constants, _after, (i * length) + wide, m);
            for (var j = 0; j < m; j++) _after[((d + j) * length) + i] = chain.Rows[row + chain.Constants + j];
        }
    }

    /// <summary>The upper triangle below as well, so that both halves agree to the bit.</summary>
    private static void Mirror(double[] a, int at, int n, int stride)
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++) a[at + (j * stride) + i] = a[at + (i * stride) + j];
        }
    }

    private static void Room(ref double[] buffer, int size)
    {
        if (buffer.Length < size) buffer = new double[size];
    }
}
