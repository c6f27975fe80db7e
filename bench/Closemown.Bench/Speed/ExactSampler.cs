using Closemown.Estimation;

namespace Closemown.Bench.Speed;

/// <summary>An exact sampler of the same posterior: latent readings, then all states and constants at once, again and again.</summary>
/// <remarks>
/// Albert and Chib 1993, J. Am. Stat. Assoc. 88:669 (latent readings); Carter and Kohn 1994, Biometrika 81:541 (forward filtering, backward sampling).
/// With latent readings everything is Gaussian and no variance depends on the draws, so gains and roots are made once. Seeded.
/// </remarks>
internal sealed class ExactSampler
{
    private const int D = ShearBook.D, M = ShearBook.M, N = ShearBook.N;
    private readonly ShearBook book;
    private readonly Random chance;
    private readonly ShearBook.Reading[][] readings;        // by step
    private readonly double[][] gain;                       // by reading in order of step
    private readonly double[][] onConstants, onNext, root;  // of the state before a move, given θ and the state after it
    private readonly double[] lastRoot;
    private readonly double[][] filtered;
    private readonly double[][] latent;

    public ExactSampler(ShearBook book, int seed)
    {
        (this.book, chance) = (book, new Random(seed));
        var steps = book.Moves.Count + 1;
        readings = [.. Enumerable.Range(0, steps).Select(t => book.Readings.Where(r => r.Step == t).ToArray())];
        filtered = [.. Enumerable.Range(0, steps).Select(_ => new double[N])];
        latent = [.. readings.Select(r => new double[r.Length])];
        State = [.. Enumerable.Range(0, steps).Select(_ => new double[D])];
        (onConstants, onNext, root) = (new double[steps][], new double[steps][], new double[steps][]);
        List<double[]> gains = [];
        var p = new double[N * N];
        for (var i = 0; i < N; i++) p[i * (N + 1)] = book.Sd[i] * book.Sd[i];
        for (var t = 0; t < steps; t++)
        {
            if (t > 0) p = Moved(p, book.Moves[t - 1]);
            foreach (var r in readings[t]) gains.Add(Read(p, r));
            if (t + 1 < steps) Before(p, t);
        }
        (gain, lastRoot) = ([.. gains], Dense.Root(p, N));
        for (var t = 0; t < steps; t++)
        {
            for (var k = 0; k < readings[t].Length; k++) latent[t][k] = Math.Clamp(0, readings[t][k].Low, readings[t][k].High);
        }
    }

    public double[][] State { get; }

    public double[] Constants { get; } = new double[M];

    /// <summary>One round: states and constants given the latent readings, then the latent readings given them.</summary>
    public void Next()
    {
        Forward();
        Backward();
        for (var t = 0; t < readings.Length; t++)
        {
            for (var k = 0; k < readings[t].Length; k++)
            {
                var r = readings[t][k];
                var eta = 0.0;
                for (var i = 0; i < D; i++) eta += r.Weights[i] * State[t][i];
                latent[t][k] = eta + (r.Sd * Kept((r.Low - eta) / r.Sd, (r.High - eta) / r.Sd));
            }
        }
    }

    private void Forward()
    {
        var m = book.Mean.ToArray();
        var next = new double[D];
        var g = 0;
        for (var t = 0; t < readings.Length; t++)
        {
            if (t > 0)
            {
                book.Moves[t - 1].Offset.CopyTo(next, 0);
                Dense.Add(book.Moves[t - 1].A, m.AsSpan(0, D), next);
                Dense.Add(book.Moves[t - 1].B, m.AsSpan(D), next);
                next.CopyTo(m, 0);
            }
            for (var k = 0; k < readings[t].Length; k++, g++)
            {
                var off = latent[t][k];
                for (var i = 0; i < D; i++) off -= readings[t][k].Weights[i] * m[i];
                for (var i = 0; i < N; i++) m[i] += gain[g][i] * off;
            }
            m.CopyTo(filtered[t], 0);
        }
    }

