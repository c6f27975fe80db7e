using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights;

/// <summary>How the height screws of a unit, its roller brackets and the gauge on it are made. All numbers are invented, near common practice.</summary>
internal sealed record ScrewMake
{
    public const double NominalMmPerTurn = 1.25;
    private const double OddThreadShare = 0.15;           // of units with a finer, and as many with a coarser one

    public required int Seed { get; init; }

    /// <summary>What a turn raises its bracket by thread and lever, mm, at the middle of its way.</summary>
    public required double[] MmPerTurn { get; init; }

    /// <summary>Length of the arm a bracket swings on, mm: a turn raises less the further the arm leans.</summary>
    public required double[] ArmMm { get; init; }

    /// <summary>How far the arm leans at the middle of its way, rad.</summary>
    public required double[] ArmLeans { get; init; }

    /// <summary>How far a thread runs out of true within a turn, mm, and where in the turn.</summary>
    public required (double Mm, double Phase)[] RunOut { get; init; }

    /// <summary>Turns of a screw that move nothing when it changes direction.</summary>
    public required double[] SlackTurns { get; init; }

    /// <summary>Where in its slack each screw stands at first: 0 to 1 of it.</summary>
    public required double[] SlackAt { get; init; }

    /// <summary>What a mm at bracket j raises the reading place i, mm: a stiff roller, and a frame that gives.</summary>
    public required double[][] Share { get; init; }

    /// <summary>What tightening the nuts adds each time, mm.</summary>
    public required double[] LockShiftMm { get; init; }

    /// <summary>Heights at the reading places at first, nuts loose, as an ideal gauge would show them, mm.</summary>
    public required double[] FirstMm { get; init; }

    public required double GaugeSdMm { get; init; }
    public required double GaugeZeroMm { get; init; }

    public static ScrewMake Of(int seed)
    {
        var r = Chance.Stream(seed, HeightChance.Making);
        double N(double mean, double sd) => Chance.Normal(r, mean, sd);
        double U(double low, double high) => HeightChance.Between(r, low, high);
        var kind = r.NextDouble();
        var thread = kind < OddThreadShare ? 1.0 : kind > 1 - OddThreadShare ? 1.5 : N(NominalMmPerTurn, 0.17);
        var first = U(4, 7);
        return new()
        {
            Seed = seed,
            MmPerTurn = Pair(() => Math.Max(0.6, thread + N(0, 0.08))),
            ArmMm = Pair(() => U(40, 90)),
            ArmLeans = Pair(() => U(-0.3, 0.3)),
            RunOut = [(U(0, 0.01), U(0, 2 * Math.PI)), (U(0, 0.01), U(0, 2 * Math.PI))],
            SlackTurns = Pair(() => U(0.03, 0.25)),
            SlackAt = Pair(() => r.NextDouble()),
            Share = Shares(U(235, 320), 230, U(0.05, 0.30), U(0.05, 0.30)),
            LockShiftMm = Pair(() => U(-0.06, 0.06)),
            FirstMm = Pair(() => first + N(0, 0.3)),
            GaugeSdMm = U(0.02, 0.05),
            GaugeZeroMm = N(0, 0.08),
        };

        static double[] Pair(Func<double> of) => [of(), of()];
    }

    /// <summary>By a straight line through both brackets; where a frame gives more than that, the pull asked for.</summary>
    private static double[][] Shares(double bracketMm, double readMm, double pullOnLeft, double pullOnRight)
    {
        double own = (bracketMm + readMm) / (2 * bracketMm), cross = (bracketMm - readMm) / (2 * bracketMm);
        return [[own, Math.Max(cross, pullOnLeft * own)], [Math.Max(cross, pullOnRight * own), own]];
    }
}
