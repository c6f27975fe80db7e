using Closemown.Entries;
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

    /// <summary>Sums of what speaks against the belief, for each entry: three stations, and all.</summary>
    private const int Sums = 4;
    private const int AtAll = 3;

    /// <summary>A factor of scatter this much less probable than the best is not tried.</summary>
    public const double FarBehind = 4;

    /// <summary>Whether the latest readings speak against what was believed, in sum, so that rivals are worth weighing.</summary>
    /// <param name="moments">The latest entries.</param>
    /// <param name="settled">Whether enough was read of the unit; before that only a check made three times at a place can contradict itself.</param>
    public static bool Wanted(List<Moment> moments, bool settled)
    {
        Span<double> against = stackalloc double[(Window + 1) * Sums];
        Against(moments, against);
        foreach (var read in moments[^1].Reads)
        {
            if (!settled && !Repeated(moments, read)) continue;
            var station = read.Check.Station;
            for (var i = 0; i < moments.Count; i++)
            {
                if (against[(i * Sums) + station] > (settled ? WantedNats : WantedNats / 2) && Reads(moments[i], station)) return true;
            }
        }
        return false;
    }

    private static bool Reads(Moment m, int station)
    {
        foreach (var read in m.Reads)
        {
            if (read.Check.Station == station) return true;
        }
        return false;
    }

    private static bool Repeated(List<Moment> moments, CheckRead read) =>
        moments.Sum(m => m.Reads.Count(r => r.Check.Station == read.Check.Station && r.Check.Kind == read.Check.Kind)) > 2;

    /// <summary>What the readings have said against the belief from each of the latest entries on: at each station, and in all.</summary>
    private static void Against(List<Moment> moments, Span<double> sums)
    {
        sums.Slice(moments.Count * Sums, Sums).Clear();
        for (var i = moments.Count - 1; i >= 0; i--)
        {
            var (at, m) = (i * Sums, moments[i]);
            sums.Slice(at + Sums, Sums).CopyTo(sums[at..]);
            for (var r = 0; r < m.Reads.Count; r++)
            {
                if (m.Mistaken[r]) continue;
                sums[at + m.Reads[r].Check.Station] += m.Excess[r];
                sums[at + AtAll] += m.Excess[r];
            }
        }
    }

    /// <summary>The explanations worth naming, the most probable first; chance is always among them.</summary>
    /// <remarks>Each is weighed over the factors of scatter of the person who reads most: a wild hand is itself an explanation.</remarks>
    public static List<Rival> Of(List<Moment> moments, List<RunningBelief> before, RunningBelief now, RivalWorld world, Stack<ForwardPass> spare)
    {
        if (!world.Same(now)) Forget(moments, spare);
        var chance = new double[now.FactorCount];
        for (var g = 0; g < chance.Length; g++) chance[g] = now.LogEvidence(now.Main, g);
        var rivals = new List<Rival> { new(RivalKind.Chance, -1, None, null, 0, chance) };
        Span<double> against = stackalloc double[(Window + 1) * Sums];
        Against(moments, against);
        for (var i = 0; i < moments.Count; i++)
        {
            if (before[i].HandCount != now.HandCount) continue;
            var m = moments[i];
            m.Lives ??= [.. LivesOf(m)];
            foreach (var life in m.Lives)
            {
                if (!Open(m, life) || against[(i * Sums) + (life.Read >= 0 ? m.Reads[life.Read].Check.Station : AtAll)] < WantedNats / 2) continue;
                if (life.Unlived) life.Begin(before[i], now.Main, spare);
                rivals.Add(new(life.Kind, i, life.Read, life.Jump, 0, life.GoOn(moments, i, world), life.LogPrior));
            }
        }
        var top = rivals.Max(r => r.Log.Max());
        var sums = rivals.ConvertAll(r => r.Log.Sum(l => Math.Exp(l - top)));
        var all = sums.Sum();
        return [.. rivals.Select((r, k) => r with { Weight = sums[k] / all, Log = [.. r.Log.Select(l => Math.Exp(l - top) / sums[k])] })
            .Where(r => r.Weight >= Least || r.Kind == RivalKind.Chance).OrderByDescending(r => r.Weight)];
    }

    /// <summary>Forgets all that was lived: the record that it was lived through, or its weights, are others now.</summary>
    public static void Forget(IEnumerable<Moment> moments, Stack<ForwardPass> spare)
    {
        foreach (var m in moments)
        {
            foreach (var life in m.Lives ?? []) life.Forget(spare);
        }
    }

    /// <summary>Whether what was found already leaves room for it.</summary>
    private static bool Open(Moment m, RivalLife life) => life.Read switch
    {
        None => m.Jump is null,
        All => !m.Mistaken.AsSpan().Contains(true),
        _ => !m.Mistaken[life.Read],
    };

    /// <summary>What may have happened at an entry: each reading mistaken, all of them, or something moved besides.</summary>
    private static IEnumerable<RivalLife> LivesOf(Moment m)
    {
        // Blades differ: who read one of them was not mistaken for reading another thing than before.
        var blade = BladeReads.Of(m.Entry) is not null;
        for (var r = 0; r < m.Reads.Count && !blade; r++) yield return new(RivalKind.MistakenReading, r, null, MistakenOften / Words(m.Reads[r]));
        if (!blade && m.Reads.Count > 1) yield return new(RivalKind.MistakenReading, All, null, m.Reads.Aggregate(WholeOften, (often, r) => often / Words(r)));
        foreach (var (kind, jump, often) in Jumps(m)) yield return new(kind, None, jump, often);

        static int Words(CheckRead r) => r.Category < 0 ? 3 : r.Check.Words.Count;
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
            case MowEntry.Name:
                for (var s = 0; s < 3; s++) yield return (RivalKind.Strike, Steps.Strike(s), StrikeOften / 3);
                break;
            case ClicksEntry.Name:
                var (l, r) = (Math.Abs(m.Entry[ClicksEntry.Left] ?? 0), Math.Abs(m.Entry[ClicksEntry.Right] ?? 0));
                if (l > 0) yield return (RivalKind.SlippedClick, Steps.Slipped(l, 0), SlipOften * l);
                if (r > 0) yield return (RivalKind.SlippedClick, Steps.Slipped(0, r), SlipOften * r);
                break;
            case RebuildEntry.Name:
                yield return (RivalKind.MovedAtRebuild, Steps.Settled(), MovedOften);
                break;
            case ContactEntry.Name or PaperCutEntry.Name or PaperDragEntry.Name or FeelerEntry.Name when m.Odd:
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
