using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>An action with what it is expected to cost in all, minutes.</summary>
internal sealed record RankedAction(SteelAction Action, double Loss);

/// <summary>A check with what it is expected to save, minutes, before its own minutes.</summary>
internal sealed record RankedCheck(CheckOffer Offer, double Gain, double Net);

/// <summary>Actions and checks ranked by expected loss over draws of the belief.</summary>
/// <remarks>
/// Losses form one matrix (actions × draws), the probabilities of what a check may show another (draws × outcomes);
/// a check is worth the best expected loss now less the mean best expected loss after it (value of information).
/// </remarks>
internal sealed class Ranking
{
    public const int DrawCount = 256;
    private const ulong Seed = 20260202;
    private const int Contenders = 48;
    private readonly UnitTrack track;
    private readonly AdviceSettings set;
    private readonly SteelDraws draws;
    private readonly List<SteelAction> actions;
    private readonly double scatter;
    private readonly double[][] loss;
    private readonly int[] contenders;                   // actions that a check may bring to the front: the others are too far behind

    public Ranking(SteelBelief belief, AdviceSettings settings, List<SteelAction> actions, double? grit, int lapsBefore, bool opens)
    {
        (track, set, this.actions) = (belief.Track, settings, actions);
        Mowing = new MowingLoss(settings, track.Unit, track.Memory.UsualHours, NipFuture.Of(belief, settings, opens));
        draws = settings.Without.HasFlag(Ablation.Spread) ? SteelDraws.AtMean(belief.Last, DrawCount, ActionEffect.Extras) : SteelDraws.Of(belief.Parts, DrawCount, Seed, ActionEffect.Extras);
        scatter = belief.ScatterFactor;
        Grit = grit;
        loss = new double[actions.Count][];
        for (var a = 0; a < actions.Count; a++)
        {
            loss[a] = new double[DrawCount];
            var fixedCost = ((actions[a].Minutes(set, lapsBefore) + StripLast(actions[a])) * set.PriceOfMinute) + actions[a].Worth(set) + SteelUsed(actions[a]);
            for (var k = 0; k < DrawCount; k++)
            {
                loss[a][k] = fixedCost + (ActionEffect.Minutes(actions[a], draws[k], track, set) * set.PriceOfMinute)
                    + Mowing.Of(ActionEffect.After(actions[a], draws[k], track, grit), draws[k]);
            }
        }
        var mean = Array.ConvertAll(loss, row => row.Average());
        var order = Enumerable.Range(0, actions.Count).OrderBy(a => mean[a]).ToArray();
        Actions = [.. order.Select(a => new RankedAction(actions[a], mean[a]))];
        contenders = [.. order.Take(Contenders).Concat(order.Skip(Contenders).Where(a => actions[a].Do == "leave"))];
    }

    public MowingLoss Mowing { get; }

    public UnitTrack Track => track;

    public double? Grit { get; }

    public SteelDraws Draws => draws;

    /// <summary>Best first.</summary>
    public IReadOnlyList<RankedAction> Actions { get; }

    public RankedAction Best => Actions[0];

    public double LossOf(SteelAction action) => Actions.First(r => r.Action == action).Loss;

    /// <summary>Minutes for the strip at all three places, which comes last after any turn or lap.</summary>
    private double StripLast(SteelAction a)
    {
        var signs = track.Memory.Signs;
        if (!track.Unit.Owns.Contains("strip") || set.Without.HasFlag(Ablation.StripLast) || a.Do is "grind" or "repair" || (a.Do == "leave" && (!signs.Changed || signs.StripFed))) return 0;
        return set.CheckMinutes("paper-cut", 3);
    }

    /// <summary>Steel a plan takes off, in minutes: a lap's opening is shared by knife and reel.</summary>
    private double SteelUsed(SteelAction a)
    {
        var each = a.Do is "grind" or "repair" ? set.GrindUm : a.LapMinutes * SteelDefaults.LapUmPerMinute.Mean / 2;
        return each * (set.KnifeUm + set.ReelUm);
    }

