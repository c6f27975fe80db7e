using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>When the next sitting at the bench will pay: how many usual mowings from now.</summary>
/// <remarks>
/// A sitting is taken to find out enough to choose well, so the best plan is chosen draw by draw, and some minutes of checks are charged for that;
/// one plan for all draws would look useless wherever the opening is not yet known.
/// </remarks>
internal static class BenchForecast
{
    private const double CheckMinutes = 3;
    private const double Margin = 2;                     // minutes a sitting must save beyond its own cost
    private static readonly int[] Ahead = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 22, 27, 33, 40, 50, 60, 80, 100];
    private static readonly SteelAction[] Plans =
        [.. Enumerable.Range(0, 6).Select(n => new SteelAction("clicks", n, n)), .. Enumerable.Range(0, 4).Select(n => new SteelAction("lap", n, n, AdviceSettings.LapRoundMinutes))];

    /// <summary>Usual mowings until the bench is due; null where it is not due within a hundred.</summary>
    public static int? Mowings(AdviceSettings set, Ranking ranking)
    {
        var open = (set.OpenSittingMinutes + CheckMinutes + Margin) * set.PriceOfMinute;
        var minutes = Array.ConvertAll(Plans, p => p.Minutes(set) * set.PriceOfMinute);
        var moved = new double[ranking.Draws[0].Length];
        foreach (var k in Ahead)
        {
            var saved = 0.0;
            for (var d = 0; d < Ranking.DrawCount; d++)
            {
                var x = ranking.Draws[d];
                var later = ranking.Mowing.After(ActionEffect.Before(x), x, k);
                x.CopyTo(moved);
                (moved[Layout.ClearanceLeft], moved[Layout.ClearanceRight]) = (later.Left, later.Right);
                (moved[Layout.Edge], moved[Layout.Edge + 1], moved[Layout.Edge + 2]) = (later.EdgeLeft, later.EdgeCentre, later.EdgeRight);
                var leave = ranking.Mowing.Of(later, x);
                var best = leave;
                for (var a = 0; a < Plans.Length; a++)
                    best = Math.Min(best, minutes[a] + ranking.Mowing.Of(ActionEffect.After(Plans[a], moved, ranking.Track, ranking.Grit), x));
                saved += leave - best;
            }
            if (saved / Ranking.DrawCount > open) return k;
        }
        return null;
    }
}
