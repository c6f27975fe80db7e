using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>Rival explanations of the latest readings, compared by evidence: the latest entries are lived again under each.</summary>
/// <remarks>How often each happens is an assumption, no source, but for the strike (once in a hundred mowings, common practice).</remarks>
internal static class Rivals
{
    /// <summary>How many of the latest entries are looked at.</summary>
    public const int Window = 20;

    /// <summary>An explanation this probable is taken as what happened.</summary>
    public const double Taken = 0.9;

    /// <summary>One less probable than this is left out.</summary>
    public const double Least = 0.05;

    private const double MistakenOften = 0.01;
    private const double StrikeOften = 0.01;
    private const double SlipOften = 0.005;
    private const double MovedOften = 0.05;

    /// <summary>The explanations worth naming, the most probable first; chance is always among them.</summary>
    public static List<Rival> Of(IReadOnlyList<Moment> moments, IReadOnlyList<RunningBelief> before, RunningBelief now, UnitDescription unit)
    {
        var rivals = new List<Rival> { new(RivalKind.Chance, -1, -1, null, 0) };
        var (hand, best, factors) = (now.Main, now.Best, now.BestFactors);
        var pass = new ForwardPass(now.Current);
        var back = new ForwardPass(now.Current);
        for (var i = 0; i < moments.Count; i++)
        {
            if (before[i].HandCount != now.HandCount) continue;
            var m = moments[i];
            var plain = now.LogEvidence(best) - before[i].LogEvidence(hand, best);
            for (var r = 0; r < m.Reads.Count; r++)
            {
                if (m.Mistaken[r]) continue;
                var words = m.Reads[r].Category < 0 ? 3 : m.Reads[r].Check.Words.Count;
                Try(RivalKind.MistakenReading, i, r, null, Math.Log(MistakenOften / words), plain);
            }
            if (m.Jump is null && Jump(m) is var (kind, jump, often)) Try(kind, i, -1, jump, Math.Log(often), plain);
        }
        var top = rivals.Max(r => r.Weight);
        var sum = rivals.Sum(r => Math.Exp(r.Weight - top));
        return [.. rivals.Select(r => r with { Weight = Math.Exp(r.Weight - top) / sum })
            .Where(r => r.Weight >= Least || r.Kind == RivalKind.Chance).OrderByDescending(r => r.Weight)];

        void Try(RivalKind kind, int i, int read, Step? jump, double prior, double plain)
        {
            pass.CopyFrom(before[i].At(hand, best));
            var log = prior - plain;
            for (var j = i; j < moments.Count; j++)
            {
                var m = moments[j];
                if (m.NewStrip is { } strip) Steps.NewStrip(strip).MoveForward(pass);
                foreach (var step in m.Moves(unit, pass.Current)) step.MoveForward(pass);
                m.Jump?.MoveForward(pass);
                if (j == i) jump?.MoveForward(pass);
                var reads = j == i && read >= 0 ? [.. m.Reads.Where((_, k) => k != read && !m.Mistaken[k])] : m.Standing;
                log += RunningBelief.BothWays(pass, back, reads, factors[m.Person]);
            }
            rivals.Add(new(kind, i, read, jump, log));
        }
    }

    /// <summary>What an entry may have done besides what it says, and how often that happens.</summary>
    private static (RivalKind Kind, Step Step, double Often)? Jump(Moment m)
    {
        switch (m.Entry.Kind.Name)
        {
            case "mow":
                return (RivalKind.Strike, Steps.Unseen(), StrikeOften);
            case "clicks":
                var (l, r) = (Math.Abs(m.Entry.Number("left") ?? 0), Math.Abs(m.Entry.Number("right") ?? 0));
                return (RivalKind.SlippedClick, Steps.Slipped(l, r), SlipOften * (l + r));
            case "rebuild":
                return (RivalKind.MovedAtRebuild, Steps.Unseen(), MovedOften);
            default:
                return null;
        }
    }
}

/// <summary>One rival: which of the latest entries it is about, and what it changes there.</summary>
/// <param name="Kind">What.</param>
/// <param name="Moment">Index among the latest entries; −1 for chance.</param>
/// <param name="Read">Which of its readings is mistaken; −1 for none.</param>
/// <param name="Jump">What moved besides; null for nothing.</param>
/// <param name="Weight">Probability among the rivals.</param>
internal sealed record Rival(RivalKind Kind, int Moment, int Read, Step? Jump, double Weight);