    private void Backward()
    {
        var last = readings.Length - 1;
        Span<double> all = stackalloc double[N], z = stackalloc double[N], off = stackalloc double[D], constantsOff = stackalloc double[M];
        Normals(z);
        filtered[last].CopyTo(all);
        Dense.Add(lastRoot, z, all);
        all[..D].CopyTo(State[last]);
        all[D..].CopyTo(Constants);
        for (var t = last - 1; t >= 0; t--)
        {
            var x = State[t].AsSpan();
            var move = book.Moves[t];
            for (var j = 0; j < M; j++) constantsOff[j] = Constants[j] - filtered[t][D + j];
            filtered[t].AsSpan(0, D).CopyTo(x);
            Dense.Add(onConstants[t], constantsOff, x);
            move.Offset.CopyTo(off);
            Dense.Add(move.A, x, off);
            Dense.Add(move.B, Constants, off);
            for (var i = 0; i < D; i++) off[i] = State[t + 1][i] - off[i];
            Dense.Add(onNext[t], off, x);
            Normals(z);
            Dense.Add(root[t], z[..D], x);
        }
    }

    private static double[] Moved(double[] p, ShearBook.Move move)
    {
        var map = new double[N * N];
        for (var i = 0; i < N; i++) map[i * (N + 1)] = 1;
        for (var i = 0; i < D; i++)
        {
            Array.Copy(move.A, i * D, map, i * N, D);
            Array.Copy(move.B, i * M, map, (i * N) + D, M);
        }
        var moved = Dense.Times(Dense.Times(map, p, N, N, N), Dense.Turned(map, N, N), N, N, N);
        for (var i = 0; i < D; i++) moved[i * (N + 1)] += move.Sd[i] * move.Sd[i];
        return moved;
    }

    private static double[] Read(double[] p, ShearBook.Reading r)
    {
        var along = new double[N];
        for (var i = 0; i < N; i++)
        {
            for (var k = 0; k < D; k++) along[i] += p[(i * N) + k] * r.Weights[k];
        }
        var variance = r.Sd * r.Sd;
        for (var k = 0; k < D; k++) variance += r.Weights[k] * along[k];
        for (var i = 0; i < N; i++)
        {
            for (var j = 0; j < N; j++) p[(i * N) + j] -= along[i] * along[j] / variance;
        }
        return [.. along.Select(a => a / variance)];
    }

    /// <summary>The state of a step given θ and the state after the move that follows.</summary>
    private void Before(double[] p, int t)
    {
        var move = book.Moves[t];
        onConstants[t] = Dense.Times(Dense.Part(p, N, 0, D, D, M), Dense.Inverse(Dense.Part(p, N, D, D, M, M), M), D, M, M);
        var c = Dense.Less(Dense.Part(p, N, 0, 0, D, D), Dense.Times(onConstants[t], Dense.Part(p, N, D, 0, M, D), D, M, D));
        var across = Dense.Times(c, Dense.Turned(move.A, D, D), D, D, D);
        var after = Dense.Times(move.A, across, D, D, D);
        for (var i = 0; i < D; i++) after[i * (D + 1)] += move.Sd[i] * move.Sd[i];
        onNext[t] = Dense.Times(across, Dense.Inverse(after, D), D, D, D);
        root[t] = Dense.Root(Dense.Less(c, Dense.Times(onNext[t], Dense.Turned(across, D, D), D, D, D)), D);
    }

    /// <summary>A standard normal kept between limits, by inversion from the nearer tail.</summary>
    private double Kept(double low, double high)
    {
        if (low > 0) return -Kept(-high, -low);
        double from = NormalMath.Phi(low), to = NormalMath.Phi(high);
        return Math.Clamp(NormalMath.InversePhi(from + ((to - from) * chance.NextDouble())), low, high);
    }

    private void Normals(Span<double> z)
    {
        for (var i = 0; i < z.Length; i++) z[i] = Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
    }
}
