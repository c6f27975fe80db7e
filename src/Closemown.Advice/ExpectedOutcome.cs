using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>The nip that a plan should lead to, over the draws of the belief.</summary>
internal static class ExpectedOutcome
{
    public static ExpectedNip Of(SteelAction action, Ranking ranking)
    {
        const int N = Ranking.DrawCount;
        var unit = ranking.Track.Unit;
        var at = new double[3][];
        for (var s = 0; s < 3; s++) at[s] = new double[N];
        var (within, clean) = (0, 0.0);
        for (var k = 0; k < N; k++)
        {
            var x = ranking.Draws[k];
            var nip = ActionEffect.After(action, x, ranking.Track, ranking.Grit);
            for (var s = 0; s < 3; s++)
            {
                var (left, right) = unit.Weights(s);
                at[s][k] = (left * nip.Left) + (right * nip.Right) + (s == 1 ? nip.Bow : 0);
            }
            if (ranking.Mowing.InTolerance(nip)) within++;
            clean += ranking.Mowing.Clean(nip, x);
        }
        return new([.. at.Select(v => Estimate.FromDraws(v))], (double)within / N, clean / N);
    }
}
