namespace Closemown.Bench.Heights.Strategies;

/// <summary>What ways of practice share: they believe the thread's nominal pitch and stop at the first pair of readings that is right.</summary>
/// <param name="fromBelow">Whether a side that has to come down goes below and comes up.</param>
internal abstract class Practice(bool fromBelow) : IHeightStrategy
{
    private const int MostPairs = 20;
    private const double BelowTurns = 0.25;

    public void Set(HeightWork bench, double wantedMm)
    {
        Begin();
        while (true)
        {
            var (left, right) = bench.Read();
            var off = new[] { wantedMm - left, wantedMm - right };
            // A gauge shows hundredths: what shows as the tolerance is within it.
            if (Right(off[0]) && Right(off[1])) return;
            if (bench.Pairs >= MostPairs) return;
            var side = Side(off);
            Turn(bench, side, off[side] / ScrewMake.NominalMmPerTurn);
            bench.Tighten();
        }
    }

    protected static bool Right(double offMm) => Math.Abs(offMm) <= Setting.TolMm + 1e-9;

    protected virtual void Begin()
    {
    }

    /// <summary>Which side to turn now, given how far each is off by the last readings; at least one is not right.</summary>
    protected abstract int Side(double[] off);

    private void Turn(HeightWork bench, int side, double turns)
    {
        if (turns < 0 && fromBelow)
        {
            One(turns - BelowTurns);
            One(BelowTurns);
        }
        else
        {
            One(turns);
        }

        void One(double t) => bench.Turn(side == 0 ? t : 0, side == 1 ? t : 0);
    }
}
