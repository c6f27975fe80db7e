namespace Closemown.Estimation;

/// <summary>The blocks of H⁻¹ that the chain needs: Σ_tt, Σ_{t+1,t}, Σ_{θt}, Σ_θθ, by backward recursion.</summary>
/// <remarks>
/// With W = (U_t; V_t)L_t⁻¹ and S the blocks (t+1, θ): Σ_{S,t} = −Σ_SS W and Σ_tt = (L_tL_tᵀ)⁻¹ + WᵀΣ_SS W. Takahashi, Fagan and Chin 1973;
/// Rue and Martino 2007, J. Stat. Plan. Inference 137:3177. No dense inverse is formed.
/// </remarks>
internal sealed class SelectedInverse
{
    private double[] _inverse = [];
    private double[] _up = [];
    private double[] _out = [];

    /// <summary>Fills <paramref name="sigma"/> from the factor; symmetric blocks come out whole.</summary>
    public void Fill(BlockElimination factor, BlockChain sigma)
    {
        int d = factor.D, m = factor.M, dd = d * d, md = m * d, steps = factor.Steps;
        sigma.Reset(steps, d, m);
        if (_inverse.Length < Math.Max(dd, m * m))
        {
            _inverse = new double[Math.Max(dd, m * m)];
        }

        if (_up.Length < dd) _up = new double[dd];
        if (_out.Length < md) _out = new double[md];
        InvertTriangle(factor.Corner, 0, m);
        Gram(m, sigma.Corner, 0);
        for (var t = steps - 1; t >= 0; t--)
        {
            InvertTriangle(factor.Lower, t * dd, d);
            Times(factor.Edge, t * md, _out, m, d);
            if (t + 1 < steps)
            {
                Times(factor.Next, t * dd, _up, d, d);
                Neighbour(sigma, t, d, m);
            }

            Constants(sigma, t, steps, d, m);
            Gram(d, sigma.Diagonal, t * dd);
            Own(sigma, t, steps, d, m);
        }
    }

    /// <summary>Σ_{t+1,t} = −(Σ_{t+1,t+1} U + Σ_{θ,t+1}ᵀ V).</summary>
    private void Neighbour(BlockChain sigma, int t, int d, int m)
    {
        int next = (t + 1) * d * d, edge = (t + 1) * m * d;
        for (var i = 0; i < d; i++)
        {
            for (var j = 0; j < d; j++)
            {
                var sum = 0.0;
                for (var k = 0; k < d; k++) sum += sigma.Diagonal[next + (i * d) + k] * _up[(k * d) + j];
                for (var k = 0; k < m; k++) sum += sigma.Border[edge + (k * d) + i] * _out[(k * d) + j];
                sigma.Below[(((t * d) + i) * d) + j] = -sum;
            }
        }
    }

    /// <summary>Σ_{θ,t} = −(Σ_{θ,t+1} U + Σ_θθ V).</summary>
    private void Constants(BlockChain sigma, int t, int steps, int d, int m)
    {
        var edge = (t + 1) * m * d;
        for (var i = 0; i < m; i++)
        {
            for (var j = 0; j < d; j++)
            {
                var sum = 0.0;
                if (t + 1 < steps)
                {
                    for (var k = 0; k < d; k++) sum += sigma.Border[edge + (i * d) + k] * _up[(k * d) + j];
                }

                for (var k = 0; k < m; k++) sum += sigma.Corner[(i * m) + k] * _out[(k * d) + j];
                sigma.Border[(((t * m) + i) * d) + j] = -sum;
            }
        }
    }

    /// <summary>Σ_tt −= UᵀΣ_{t+1,t} + VᵀΣ_{θ,t}.</summary>
    private void Own(BlockChain sigma, int t, int steps, int d, int m)
    {
        int at = t * d * d, edge = t * m * d;
        for (var i = 0; i < d; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = 0.0;
                if (t + 1 < steps)
                {
                    for (var k = 0; k < d; k++) sum += _up[(k * d) + i] * sigma.Below[at + (k * d) + j];
                }

                for (var k = 0; k < m; k++) sum += _out[(k * d) + i] * sigma.Border[edge + (k * d) + j];
                var value = sigma.Diagonal[at + (i * d) + j] - sum;
                sigma.Diagonal[at + (i * d) + j] = value;
                sigma.Diagonal[at + (j * d) + i] = value;
            }
        }
    }

    private void InvertTriangle(double[] l, int at, int n)
    {
        for (var j = 0; j < n; j++)
        {
            for (var i = j; i < n; i++)
            {
                var sum = i == j ? 1.0 : 0.0;
                for (var k = j; k < i; k++) sum -= l[at + (i * n) + k] * _inverse[(k * n) + j];
                _inverse[(i * n) + j] = sum / l[at + (i * n) + i];
            }
        }
    }

    /// <summary>c = L⁻ᵀL⁻¹, whole.</summary>
    private void Gram(int n, double[] c, int at)
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = 0.0;
                for (var k = i; k < n; k++) sum += _inverse[(k * n) + i] * _inverse[(k * n) + j];
                c[at + (i * n) + j] = sum;
                c[at + (j * n) + i] = sum;
            }
        }
    }

    /// <summary>into = aL⁻¹.</summary>
    private void Times(double[] a, int at, double[] into, int rows, int d)
    {
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < d; j++)
            {
                var sum = 0.0;
                for (var k = j; k < d; k++) sum += a[at + (i * d) + k] * _inverse[(k * d) + j];
                into[(i * d) + j] = sum;
            }
        }
    }
}
