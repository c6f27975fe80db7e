using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>When the next sitting at the bench will pay: how many usual mowings from now.</summary>
internal static class BenchForecast
{
    private const double Margin = 2;                     // minutes a sitting must save beyond its own cost
    private static readonly int[] Ahead = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 22, 27, 33, 40, 50, 60, 80, 100];

    /// <summary>Usual mowings until the bench is due; null where it is not due within a hundred.</summary>
    public static int? Mowings(SteelBelief belief, AdviceSettings set, Ranking ranking)
    {
        var track = belief.Track;
        SteelAction[] plans = [.. Enumerable.Range(0, 5).Select(n => new SteelAction("clicks", n, n)), .. Enumerable.Range(0, 3).Select(n => new SteelAction("lap", n, n, 2))];
        foreach (var k in Ahead)
        {
            var leave = 0.0;
            var best = new double[plans.Length];
            for (var d = 0; d < Ranking.DrawCount; d++)
            {
                var x = ranking.Draws[d];
                var later = ranking.Mowing.After(ActionEffect.Before(x), x, k);
                leave += ranking.Mowing.Of(later, x);
                double[] moved = x.ToArray();
                (moved[Layout.ClearanceLeft], moved[Layout.ClearanceRight]) = (later.Left, later.Right);
                (moved[Layout.Edge], moved[Layout.Edge + 1], moved[Layout.Edge + 2]) = (later.EdgeLeft, later.EdgeCentre, later.EdgeRight);
                for (var a = 0; a < plans.Length; a++) best[a] += ranking.Mowing.Of(ActionEffect.After(plans[a], moved, track, ranking.Grit), x);
            }
            var least = plans.Select((p, a) => (best[a] / Ranking.DrawCount) + (p.Minutes(set) * set.PriceOfMinute)).Min();
            if ((leave / Ranking.DrawCount) > least + ((set.OpenSittingMinutes + Margin) * set.PriceOfMinute)) return k;
        }
        return null;
    }
}
