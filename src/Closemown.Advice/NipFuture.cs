using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What the nip that a mowing leaves behind will cost in the mowings to come: the price of openness and bluntness carried forward.</summary>
/// <remarks>
/// One station stands for all: its gap and edge move on by this unit's rates, and before every mowing the cheapest of leaving it, clicks
/// and a lap is taken; while the strip cuts it is only left or backed off, as the rules of the trade have it (<see cref="Narrowed.CutsSoMow"/>), so that
/// what is set now has to last. Who must open a sitting for it each time is kept from it by that price instead. Relative value iteration on a
/// small grid (Puterman 1994, Markov Decision Processes, 8.5) gives the cost of a state above the best one, in minutes. It takes the state as seen within
/// a few µm, as it will be after a check.
/// </remarks>
public sealed class NipFuture
{
    private const double Cell = 3;
    private const double LeastGap = -24;
    private const int Gaps = 33;
    private const int Edges = 18;
    private const double WearSd = 2.5;
    private const int MostRounds = 150;
    private const double Settled = 0.02;
    private static readonly (int Clicks, bool Lap)[] Deeds = [(-1, false), (1, false), (2, false), (3, false), (0, true), (1, true), (2, true)];
    private readonly double[] value = new double[Gaps * Edges];

    private NipFuture()
    {
    }

    /// <summary>Solves for a unit as it is believed to be.</summary>
    /// <param name="belief">What is known.</param>
    /// <param name="set">What things are worth.</param>
    /// <param name="opens">Whether a sitting at the bench must be opened each time.</param>
    public static NipFuture Of(SteelBelief belief, AdviceSettings set, bool opens)
    {
        ArgumentNullException.ThrowIfNull(belief);
        return Of(NipRates.Of(belief), set, opens);
    }

    /// <summary>Solves for given rates.</summary>
    /// <param name="rates">How the nip moves.</param>
    /// <param name="set">What things are worth.</param>
    /// <param name="opens">Whether a sitting at the bench must be opened each time.</param>
    public static NipFuture Of(NipRates rates, AdviceSettings set, bool opens)
    {
        ArgumentNullException.ThrowIfNull(rates);
        ArgumentNullException.ThrowIfNull(set);
        var future = new NipFuture();
        future.Solve(rates, set, opens);
        return future;
    }

    /// <summary>Minutes to come, above the best state, from a nip just after mowing.</summary>
    public double At(double gap, double edge) => At(value, gap, edge);

