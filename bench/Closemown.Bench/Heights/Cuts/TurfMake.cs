using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights.Cuts;

/// <summary>How far a unit sinks into a turf, how that comes and goes, and how its standing height is read. All numbers are invented, near common practice.</summary>
internal sealed record TurfMake
{
    private const double FirmShare = 0.4, SoftShare = 0.2;
    private const double WetShare = 0.3;

    public required int Seed { get; init; }

    /// <summary>Sink on dry turf, over the seasons, mm.</summary>
    public required double SinkMm { get; init; }

    public required double WetMm { get; init; }

    /// <summary>How far the season makes it softer or firmer, mm, in a wave over so many mowings.</summary>
    public required (double Mm, double Mowings, double Phase) Season { get; init; }

    /// <summary>What a day's grain scatters, mm.</summary>
    public required double GrainMm { get; init; }

    /// <summary>Scatter of the turf from spot to spot, with the reading, mm.</summary>
    public required double SpotMm { get; init; }

    /// <summary>The step the height is read in, mm: a ruler, or a prism.</summary>
    public required double StepMm { get; init; }

    public static TurfMake Of(int seed)
    {
        var r = Chance.Stream(seed, HeightChance.Turf);
        var kind = r.NextDouble();
        var (mean, sd) = kind < FirmShare ? (0.4, 0.35) : kind < FirmShare + SoftShare ? (0.8, 0.5) : (0.6, 0.45);
        return new()
        {
            Seed = seed,
            SinkMm = Chance.Normal(r, mean, sd),
            WetMm = Chance.Normal(r, 0.15, 0.08),
            Season = (HeightChance.Between(r, 0, 0.15), HeightChance.Between(r, 20, 50), HeightChance.Between(r, 0, 2 * Math.PI)),
            GrainMm = HeightChance.Between(r, 0.07, 0.13),
            SpotMm = HeightChance.Between(r, 0.22, 0.38),
            StepMm = r.NextDouble() < 0.5 ? 0.5 : 0.1,
        };
    }

    public bool Wet(int mowing) => Chance.Uniform(Seed, HeightChance.Turf, mowing, 1) < WetShare;

    /// <summary>Sink at a mowing, its grain left out, mm.</summary>
    public double MeanSinkMm(int mowing) =>
        SinkMm + (Wet(mowing) ? WetMm : 0) + (Season.Mm * Math.Sin((2 * Math.PI * mowing / Season.Mowings) + Season.Phase));

    /// <summary>What the grain of that day adds to the cut, mm.</summary>
    public double Grain(int mowing) => HeightChance.Normal(GrainMm, Seed, HeightChance.Turf, mowing, 2);

    /// <summary>Spots of the standing height after a cut, as read, mm.</summary>
    public double[] Spots(int mowing, double cutMm, int count) =>
        [.. Enumerable.Range(0, count).Select(i => Math.Round(StepMm * Math.Round((cutMm + HeightChance.Normal(SpotMm, Seed, HeightChance.Spots, mowing, i)) / StepMm), 1))];
}
