using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>Rival explanations of the latest readings, compared by evidence: the latest entries are lived again under each.</summary>
/// <remarks>How often each happens is an assumption, no source, but for the strike (once in a hundred mowings, common practice).</remarks>
internal static class Rivals
{
    /// <summary>How many of the latest entries are looked at.</summary>
    public const int Window = 20;

    /// <summary>An explanation this probable is taken as what happened.</summary>
    public const double Taken = 0.65;

    /// <summary>One less probable than this is left out.</summary>
    public const double Least = 0.05;

    /// <summary>Rivals are weighed from so much evidence against what was believed on, in nats; single ones from half of it.</summary>
    private const double WantedNats = 2.0;

    private const double MistakenOften = 0.03;
    private const double WholeOften = 0.002;
    /// <summary>Marks a rival under which the whole entry is mistaken.</summary>
    public const int All = -2;

    /// <summary>Marks a rival that is about no reading.</summary>
    public const int None = -1;

    private const double StrikeOften = 0.01;
    private const double SlipOften = 0.005;
    private const double MovedOften = 0.05;
    private const double UnseenOften = 0.002;

    /// <summary>A factor of scatter this much less probable than the best is not tried.</summary>
    private const double FarBehind = 4;

    /// <summary>Whether the latest readings speak against what was believed, in sum, so that rivals are worth weighing.</summary>
    /// <param name="moments">The latest entries.</param>
    /// <param name="settled">Whether enough was read of the unit; before that only a check made three times at a place can contradict itself.</param>
    public static bool Wanted(IReadOnlyList<Moment> moments, bool settled)
    {
        var last = moments[^1];
        for (var i = 0; i < moments.Count; i++)
        {
            foreach (var read in last.Reads)
            {
                if (moments[i].Reads.Any(r => r.Check.Station == read.Check.Station) && (settled || Repeated(moments, read)) && Against(moments, i, read.Check.Station) > (settled ? WantedNats : WantedNats / 2)) return true;
            }
        }
        return false;
    }

    private static bool Repeated(IReadOnlyList<Moment> moments, CheckRead read) =>
        moments.Sum(m => m.Reads.Count(r => r.Check.Station == read.Check.Station && r.Check.Kind == read.Check.Kind)) > 2;

    /// <summary>What the readings of a station (−1: of all) have said against the belief from one of the latest entries on.</summary>
    private static double Against(IReadOnlyList<Moment> moments, int from, int station)
    {
        var sum = 0.0;
        for (var i = from; i < moments.Count; i++)
        {
            for (var r = 0; r < moments[i].Reads.Count; r++)
            {
                if (!moments[i].Mistaken[r] && (station < 0 || moments[i].Reads[r].Check.Station == station)) sum += moments[i].Excess[r];
            }
        }
        return sum;
    }

