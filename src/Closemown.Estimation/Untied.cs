namespace Closemown.Estimation;

/// <summary>Says which variable a singular matrix leaves free, with what, and what would cure it.</summary>
internal static class Untied
{
    public static EstimationException Explain(ChainModel model, Workspace w)
    {
        var failed = w.Elimination;
        if (failed.FailedEmpty)
        {
            return new(Name(model, failed.FailedStep, failed.FailedIndex), ErrorText.TiedToNothing, ErrorText.CureUntied);
        }

        // Which unknowns move along the free direction, each weighed by how firmly the factors hold it.
        int d = model.StateSize, states = w.StateCount;
        var held = Held(model, w);
        var direction = failed.FreeDirection();
        var weight = new double[direction.Length];
        var most = 0.0;
        for (var i = 0; i < weight.Length; i++)
        {
            weight[i] = Math.Abs(direction[i]) * Math.Sqrt(held[i]);
            most = Math.Max(most, weight[i]);
        }

        var moving = new List<(int Step, int Index)>();
        for (var i = 0; i < weight.Length; i++)
        {
            if (!(weight[i] > 1e-3 * most)) continue;
            var one = i < states ? (Step: i / d, Index: i % d) : (Step: -1, Index: i - states);
            if (!moving.Exists(x => x.Index == one.Index && x.Step < 0 == one.Step < 0)) moving.Add(one);
        }

        // The first state component that moves, at the first step where it does; or the first constant.
        if (moving.Count == 0) moving.Add((failed.FailedStep, failed.FailedIndex));
        var variable = Name(model, moving[0].Step, moving[0].Index);
        if (Seen(model, direction)) return new(variable, ErrorText.TooLoose, ErrorText.CureLoose);
        if (moving.Count == 1) return new(variable, moving[0].Step < 0 ? ErrorText.TiedToNothing : ErrorText.OnlyChanges, ErrorText.CureUntied);
        var others = string.Join(", ", moving.Skip(1).Take(4).Select(x => Name(model, x.Step, x.Index)));
        return new(variable, ErrorText.Together(others), ErrorText.CureTogether);
    }

    /// <summary>How firmly the factors hold each unknown by itself: the diagonal of the precision, intervals counted with their spread.</summary>
    private static double[] Held(ChainModel model, Workspace w)
    {
        var rows = model.Rows;
        var held = new double[w.U.Length];
        for (var k = 0; k < rows.Count; k++)
        {
            for (var p = rows.Start[k]; p < rows.Start[k + 1]; p++)
            {
                int at = rows.Local[p], d = model.StateSize;
                var sharp = rows.Weight[p] / w.Sd[k];
                held[at < 2 * d ? (rows.Step[k] * d) + at : w.StateCount + at - (2 * d)] += sharp * sharp;
            }
        }

        return held;
    }

    /// <summary>Whether a Gaussian factor does see the direction, so that only rounding made it look free.</summary>
    private static bool Seen(ChainModel model, double[] direction)
    {
        var rows = model.Rows;
        int d = model.StateSize, constants = model.StepCount * d;
        var most = direction.Max(Math.Abs);
        for (var k = 0; k < rows.Count; k++)
        {
            if (rows.Interval[k]) continue;
            var (size, least) = (0.0, 0.0);
            for (var p = rows.Start[k]; p < rows.Start[k + 1]; p++)
            {
                var at = rows.Local[p];
                least += 1e-9 * Math.Abs(rows.Weight[p]) * most;         // what rounding leaves in a part that does not move
                size += Math.Abs(rows.Weight[p] * direction[at < 2 * d ? (rows.Step[k] * d) + at : constants + at - (2 * d)]);
            }

            if (Math.Abs(rows.Dot(k, direction, d, constants)) > Math.Max(1e-3 * size, least)) return true;
        }

        return false;
    }

    public static EstimationException FarAway(ChainModel model, Workspace w, int k, double eta)
    {
        var rows = model.Rows;
        var touched = new List<string>();
        for (var p = rows.Start[k]; p < rows.Start[k + 1]; p++)
        {
            int at = rows.Local[p], d = model.StateSize;
            touched.Add(at < 2 * d ? Name(model, rows.Step[k] + (at / d), at % d) : Name(model, -1, at - (2 * d)));
        }

        var distance = Math.Max(rows.Low[k] - eta, eta - rows.High[k]) / w.Sd[k];
        return new(ErrorText.Reading(k, string.Join(", ", touched)), ErrorText.FarAway(distance), ErrorText.CureFar);
    }

    private static string Name(ChainModel model, int step, int index) =>
        step < 0 ? ErrorText.Constant(model.ConstantNames[index]) : ErrorText.State(model.StateNames[index], step);
}
