using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>One rival explanation about one of the latest entries, lived from there on under each factor of scatter of the main person.</summary>
/// <remarks>It goes on from the entry it came to last: living all of them again for each new reading would give the same and cost ten times as much.</remarks>
internal sealed class RivalLife(RivalKind kind, int read, Step? jump, double often)
{
    private ForwardPass?[] passes = [];
    private double[] log = [];
    private int lived;                                   // entries, from its own on

    public RivalKind Kind { get; } = kind;

    /// <summary>Which reading of the entry is mistaken; <see cref="Rivals.All"/> or <see cref="Rivals.None"/> of them.</summary>
    public int Read { get; } = read;

    /// <summary>What moved besides; null for nothing.</summary>
    public Step? Jump { get; } = jump;

    /// <summary>Logarithm of how often it happens.</summary>
    public double LogPrior { get; } = Math.Log(often);

    /// <summary>Whether it has not begun yet.</summary>
    public bool Unlived => lived == 0;

    /// <summary>Begins from the belief before its entry, with a pass for each factor that is not far behind the best.</summary>
    public void Begin(RunningBelief before, int hand, Stack<ForwardPass> spare)
    {
        (passes, log) = (new ForwardPass[before.FactorCount], new double[before.FactorCount]);
        for (var g = 0; g < log.Length; g++) log[g] = LogPrior + before.LogEvidence(hand, g);
        var least = before.LogEvidence(hand, before.Best(hand)) - Rivals.FarBehind;
        for (var g = 0; g < log.Length; g++)
        {
            if (before.LogEvidence(hand, g) < least)
            {
                log[g] = double.NegativeInfinity;
                continue;
            }
            if (!spare.TryPop(out var pass)) pass = new ForwardPass(before.At(hand, g));
            else pass.CopyFrom(before.At(hand, g));
            passes[g] = pass;
        }
    }

    /// <summary>Lives the entries that came since.</summary>
    /// <param name="moments">The latest entries.</param>
    /// <param name="at">Which of them is its own.</param>
    /// <param name="world">What all rivals share.</param>
    /// <returns>Logarithm of its evidence under each factor.</returns>
    public double[] GoOn(List<Moment> moments, int at, RivalWorld world)
    {
        for (var j = at + lived; j < moments.Count; j++)
        {
            var m = moments[j];
            var reads = j > at || Read == Rivals.None ? m.Standing : Read == Rivals.All ? [] : [.. m.Reads.Where((_, k) => k != Read && !m.Mistaken[k])];
            for (var g = 0; g < passes.Length; g++)
            {
                if (passes[g] is not { } pass) continue;
                if (m.NewStrip is { } strip) Steps.NewStrip(strip).MoveForward(pass);
                foreach (var step in m.Moves(world.Unit, pass.Current)) step.MoveForward(pass);
                m.Jump?.MoveForward(pass);
                if (j == at) Jump?.MoveForward(pass);
                log[g] += RunningBelief.BothWays(pass, world.Back, reads, world.Factor(m.Person, g));
            }
        }
        lived = moments.Count - at;
        return [.. log];
    }

    /// <summary>Forgets what it lived; its passes can serve another.</summary>
    public void Forget(Stack<ForwardPass> spare)
    {
        foreach (var pass in passes)
        {
            if (pass is not null) spare.Push(pass);
        }
        (passes, lived) = ([], 0);
    }
}