    /// <summary>The explanations worth naming, the most probable first; chance is always among them.</summary>
    /// <remarks>Each is weighed over the factors of scatter of the person who reads most: a wild hand is itself an explanation.</remarks>
    public static List<Rival> Of(IReadOnlyList<Moment> moments, IReadOnlyList<RunningBelief> before, RunningBelief now, UnitDescription unit)
    {
        var hand = now.Main;
        var factors = now.BestFactors;
        var count = now.FactorCount;
        var pass = new ForwardPass(now.Current);
        var back = new ForwardPass(now.Current);
        var rivals = new List<Rival> { new(RivalKind.Chance, -1, None, null, 0, [.. Enumerable.Range(0, count).Select(g => now.LogEvidence(hand, g))]) };
        for (var i = 0; i < moments.Count; i++)
        {
            if (before[i].HandCount != now.HandCount) continue;
            var m = moments[i];
            for (var r = 0; r < m.Reads.Count; r++)
            {
                if (m.Mistaken[r] || Against(moments, i, m.Reads[r].Check.Station) < WantedNats / 2) continue;
                var words = m.Reads[r].Category < 0 ? 3 : m.Reads[r].Check.Words.Count;
                Try(RivalKind.MistakenReading, i, r, null, Math.Log(MistakenOften / words));
            }
            if (m.Reads.Count > 1 && !m.Mistaken.Any(x => x) && Against(moments, i, -1) >= WantedNats / 2)
                Try(RivalKind.MistakenReading, i, All, null, Math.Log(WholeOften) - m.Reads.Sum(r => Math.Log(r.Category < 0 ? 3 : r.Check.Words.Count)));
            if (m.Jump is not null || Against(moments, i, -1) < WantedNats / 2) continue;
            foreach (var (kind, jump, often) in Jumps(m)) Try(kind, i, None, jump, Math.Log(often));
        }
        var top = rivals.Max(r => r.Log.Max());
        var sums = rivals.ConvertAll(r => r.Log.Sum(l => Math.Exp(l - top)));
        var all = sums.Sum();
        return [.. rivals.Select((r, k) => r with { Weight = sums[k] / all, Log = [.. r.Log.Select(l => Math.Exp(l - top) / sums[k])] })
            .Where(r => r.Weight >= Least || r.Kind == RivalKind.Chance).OrderByDescending(r => r.Weight)];

        void Try(RivalKind kind, int i, int read, Step? jump, double prior)
        {
            var log = new double[count];
            var start = Enumerable.Range(0, count).Max(g => before[i].LogEvidence(hand, g));
            for (var g = 0; g < count; g++)
            {
                log[g] = before[i].LogEvidence(hand, g) < start - FarBehind ? double.NegativeInfinity
                    : prior + before[i].LogEvidence(hand, g) + Lived(i, read, jump, g);
            }
            rivals.Add(new(kind, i, read, jump, 0, log, prior));
        }

        double Lived(int i, int read, Step? jump, int g)
        {
            pass.CopyFrom(before[i].At(hand, g));
            var log = 0.0;
            for (var j = i; j < moments.Count; j++)
            {
                var m = moments[j];
                if (m.NewStrip is { } strip) Steps.NewStrip(strip).MoveForward(pass);
                foreach (var step in m.Moves(unit, pass.Current)) step.MoveForward(pass);
                m.Jump?.MoveForward(pass);
                if (j == i) jump?.MoveForward(pass);
                var reads = j != i || read == None ? m.Standing : read == All ? [] : [.. m.Reads.Where((_, k) => k != read && !m.Mistaken[k])];
                log += RunningBelief.BothWays(pass, back, reads, m.Person == hand ? now.Factor(g) : factors[m.Person]);
            }
            return log;
        }
    }

    /// <summary>The same rivals, weighed again by the evidence of the whole record, each under its likeliest factor of scatter.</summary>
    public static List<Rival> Again(List<Rival> rivals, Func<Rival, int, double> logEvidence)
    {
        var log = rivals.ConvertAll(r =>
        {
            var g = Array.IndexOf(r.Log, r.Log.Max());
            return r.LogPrior + Scatter.LogPrior(Scatter.Factors[g]) + logEvidence(r, g) - Math.Log(r.Log[g]);
        });
        var top = log.Max();
        var sum = log.Sum(l => Math.Exp(l - top));
        return [.. rivals.Select((r, k) => r with { Weight = Math.Exp(log[k] - top) / sum }).Where(r => r.Weight >= Least || r.Kind == RivalKind.Chance).OrderByDescending(r => r.Weight)];
    }

    /// <summary>What an entry may have done besides what it says, and how often that happens.</summary>
    private static IEnumerable<(RivalKind Kind, Step Step, double Often)> Jumps(Moment m)
    {
        switch (m.Entry.Kind.Name)
        {
            case "mow":
                for (var s = 0; s < 3; s++) yield return (RivalKind.Strike, Steps.Strike(s), StrikeOften / 3);
                break;
            case "clicks":
                var (l, r) = (Math.Abs(m.Entry.Number("left") ?? 0), Math.Abs(m.Entry.Number("right") ?? 0));
                if (l > 0) yield return (RivalKind.SlippedClick, Steps.Slipped(l, 0), SlipOften * l);
                if (r > 0) yield return (RivalKind.SlippedClick, Steps.Slipped(0, r), SlipOften * r);
                break;
            case "rebuild":
                yield return (RivalKind.MovedAtRebuild, Steps.Settled(), MovedOften);
                break;
            case "contact" or "paper-cut" or "paper-drag" or "feeler" when m.Odd:
                yield return (RivalKind.MovedUnseen, Steps.Settled(), UnseenOften);
                break;
        }
    }
}

/// <summary>One rival: which of the latest entries it is about, and what it changes there.</summary>
/// <param name="Kind">What.</param>
/// <param name="Moment">Index among the latest entries; −1 for chance.</param>
/// <param name="Read">Which of its readings is mistaken; <see cref="Rivals.All"/> or <see cref="Rivals.None"/> of them.</param>
/// <param name="Jump">What moved besides; null for nothing.</param>
/// <param name="Weight">Probability among the rivals.</param>
/// <param name="LogPrior">Logarithm of how often it happens.</param>
/// <param name="Log">Share of each factor of scatter in it (while it is being weighed: logarithm of its evidence).</param>
internal sealed record Rival(RivalKind Kind, int Moment, int Read, Step? Jump, double Weight, double[] Log, double LogPrior = 0);
