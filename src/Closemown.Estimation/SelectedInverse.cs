namespace Closemown.Estimation;

/// <summary>The blocks of H⁻¹ that the chain needs: Σ_tt, Σ_{t,t+1}, Σ_{tθ}, Σ_θθ, by backward recursion, in place of the factor.</summary>
/// <remarks>
/// With S the blocks (t+1, θ) and W = R_t⁻¹(R_t⁻ᵀE | R_t⁻ᵀF): Σ_{t,S} = −WΣ_SS and Σ_tt = R_t⁻¹R_t⁻ᵀ − Σ_{t,S}Wᵀ. Takahashi, Fagan and Chin 1973;
/// Rue and Martino 2007, J. Stat. Plan. Inference 137:3177. No dense inverse is formed.
/// </remarks>
internal sealed class SelectedInverse
{
    private double[] _w = [];           // [R⁻¹ | W | –]
    private double[] _turned = [];      // Wᵀ below −R⁻ᵀ
    private double[] _across = [];      // Σ_{θ,t+1}
    private double[] _corner = [];      // R_θ⁻¹ above −R_θ⁻ᵀ

    /// <summary>Replaces the factor by the covariance blocks; symmetric blocks come out whole.</summary>
    public void Fill(BlockChain chain)
    {
        int d = chain.D, m = chain.M;
        Room(ref _w, d * chain.Stride);
        Room(ref _turned, (d + d + m) * chain.Next);
        Room(ref _across, m * chain.Next);
        Room(ref _corner, 2 * m * chain.CornerStride);
        Corner(chain);
        for (var t = chain.Steps - 1; t >= 0; t--)
        {
            Back(chain, t);
            Fill(chain, t);
        }
    }

    /// <summary>Σ_θθ = R_θ⁻¹R_θ⁻ᵀ.</summary>
    private void Corner(BlockChain chain)
    {
        int m = chain.M, stride = chain.CornerStride;
        Array.Clear(_corner);
        for (var i = m - 1; i >= 0; i--)
        {
            _corner[i * (stride + 1)] = 1;
            Strip row = new(_corner, i * stride, stride), rest = new(chain.Corner, (i * (stride + 1)) + 1, 0);
            if (i + 1 < m) RowMath.Subtract(row, 1, stride, rest, new(_corner, (i + 1) * stride, stride), m - 1 - i);
            RowMath.Scale(row, stride, 1 / chain.Corner[i * (stride + 1)]);
        }

        Strip inverse = new(_corner, 0, stride), turned = new(_corner, m * stride, stride), corner = new(chain.Corner, 0, stride);
        RowMath.Turn(inverse, m, m, turned, -1);
        RowMath.Subtract(corner, m, stride, inverse, turned, m, fresh: true);
        RowMath.Mirror(corner, m);
    }

    /// <summary>R⁻¹ and W by back-substitution of [I | R⁻ᵀE | R⁻ᵀF].</summary>
    private void Back(BlockChain chain, int t)
    {
        int d = chain.D, stride = chain.Stride, at = t * chain.Block, wide = chain.Next;
        for (var i = d - 1; i >= 0; i--)
        {
            var row = at + (i * stride);
            var mine = _w.AsSpan(i * stride, stride);
            mine[..wide].Clear();
            mine[i] = 1;
            chain.Rows.AsSpan(row + wide, stride - wide).CopyTo(mine[wide..]);
            if (i + 1 < d) RowMath.Subtract(new(_w, i * stride, stride), 1, stride, new(chain.Rows, row + i + 1, 0), new(_w, (i + 1) * stride, stride), d - 1 - i);
            RowMath.Scale(new(_w, i * stride, stride), stride, 1 / chain.Rows[row + i]);
        }
    }

    /// <summary>Σ_{t,S} and Σ_tt into the step's rows.</summary>
    private void Fill(BlockChain chain, int t)
    {
        int d = chain.D, m = chain.M, stride = chain.Stride, at = t * chain.Block, wide = chain.Next, edge = chain.CornerStride;
        Strip own = new(chain.Rows, at, stride), next = new(chain.Rows, at + wide, stride), constants = new(chain.Rows, at + chain.Constants, stride);
        Strip toNext = new(_w, wide, stride), toConstants = new(_w, chain.Constants, stride), across = new(_across, 0, wide);
        RowMath.Subtract(constants, d, edge, toConstants, new(chain.Corner, 0, edge), m, fresh: true);
        if (t + 1 < chain.Steps)
        {
            var after = at + chain.Block;
            RowMath.Subtract(constants, d, edge, toNext, new(chain.Rows, after + chain.Constants, stride), d);
            RowMath.Subtract(next, d, wide, toNext, new(chain.Rows, after, stride), d, fresh: true);
            RowMath.Subtract(next, d, wide, toConstants, across, m);
        }

        Strip inverse = new(_w, 0, stride), inverseTurned = new(_turned, 0, wide), nextTurned = new(_turned, d * wide, wide), constantsTurned = new(_turned, 2 * d * wide, wide);
        RowMath.Turn(inverse, d, d, inverseTurned, -1);
        RowMath.Turn(toNext, d, d, nextTurned);
        RowMath.Turn(toConstants, d, m, constantsTurned);
        RowMath.Subtract(own, d, wide, inverse, inverseTurned, d, fresh: true);
        RowMath.Subtract(own, d, wide, next, nextTurned, d);
        RowMath.Subtract(own, d, wide, constants, constantsTurned, m);
        RowMath.Mirror(own, d);
        RowMath.Turn(constants, d, m, across);
    }

    private static void Room(ref double[] buffer, int size)
    {
        if (buffer.Length < size) buffer = new double[size];
    }
}
