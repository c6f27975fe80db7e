namespace Closemown.Bench.Heights;

/// <summary>The bench as every strategy finds it: a pair of readings, turns, nuts; the minutes they take are counted alike for all.</summary>
/// <remarks>It shows readings only. Minutes are common practice, no source.</remarks>
internal sealed class HeightWork(BenchUnit unit)
{
    private const double ReadMinutes = 1;
    private const double TurnMinutes = 0.5;
    private const double SideMinutes = 0.3;
    private const double TightenMinutes = 0.5;

    public double Minutes { get; private set; }

    /// <summary>Pairs of readings, left and right, since the sitting began.</summary>
    public int Pairs { get; private set; }

    public void NewSitting() => (Minutes, Pairs) = (0, 0);

    /// <summary>Both sides read with the nuts tight, to a hundredth of a mm.</summary>
    /// <remarks>Noise hangs on the unit, the sitting and how often it was read in it, so that strategies meet the same.</remarks>
    public (double Left, double Right) Read()
    {
        if (unit.Loose) throw new InvalidOperationException("Bug in a strategy: it reads while the nuts are loose.");
        Minutes += ReadMinutes;
        Pairs++;
        return (Side(0), Side(1));

        double Side(int side) =>
            Math.Round(unit.TrueMm(side) + HeightChance.Normal(unit.Make.GaugeSdMm, unit.Make.Seed, HeightChance.Reading, unit.Sitting, side, Pairs), 2);
    }

    public void Turn(double left, double right)
    {
        if (left == 0 && right == 0) return;
        unit.Turn(0, left);
        unit.Turn(1, right);
        Minutes += TurnMinutes + (left != 0 ? SideMinutes : 0) + (right != 0 ? SideMinutes : 0);
    }

    public void Tighten()
    {
        unit.Tighten();
        Minutes += TightenMinutes;
    }
}
