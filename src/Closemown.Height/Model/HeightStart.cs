using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>What is believed of a unit's height before its first entry: Gaussian factors on the first state and the constants.</summary>
internal static class HeightStart
{
    /// <summary>Both sides are cut on one thread and stand much alike: correlations, assumptions.</summary>
    private const double ThreadsTogether = 0.9;

    public static void AddTo(ChainModel chain, HeightUnit unit)
    {
        var turn = unit.MmPerTurnStart;
        var pull = unit.Start("pullShare", HeightDefaults.PullShare);
        var lost = unit.Start("lostTurns", HeightDefaults.LostTurns);
        Pair(chain, HeightLayout.Left, unit.Start("benchMm", HeightDefaults.BenchMm), HeightDefaults.SidesTogether, constants: false);
        chain.AddGaussian([Term.State(0, HeightLayout.Grain, 1)], 0, HeightDefaults.GrainMm);
        chain.AddGaussian([Term.State(0, HeightLayout.Season, 1)], 0, HeightDefaults.SeasonMm);
        Pair(chain, HeightLayout.Turn, turn, ThreadsTogether, constants: true);
        Pair(chain, HeightLayout.Pull, Times(pull, turn), 0.5, constants: true);
        Pair(chain, HeightLayout.Lost, Times(lost, turn), 0, constants: true);
        One(chain, HeightLayout.Zero, unit.Start("gaugeZeroMm", HeightDefaults.GaugeZeroMm));
        Pair(chain, HeightLayout.Lock, unit.Start("lockShiftMm", HeightDefaults.LockShiftMm), 0, constants: true);
        One(chain, HeightLayout.SinkWet, unit.Start("sinkWetMm", HeightDefaults.SinkWetMm));
        One(chain, HeightLayout.SinkSoft, unit.Start("sinkSoftMm", HeightDefaults.SinkSoftMm));
        One(chain, HeightLayout.SinkGrooved, unit.Start("sinkGroovedMm", HeightDefaults.SinkGroovedMm));
        for (var a = 0; a < HeightLayout.AreaCount; a++) One(chain, HeightLayout.Sink + a, unit.Start("sinkMm", HeightDefaults.SinkMm));
    }

    /// <summary>A share of a turn as mm: the product of two independent numbers, by its mean and spread (Goodman 1960, J. Am. Stat. Assoc. 55:708, from memory).</summary>
    private static Prior Times(Prior share, Prior mm) => new(share.Mean * mm.Mean,
        Math.Sqrt((share.Sd * share.Sd * mm.Mean * mm.Mean) + (mm.Sd * mm.Sd * share.Mean * share.Mean) + (share.Sd * share.Sd * mm.Sd * mm.Sd)));

    private static void One(ChainModel chain, int index, Prior p) => chain.AddGaussian([Term.Constant(index, 1)], p.Mean, p.Sd);

    /// <summary>Left and right of one mean, spread and correlation: written as independent sum and difference.</summary>
    private static void Pair(ChainModel chain, int first, Prior p, double correlation, bool constants)
    {
        Term At(int i, double w) => constants ? Term.Constant(first + i, w) : Term.State(0, first + i, w);
        var root = Math.Sqrt(0.5);
        chain.AddGaussian([At(0, root), At(1, root)], 2 * root * p.Mean, p.Sd * Math.Sqrt(1 + correlation));
        chain.AddGaussian([At(0, root), At(1, -root)], 0, p.Sd * Math.Sqrt(1 - correlation));
    }
}