    private void Solve(NipRates r, AdviceSettings set, bool opens)
    {
        var (open, dull, click, lap) = (r.OpenUm, r.DullUm, r.ClickUm, r.LapUmPerMinute);
        var blur = Math.Sqrt((SteelDefaults.TearSpreadUm * SteelDefaults.TearSpreadUm) + (r.CleanUm.Sd * r.CleanUm.Sd));
        var sitting = opens ? (set.OpenSittingMinutes + (2 * set.ContactMinutes)) * set.PriceOfMinute : 0;
        var mown = new double[Gaps * Edges];
        var mowing = new double[Gaps * Edges];
        for (var i = 0; i < Gaps; i++)
        {
            for (var j = 0; j < Edges; j++) mowing[(i * Edges) + j] = Mowing(LeastGap + (i * Cell), j * Cell);
        }
        var (lap1, lapGap, lapEdge) = Laps();
        var folds = new double[Gaps * Edges];
        for (var i = 0; i < Gaps; i++)
        {
            for (var j = 0; j < Edges; j++) folds[(i * Edges) + j] = r.CutsUm is { } cuts && !opens ? NormalMath.Phi((LeastGap + (i * Cell) + (j * Cell) - cuts.Mean) / cuts.Sd) : 1;
        }
        var costs = Array.ConvertAll(Deeds, d => sitting + Cost(d));
        var next = new double[Gaps * Edges];
        for (var round = 0; round < MostRounds; round++)
        {
            for (var i = 0; i < Gaps; i++)
            {
                for (var j = 0; j < Edges; j++)
                {
                    double g = LeastGap + (i * Cell) + open, e = (j * Cell) + dull;
                    mown[(i * Edges) + j] = mowing[(i * Edges) + j] + (At(value, g, e) / 2) + (At(value, g - (1.4 * WearSd), e) / 4) + (At(value, g + (1.4 * WearSd), e) / 4);
                }
            }
            for (var i = 0; i < Gaps; i++)
            {
                for (var j = 0; j < Edges; j++)
                {
                    var left = mown[(i * Edges) + j];
                    var best = left;
                    for (var d = 0; d < Deeds.Length; d++)
                    {
                        var g = LeastGap + (i * Cell) - (Deeds[d].Clicks * click);
                        if (!Deeds[d].Lap)
                        {
                            if (Deeds[d].Clicks < 0) left = Math.Min(left, costs[d] + At(mown, g, j * Cell));
                            best = Math.Min(best, costs[d] + At(mown, g, j * Cell));
                            continue;
                        }
                        var bite = LapBite.At(g);
                        best = Math.Min(best, costs[d] + At(mown, g + (lapGap * bite), lapEdge + (((j * Cell) - lapEdge) * LapBite.Leaves(lap1, bite, r.Relief))));
                    }
                    var may = folds[(i * Edges) + j];
                    next[(i * Edges) + j] = (may * best) + ((1 - may) * left);
                }
            }
            var least = next.Min();
            var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
            for (var k = 0; k < next.Length; k++)
            {
                var was = value[k];
                value[k] = next[k] - least;
                low = Math.Min(low, value[k] - was);
                high = Math.Max(high, value[k] - was);
            }
            if (high - low < Settled) break;
        }

        double Mowing(double g, double e)
        {
            var torn = NormalMath.Phi((g + (open / 2) + e + (dull / 2) - r.CleanUm.Mean) / Math.Sqrt((blur * blur) + (r.SeenUm * r.SeenUm)));
            var outside = NormalMath.Phi((r.BandUm.Low + set.GuardUm - g) / r.SeenUm) + NormalMath.Phi((g - r.BandUm.High) / r.SeenUm);
            var pressed = Pressing.ExpectedUm(g - set.GuardUm, r.SeenUm * r.SeenUm);
            return (set.TornMowing * torn) + (set.OutOfTolerance * outside)
                + (r.Hours * ((set.PressedUmHour * Math.Min(pressed, set.PressingKneeUm)) + (set.HardPressedUmHour * Math.Max(0, pressed - set.PressingKneeUm))));
        }

        (double Minutes, double Opens, double Fresh) Laps() => (AdviceSettings.LapRoundMinutes, lap * AdviceSettings.LapRoundMinutes, SteelDefaults.EdgeLappedUm.Mean);

        double Cost((int Clicks, bool Lap) d)
        {
            var a = new SteelAction(d.Lap ? "lap" : "clicks", d.Clicks, d.Clicks, d.Lap ? AdviceSettings.LapRoundMinutes : 0);
            return (a.Minutes(set) * set.PriceOfMinute) + (d.Lap ? lap * AdviceSettings.LapRoundMinutes / 2 * (set.KnifeUm + set.ReelUm) : 0);
        }
    }

    private static double At(double[] v, double gap, double edge)
    {
        var x = Math.Clamp((gap - LeastGap) / Cell, 0, Gaps - 1.001);
        var y = Math.Clamp(edge / Cell, 0, Edges - 1.001);
        int i = (int)x, j = (int)y;
        double a = x - i, b = y - j;
        var at = (i * Edges) + j;
        return ((1 - a) * (((1 - b) * v[at]) + (b * v[at + 1]))) + (a * (((1 - b) * v[at + Edges]) + (b * v[at + Edges + 1])));
    }
}
