namespace Closemown.Bench.Workshop;

/// <summary>How a unit of the workshop is made, and how it stands when it comes in. Lengths in µm. All numbers are invented.</summary>
internal sealed record UnitMake
{
    public const int Blades = 10;
    private const double OwnShare = 0.25;
    private const double PressingShare = 0.08;

    public required int Seed { get; init; }

    /// <summary>The person's own, ground and just put together; else second-hand and unknown.</summary>
    public required bool Own { get; init; }

    public required double[] Ends { get; init; }
    public required double[] Edges { get; init; }
    public required double Bow { get; init; }

    /// <summary>Whether it wears by the other law: the rates below are then what it is near to, not what it does.</summary>
    public required bool OtherWear { get; init; }

    /// <summary>How far each blade stands out beyond the mean of all, by station.</summary>
    public required double[][] StandsOut { get; init; }

    public required double[] ClickUm { get; init; }

    /// <summary>Opening an hour of each side while nothing presses.</summary>
    public required double[] OpeningUmPerHour { get; init; }

    public required double[] OpeningUmPerOuting { get; init; }
    public required double[] DeadBandUm { get; init; }
    public required double[] SlackUm { get; init; }
    public required double DullingUmPerHour { get; init; }

    /// <summary>Opening a minute of lapping where the pair stands close.</summary>
    public required double LapUmPerMinute { get; init; }

    public required double HalfLifeMinutes { get; init; }
    public required double StripUm { get; init; }
    public required double PaperShiftUm { get; init; }

    /// <summary>Gap and bluntness together at which this turf tears half its leaves.</summary>
    public required double CleanUm { get; init; }

    /// <param name="seed">The unit.</param>
    /// <param name="c">What it is lived under.</param>
    /// <param name="asOwn">Whether it is the person's own; null leaves it to chance.</param>
    public static UnitMake Of(int seed, Circumstances c, bool? asOwn = null)
    {
        var r = Chance.Stream(seed, Chance.Of.Making);
        double N(double mean, double sd) => Chance.Normal(r, mean, sd);
        var chance = r.NextDouble() < OwnShare;
        var own = asOwn ?? chance;
        var presses = r.NextDouble() < PressingShare;
        var open = own ? N(40, 20) : presses ? -20 + (15 * r.NextDouble()) : 10 + (100 * r.NextDouble());
        var tilt = N(0, own ? 10 : presses ? 6 : 15);
        var rate = N(0, 0.35);
        var click = Math.Max(10, N(18.5, 2));
        var runOut = Math.Max(1, N(4, 1.5));
        var deadBand = Pair(_ => Math.Max(0, N(5, 3)));
        return new()
        {
            Seed = seed,
            Own = own,
            OtherWear = c.OtherWear,
            Ends = [open + tilt, open - tilt],
            Edges = [.. Enumerable.Range(0, 3).Select(_ => own ? 2 + r.NextDouble() : Math.Max(2, N(14, 6)))],
            Bow = N(0, own ? 4 : 8),
            StandsOut = StandOut(r, runOut),
            ClickUm = Pair(_ => click * (1 + N(0, 0.02))),
            OpeningUmPerHour = Pair(_ => Math.Max(0.3, 3 * Math.Exp(rate + N(0, 0.35)))),
            OpeningUmPerOuting = Pair(_ => Math.Max(0, N(0.4, 0.3))),
            DeadBandUm = deadBand,
            SlackUm = Pair(side => r.NextDouble() * deadBand[side]),
            DullingUmPerHour = Math.Max(0.3, N(1.2, 0.4)),
            LapUmPerMinute = Math.Max(1, N(5, 1.5)),
            HalfLifeMinutes = 1 + (2 * r.NextDouble()),
            StripUm = N(80, 4) + c.StripOffUm,
            PaperShiftUm = N(0, 5),
            CleanUm = 40 + (c.CleanSdUm * N(0, 1)),
        };

        static double[] Pair(Func<int, double> of) => [of(0), of(1)];
    }

    /// <summary>Each blade has a stand-out of its own at either end; in the middle it is the mean of them.</summary>
    private static double[][] StandOut(Random r, double sd)
    {
        var left = new double[Blades];
        var right = new double[Blades];
        for (var b = 0; b < Blades; b++)
        {
            var common = Chance.Normal(r, 0, 0.8 * sd);
            (left[b], right[b]) = (common + Chance.Normal(r, 0, 0.6 * sd), common + Chance.Normal(r, 0, 0.6 * sd));
        }
        return [Centred(left), Centred([.. left.Zip(right, (a, b) => (a + b) / 2)]), Centred(right)];

        static double[] Centred(double[] e)
        {
            var mean = e.Average();
            return [.. e.Select(x => x - mean)];
        }
    }
}