    /// <summary>The checks on offer, most worth first.</summary>
    public List<RankedCheck> Checks(IEnumerable<CheckOffer> offers) =>
        [.. offers.Select(o =>
        {
            var gain = Gain([.. o.Checks(track)]);
            return new RankedCheck(o, gain, gain - (set.CheckShare * set.PriceOfMinute * o.Minutes(set)));
        }).OrderByDescending(r => r.Net)];

    /// <summary>What a check could show that would change the best action, most likely first.</summary>
    public List<WouldChange> Changes(UnitTrack unit, CheckOffer offer, AdviceStep chosen)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Check[] checks = [.. offer.Checks(unit)];
        var weight = Weights(checks, out var outcomes);
        var changes = new List<WouldChange>();
        for (var o = 0; o < outcomes; o++)
        {
            var (a, p) = BestUnder(weight.AsSpan(o * DrawCount, DrawCount));
            var same = chosen.Do == "mow" ? actions[a].Do == "leave" : actions[a] == Best.Action;
            if (same || p < 0.02) continue;
            changes.Add(new(Outcome(checks, o), p, actions[a].Say(unit.Unit)));
        }
        return [.. changes.OrderByDescending(c => c.Probability).Take(3)];
    }

    private static string Outcome(Check[] checks, int outcome)
    {
        var words = new string[checks.Length];
        for (var i = checks.Length - 1; i >= 0; i--)
        {
            var n = checks[i].Words.Count;
            words[i] = $"{checks[i].Kind} {Entries.Stations.All[checks[i].Station]}: {checks[i].Words[outcome % n]}";
            outcome /= n;
        }
        return string.Join(", ", words);
    }

    private double Gain(Check[] checks)
    {
        var weight = Weights(checks, out var outcomes);
        var after = 0.0;
        for (var o = 0; o < outcomes; o++)
        {
            var w = weight.AsSpan(o * DrawCount, DrawCount);
            after += Expected(w, BestUnder(w).Action);
        }
        return Best.Loss - after;
    }

    private (int Action, double Probability) BestUnder(ReadOnlySpan<double> w)
    {
        var (at, best) = (0, double.PositiveInfinity);
        foreach (var a in contenders)
        {
            var sum = Expected(w, a);
            if (sum < best) (at, best) = (a, sum);
        }
        var p = 0.0;
        foreach (var x in w) p += x;
        return (at, p);
    }

    private double Expected(ReadOnlySpan<double> w, int action)
    {
        var row = loss[action];
        var sum = 0.0;
        for (var k = 0; k < DrawCount; k++) sum += w[k] * row[k];
        return sum;
    }

    /// <summary>Probability of each outcome with each draw, outcome by outcome; the first check varies slowest.</summary>
    private double[] Weights(Check[] checks, out int outcomes)
    {
        outcomes = checks.Aggregate(1, (n, c) => n * (c.CutPoints.Length + 1));
        var weight = new double[outcomes * DrawCount];
        Span<double> p = stackalloc double[8];
        for (var k = 0; k < DrawCount; k++)
        {
            var x = draws[k];
            weight[k] = 1.0 / DrawCount;
            var so = 1;
            foreach (var check in checks)
            {
                var eta = 0.0;
                foreach (var t in check.Terms) eta += t.Weight * x[t.Step < 0 ? Layout.StateSize + t.Index : t.Index];
                var n = check.CutPoints.Length + 1;
                Categories.Probabilities(eta, 0, check.SdUm * scatter, check.CutPoints, p[..n]);
                for (var o = so - 1; o >= 0; o--)
                {
                    var w = weight[(o * DrawCount) + k];
                    for (var c = n - 1; c >= 0; c--) weight[(((o * n) + c) * DrawCount) + k] = w * p[c];
                }
                so *= n;
            }
        }
        return weight;
    }
}
