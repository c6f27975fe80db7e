using System.Text.Json;

namespace Closemown.Estimation.Tests;

/// <summary>The model of Checks/posterior/shear-*.json, written as factors from the file's own numbers and equations.</summary>
internal sealed class ShearModel
{
    private readonly JsonElement _model;
    private readonly JsonElement _book;

    public ShearModel(string file)
    {
        var root = CheckFile.Read(file);
        (_model, _book) = (root.GetProperty("model"), root.GetProperty("book"));
    }

    public static ShearModel Of(int steps) => new($"posterior/shear-{steps}.json");

    public ChainModel Build(int? steps = null)
    {
        var chain = new ChainModel(Names("state"), Names("constants"));
        double[] mean = _model.Numbers("initialMean"), sd = _model.Numbers("initialSd");
        double[] constantMean = _model.Numbers("constantMean"), constantSd = _model.Numbers("constantSd");
        chain.AddStep();
        for (var i = 0; i < 5; i++) chain.AddGaussian([Term.State(0, i, 1)], mean[i], sd[i]);
        for (var j = 0; j < 6; j++) chain.AddGaussian([Term.Constant(j, 1)], constantMean[j], constantSd[j]);
        var all = _book.GetProperty("steps").EnumerateArray().ToArray();
        var count = steps ?? all.Length;
        foreach (var step in all.Take(count)) AddTransition(chain, step);
        foreach (var reading in _book.GetProperty("readings").EnumerateArray())
        {
            if (reading.GetProperty("step").GetInt32() <= count) AddReading(chain, reading);
        }

        return chain;
    }

    private string[] Names(string of) => [.. _model.GetProperty(of).EnumerateArray().Select(x => x.GetString()!)];

    private void AddTransition(ChainModel chain, JsonElement step)
    {
        var t = chain.AddStep();
        var q = _model.GetProperty("noise");
        double hours = step.Number("hours"), lap = step.Number("lapMin");
        double[] clicks = [step.Number("clicksL"), step.Number("clicksR")];
        double fresh = _model.Number("freshEdge"), rho = Math.Exp(-lap / _model.Number("lapTimeConstantMin"));
        var common = (Square(q.Number("mowPerSqrtHour")) * hours) + (Square(q.Number("lapPerSqrtMinute")) * lap) + Square(q.Number("floor"));
        for (var i = 0; i < 2; i++)
        {
            var sd = Math.Sqrt(common + (Square(q.Number("clickPerSqrtClick")) * Math.Abs(clicks[i])));
            chain.AddGaussian(
                [Term.State(t, i, 1), Term.State(t - 1, i, -1), Term.Constant(i, clicks[i]), Term.Constant(2 + i, -hours), Term.Constant(5, -lap)], 0, sd);
        }

        var edge = Math.Sqrt((Square(q.Number("edgePerSqrtHour")) * hours) + Square(q.Number("floor")));
        for (var i = 2; i < 5; i++)
        {
            chain.AddGaussian([Term.State(t, i, 1), Term.State(t - 1, i, -rho), Term.Constant(4, -hours)], fresh * (1 - rho), edge);
        }
    }

    private void AddReading(ChainModel chain, JsonElement reading)
    {
        var check = _model.GetProperty("checks").GetProperty(reading.GetProperty("check").GetString()!);
        var station = reading.GetProperty("station").GetString()!;
        var weights = _model.GetProperty("stationWeights").Numbers(station);
        var t = reading.GetProperty("step").GetInt32();
        List<Term> terms = [Term.State(t, 0, weights[0]), Term.State(t, 1, weights[1])];
        if (reading.GetProperty("check").GetString() == "cut") terms.Add(Term.State(t, 2 + "LCR".IndexOf(station, StringComparison.Ordinal), 1));
        chain.AddCategory([.. terms], 0, check.Numbers("cutPoints"), reading.GetProperty("category").GetInt32(), check.Number("sd"));
    }

    private static double Square(double x) => x * x;
}
