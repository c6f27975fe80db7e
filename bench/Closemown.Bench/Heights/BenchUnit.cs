namespace Closemown.Bench.Heights;

/// <summary>A cutting unit on the bench: what its screws, nuts and brackets do to the height, by physics of its own and not the estimator's.</summary>
/// <remarks>
/// A screw plays within its slack and carries its bracket only at either end of it; the bracket swings on an arm; the roller ends follow the brackets.
/// The true bench height is what the same gauge reads, without scatter, with the nuts tight: so its zero counts as part of the gauge.
/// </remarks>
internal sealed class BenchUnit
{
    private const double HandTurns = 0.012;
    private const double NutsMm = 0.015;
    private const double KnockMm = 0.05;
    private readonly double[] screw = [0, 0];            // turns
    private readonly double[] carried;                   // turns at which each bracket stands
    private readonly double[] first;
    private readonly double[] knocked = [0, 0];
    private readonly double[] nuts = [0, 0];
    private readonly int[] turned = [0, 0];
    private int tightened;

    public BenchUnit(ScrewMake make)
    {
        Make = make;
        carried = [-make.SlackTurns[0] * make.SlackAt[0], -make.SlackTurns[1] * make.SlackAt[1]];
        first = [make.FirstMm[0] - Raised(0, carried), make.FirstMm[1] - Raised(1, carried)];
        Tighten();
    }

    public ScrewMake Make { get; }

    /// <summary>Sittings so far.</summary>
    public int Sitting { get; private set; }

    public bool Loose { get; private set; }

    /// <summary>True bench height of a side with the nuts tight, as its gauge reads it, mm.</summary>
    public double TrueMm(int side) => Make.GaugeZeroMm + Standing(side) + Make.LockShiftMm[side] + nuts[side];

    public double WorstOffMm(double wantedMm) => Math.Max(Math.Abs(TrueMm(0) - wantedMm), Math.Abs(TrueMm(1) - wantedMm));

    /// <summary>A screw turned by hand, + up, which loosens the nuts of both sides: the roller has to follow.</summary>
    public void Turn(int side, double turns)
    {
        if (turns == 0) return;
        Loose = true;
        screw[side] += turns + HeightChance.Normal(HandTurns, Make.Seed, HeightChance.Hand, Sitting, side, turned[side]++);
        carried[side] = Math.Clamp(carried[side], screw[side] - Make.SlackTurns[side], screw[side]);
    }

    public void Tighten()
    {
        for (var side = 0; side < 2; side++) nuts[side] = HeightChance.Normal(NutsMm, Make.Seed, HeightChance.Nuts, Sitting, side, tightened);
        tightened++;
        Loose = false;
    }

    /// <summary>Days go by with mowings, and something is knocked on the way.</summary>
    public void DaysLater()
    {
        Sitting++;
        (turned[0], turned[1], tightened) = (0, 0, 0);
        for (var side = 0; side < 2; side++) knocked[side] += HeightChance.Normal(KnockMm, Make.Seed, HeightChance.Knock, Sitting, side);
    }

    /// <summary>The turns that would bring both sides to a height if hands and nuts did not scatter.</summary>
    public (double Left, double Right) TurnsTo(double wantedMm)
    {
        const double Step = 1e-4;
        double[] at = [.. carried];
        for (var i = 0; i < 20; i++)
        {
            double offL = Off(0, at), offR = Off(1, at);
            double[] left = [at[0] + Step, at[1]], right = [at[0], at[1] + Step];
            double a = (offL - Off(0, left)) / Step, b = (offL - Off(0, right)) / Step, c = (offR - Off(1, left)) / Step, d = (offR - Off(1, right)) / Step;
            var det = (a * d) - (b * c);
            at[0] += ((d * offL) - (b * offR)) / det;
            at[1] += ((a * offR) - (c * offL)) / det;
        }
        return (Screw(0), Screw(1));

        double Off(int side, double[] turns) => wantedMm - (Make.GaugeZeroMm + first[side] + knocked[side] + Raised(side, turns) + Make.LockShiftMm[side]);
        double Screw(int side) => at[side] > carried[side] ? at[side] + Make.SlackTurns[side] - screw[side] : at[side] - screw[side];
    }

    private double Standing(int side) => first[side] + knocked[side] + Raised(side, carried);

    private double Raised(int place, double[] turns) => (Make.Share[place][0] * Bracket(0, turns[0])) + (Make.Share[place][1] * Bracket(1, turns[1]));

    private double Bracket(int side, double turns)
    {
        double arm = Make.ArmMm[side], leans = Make.ArmLeans[side];
        var (mm, phase) = Make.RunOut[side];
        var swung = arm * (Math.Sin(leans + (Make.MmPerTurn[side] * turns / arm)) - Math.Sin(leans)) / Math.Cos(leans);
        return swung + (mm * Math.Sin((2 * Math.PI * turns) + phase));
    }
}
