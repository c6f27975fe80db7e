using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>A small running estimate of canopy, growth rate and what the mower leaves, for the strategies that must guess.</summary>
/// <remarks>Linear in three unknowns: canopy mm, growth at its best mm a day, cut more than set mm. Warmth by the published growth potential, water by a plain bucket.</remarks>
internal sealed class GreenFilter
{
    private const double BucketMm = 40, LuckShare = 0.24, RateWalk = 0.015, StressGain = 0.4, CutSd = 0.12, SpotsSd = 0.16, LatitudeDeg = 47;
    private const double ScalpOverMm = 0.15, MostShare = 0.66, FeelsGain = 0.15;
    private double feels = 1;
    private double share0 = AreaDefaults.BaseShare;
    private readonly double[] x = [6, 0.95, 0];
    private readonly double[,] p = { { 1, 0, 0 }, { 0, 0.2, 0 }, { 0, 0, 0.06 } };

    public GreenFilter(double startMm) => x[0] = startMm;

    /// <summary>Canopy above what the mower leaves at a setting of the same number, mm: the rules of share hold between the two.</summary>
    public double CanopyMm => x[0] - x[2];

    /// <summary>The setting that takes a third of what stands, mm.</summary>
    public double ThirdMm => (x[0] * 2 / 3) - x[2];

    public double CanopySd => Math.Sqrt(p[0, 0] + p[2, 2] - (2 * p[0, 2]));

    public double RateMm => Math.Max(0.1, x[1]);

    public double RateSd => Math.Sqrt(p[1, 1]);

    public double Stress { get; private set; }

    public double BaseMm { get; private set; } = -1;

    /// <summary>How far the base may lie off, mm; a scalp tells where it is.</summary>
    public double BaseSd { get; private set; } = 0.5;

    public GreenRun0 Run { get; private set; } = new(10, 0.8 * BucketMm);

    /// <summary>The standing height as it was believed before today's reading.</summary>
    public (double Mean, double Sd) Foreseen { get; private set; }

    /// <summary>The base as a share of the height kept.</summary>
    public double BaseShare => share0;

    /// <summary>How much of what the weather asks this turf feels.</summary>
    public double Feels => feels;

    /// <summary>Takes in a morning: yesterday's mowing and weather, then what was read.</summary>
    public void Morning(GreenDay d)
    {
        if (BaseMm < 0) BaseMm = share0 * x[0];
        if (d.Number > 0)
        {
            if (d.MownYesterday is { } m)
            {
                // What was scalped stood with its base above the cut.
                if (d.ScalpSeen && BaseMm < m.SetMm + ScalpOverMm)
                {
                    share0 = Math.Min(MostShare, share0 * Math.Pow((m.SetMm + ScalpOverMm) / BaseMm, 0.3));
                    (BaseMm, BaseSd) = (m.SetMm + ScalpOverMm, 0.4);
                }
                Cut(m.SetMm);
                if (m.AfterMm is { } after) Read(after);
            }
            var (run, share, input, _) = Run.Next(d.Yesterday, d.Date.AddDays(-1).DayOfYear, d.WateredMm);
            Run = run;
            Grow(share);
            Stress = Math.Clamp(Stress + ((Math.Min(3, feels * input) - Stress) / AreaDefaults.StressDays), 0, 3);
            BaseMm += ((share0 * CanopyMm) - BaseMm) / 14;
        }
        Foreseen = (x[0], Math.Sqrt(p[0, 0]));
        if (d.CanopyMm is { } mm) Read(mm);
        if (d.StressSeen is { } seen)
        {
            // Looks teach how much of what the weather asks this turf feels.
            feels = Math.Clamp(feels + (FeelsGain * (seen - Stress) * Math.Min(1, Stress)), 0.2, 1.6);
            Stress += StressGain * (seen - Stress);
        }
    }

    private void Cut(double set)
    {
        x[0] = set + x[2];
        (p[0, 0], p[0, 1], p[0, 2]) = (p[2, 2] + (CutSd * CutSd), p[1, 2], p[2, 2]);
        (p[1, 0], p[2, 0]) = (p[0, 1], p[0, 2]);
    }

    private void Grow(double share)
    {
        x[0] += share * Math.Max(0, x[1]);
        var luck = LuckShare * share * x[1];
        p[0, 0] += (2 * share * p[0, 1]) + (share * share * p[1, 1]) + (luck * luck);
        p[0, 1] += share * p[1, 1];
        p[0, 2] += share * p[1, 2];
        (p[1, 0], p[2, 0]) = (p[0, 1], p[0, 2]);
        p[1, 1] += RateWalk * RateWalk;
    }

    private void Read(double mm)
    {
        var s = p[0, 0] + (SpotsSd * SpotsSd);
        double[] gain = [p[0, 0] / s, p[1, 0] / s, p[2, 0] / s];
        double[] row = [p[0, 0], p[0, 1], p[0, 2]];
        var off = mm - x[0];
        for (var i = 0; i < 3; i++)
        {
            x[i] += gain[i] * off;
            for (var j = 0; j < 3; j++) p[i, j] -= gain[i] * row[j];
        }
    }

    /// <summary>Warmth and water of the filter's own turf, day by day.</summary>
    internal readonly record struct GreenRun0(double WarmthC, double WaterMm)
    {
        /// <summary>A day on: growth as a share of its best, where it draws stress, whether it keeps everyone off or wilts.</summary>
        public (GreenRun0 After, double Share, double StressInput, bool Wilts) Next(SkyDay s, int dayOfYear, double wateredMm)
        {
            var warmth = WarmthC + ((s.MeanC - WarmthC) / 5);
            var free = Math.Min(1, WaterMm / BucketMm / 0.45);
            var low = Math.Clamp(s.TMinC, -40, 40);
            var asks = Hargreaves.Mm(low, Math.Clamp(s.TMaxC, low, 45), LatitudeDeg, dayOfYear).Value;
            var water = Math.Clamp(WaterMm + s.RainMm + wateredMm - (0.9 * asks * free), 0, BucketMm);
            var potential = GrowthPotential.Of(Math.Clamp((0.6 * warmth) + (0.4 * s.MeanC), -40, 45), TurfGrass.Cool);
            var cold = potential < 0.25 ? Math.Clamp((-0.5 - s.TMinC) / 4, 0, 3) : 0;
            var input = Math.Max(cold, Math.Max(Math.Clamp((s.TMaxC - 29) / 3.5, 0, 3), Math.Clamp((1 - free) * 2.5, 0, 3)));
            return (new(warmth, water), potential * free, input, free < 0.35);
        }
    }
}
