using System.Text.Json;
using Closemown.Estimation;

namespace Closemown.Bench.Speed;

/// <summary>The book of tests/Checks/posterior/shear-240.json (five states, six constants) in plain matrices.</summary>
internal sealed class ShearBook
{
    public const int D = 5, M = 6, N = D + M;

    /// <summary>x' = A x + B θ + offset + noise; A and B row by row.</summary>
    internal sealed record Move(double[] A, double[] B, double[] Offset, double[] Sd);

    /// <summary>Weights on the state after so many moves; the reading lay between the limits.</summary>
    internal sealed record Reading(int Step, double[] Weights, double Low, double High, double Sd);

    public double[] Mean { get; }

    public double[] Sd { get; }

    public List<Move> Moves { get; } = [];

    public List<Reading> Readings { get; } = [];

    public ShearBook(string path)
    {
        using var file = JsonDocument.Parse(File.ReadAllText(path));
        var model = file.RootElement.GetProperty("model");
        Mean = [.. Numbers(model, "initialMean"), .. Numbers(model, "constantMean")];
        Sd = [.. Numbers(model, "initialSd"), .. Numbers(model, "constantSd")];
        foreach (var step in file.RootElement.GetProperty("book").GetProperty("steps").EnumerateArray()) Moves.Add(MoveOf(model, step));
        foreach (var reading in file.RootElement.GetProperty("book").GetProperty("readings").EnumerateArray()) Readings.Add(ReadingOf(model, reading));
    }

    public ChainModel Chain()
    {
        var chain = new ChainModel([.. Enumerable.Range(0, D).Select(i => $"x{i}")], [.. Enumerable.Range(0, M).Select(j => $"c{j}")]);
        chain.AddStep();
        for (var i = 0; i < N; i++) chain.AddGaussian([i < D ? Term.State(0, i, 1) : Term.Constant(i - D, 1)], Mean[i], Sd[i]);
        foreach (var move in Moves)
        {
            var t = chain.AddStep();
            for (var i = 0; i < D; i++)
            {
                List<Term> terms = [Term.State(t, i, 1)];
                for (var k = 0; k < D; k++) terms.Add(Term.State(t - 1, k, -move.A[(i * D) + k]));
                for (var k = 0; k < M; k++) terms.Add(Term.Constant(k, -move.B[(i * M) + k]));
                chain.AddGaussian([.. terms], move.Offset[i], move.Sd[i]);
            }
        }
        foreach (var r in Readings) chain.AddInterval([.. r.Weights.Select((w, i) => Term.State(r.Step, i, w))], 0, r.Low, r.High, r.Sd);
        return chain;
    }

    private static Move MoveOf(JsonElement model, JsonElement step)
    {
        var q = model.GetProperty("noise");
        double hours = Number(step, "hours"), lap = Number(step, "lapMin"), floor = Square(q, "floor");
        var rho = Math.Exp(-lap / Number(model, "lapTimeConstantMin"));
        var (a, b, offset, sd) = (new double[D * D], new double[D * M], new double[D], new double[D]);
        for (var i = 0; i < D; i++)
        {
            a[i * (D + 1)] = i < 2 ? 1 : rho;
            if (i < 2)
            {
                var clicks = Number(step, i == 0 ? "clicksL" : "clicksR");
                (b[(i * M) + i], b[(i * M) + 2 + i], b[(i * M) + 5]) = (-clicks, hours, lap);
                sd[i] = Math.Sqrt((Square(q, "mowPerSqrtHour") * hours) + (Square(q, "lapPerSqrtMinute") * lap) + floor + (Square(q, "clickPerSqrtClick") * Math.Abs(clicks)));
            }
            else
            {
                b[(i * M) + 4] = hours;
                offset[i] = Number(model, "freshEdge") * (1 - rho);
                sd[i] = Math.Sqrt((Square(q, "edgePerSqrtHour") * hours) + floor);
            }
        }
        return new(a, b, offset, sd);
    }

    private static Reading ReadingOf(JsonElement model, JsonElement r)
    {
        var name = r.GetProperty("check").GetString()!;
        var check = model.GetProperty("checks").GetProperty(name);
        var station = r.GetProperty("station").GetString()!;
        var weights = new double[D];
        Numbers(model.GetProperty("stationWeights"), station).CopyTo(weights, 0);
        if (name == "cut") weights[2 + "LCR".IndexOf(station, StringComparison.Ordinal)] = 1;
        var (cuts, category) = (Numbers(check, "cutPoints"), r.GetProperty("category").GetInt32());
        return new(r.GetProperty("step").GetInt32(), weights, category == 0 ? double.NegativeInfinity : cuts[category - 1],
            category == cuts.Length ? double.PositiveInfinity : cuts[category], Number(check, "sd"));
    }

    private static double Number(JsonElement e, string name) => e.GetProperty(name).GetDouble();

    private static double Square(JsonElement e, string name) => Number(e, name) * Number(e, name);

    private static double[] Numbers(JsonElement e, string name) => [.. e.GetProperty(name).EnumerateArray().Select(x => x.GetDouble())];
}
