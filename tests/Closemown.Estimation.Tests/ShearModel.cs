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

    /// <summary>The same book by one forward pass.</summary>
    public GaussianState Filter()
    {
        double[] mean = [.. _model.Numbers("initialMean"), .. _model.Numbers("constantMean")];
        double[] sd = [.. _model.Numbers("initialSd"), .. _model.Numbers("constantSd")];
        var covariance = new double[11 * 11];
        for (var i = 0; i < 11; i++) covariance[i * 12] = sd[i] * sd[i];
        var pass = new ForwardPass(new GaussianState(Names("state"), Names("constants"), mean, covariance));
        var t = 0;
        foreach (var step in _book.GetProperty("steps").EnumerateArray())
        {
            t++;
            double hours = step.Number("hours"), lap = step.Number("lapMin");
            var (clearance, edge, fresh, rho) = Noise(step);
            var a = new double[25];
            var b = new double[30];
            for (var i = 0; i < 5; i++) a[i * 6] = i < 2 ? 1 : rho;
            (b[0], b[2], b[5]) = (-step.Number("clicksL"), hours, lap);
            (b[7], b[9], b[11]) = (-step.Number("clicksR"), hours, lap);
            for (var i = 2; i < 5; i++) b[(i * 6) + 4] = hours;
            var shift = fresh * (1 - rho);
            pass.Move(a, b, [0, 0, shift, shift, shift], [clearance[0], clearance[1], edge, edge, edge]);
            foreach (var reading in _book.GetProperty("readings").EnumerateArray())
            {
                if (reading.GetProperty("step").GetInt32() != t) continue;
                var (terms, cuts, category, spread) = Reading(reading);
                pass.ObserveCategory(terms, 0, cuts, category, spread);
            }
        }

        return pass.Current;
    }

    private string[] Names(string of) => [.. _model.GetProperty(of).EnumerateArray().Select(x => x.GetString()!)];

    private void AddTransition(ChainModel chain, JsonElement step)
    {
        var t = chain.AddStep();
        double hours = step.Number("hours"), lap = step.Number("lapMin");
        double[] clicks = [step.Number("clicksL"), step.Number("clicksR")];
        var (clearance, edge, fresh, rho) = Noise(step);
        for (var i = 0; i < 2; i++)
        {
            chain.AddGaussian(
                [Term.State(t, i, 1), Term.State(t - 1, i, -1), Term.Constant(i, clicks[i]), Term.Constant(2 + i, -hours), Term.Constant(5, -lap)],
                0, clearance[i]);
        }

        for (var i = 2; i < 5; i++)
        {
            chain.AddGaussian([Term.State(t, i, 1), Term.State(t - 1, i, -rho), Term.Constant(4, -hours)], fresh * (1 - rho), edge);
        }
    }

    private (double[] Clearance, double Edge, double Fresh, double Rho) Noise(JsonElement step)
    {
        var q = _model.GetProperty("noise");
        double hours = step.Number("hours"), lap = step.Number("lapMin");
        var common = (Square(q.Number("mowPerSqrtHour")) * hours) + (Square(q.Number("lapPerSqrtMinute")) * lap) + Square(q.Number("floor"));
        double Sd(double clicks) => Math.Sqrt(common + (Square(q.Number("clickPerSqrtClick")) * Math.Abs(clicks)));
        var edge = Math.Sqrt((Square(q.Number("edgePerSqrtHour")) * hours) + Square(q.Number("floor")));
        return ([Sd(step.Number("clicksL")), Sd(step.Number("clicksR"))], edge, _model.Number("freshEdge"), Math.Exp(-lap / _model.Number("lapTimeConstantMin")));
    }

    private void AddReading(ChainModel chain, JsonElement reading)
    {
        var (terms, cuts, category, sd) = Reading(reading);
        chain.AddCategory(terms, 0, cuts, category, sd);
    }

    private (Term[] Terms, double[] Cuts, int Category, double Sd) Reading(JsonElement reading)
    {
        var check = _model.GetProperty("checks").GetProperty(reading.GetProperty("check").GetString()!);
        var station = reading.GetProperty("station").GetString()!;
        var weights = _model.GetProperty("stationWeights").Numbers(station);
        var t = reading.GetProperty("step").GetInt32();
        List<Term> terms = [Term.State(t, 0, weights[0]), Term.State(t, 1, weights[1])];
        if (reading.GetProperty("check").GetString() == "cut") terms.Add(Term.State(t, 2 + "LCR".IndexOf(station, StringComparison.Ordinal), 1));
        return ([.. terms], check.Numbers("cutPoints"), reading.GetProperty("category").GetInt32(), check.Number("sd"));
    }

    private static double Square(double x) => x * x;
}
