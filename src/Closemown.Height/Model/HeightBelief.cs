using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>A part of what is not known of the height cut.</summary>
/// <param name="What">What it is: <c>bench</c>, <c>gauge zero</c>, <c>sink</c>, <c>wetness</c>, <c>softness</c>, <c>season</c>, <c>roller</c> or <c>grain</c>.</param>
/// <param name="Mm">What it adds to the cut on average, mm.</param>
/// <param name="Share">Its share of the variance of the cut (covariances halved); below zero where it cancels another.</param>
public sealed record CutDriver(string What, double Mm, double Share);

/// <summary>What is known of a unit's height after all its entries, from the whole chain.</summary>
/// <remarks>Bench heights are as the unit's gauge reads them with the nuts tight. How far the gauge itself is off shows only in the cut, together with the sink.</remarks>
public sealed class HeightBelief
{
    private static readonly SolveOptions Options = new() { SweepTolerance = 1e-8 };

    private HeightBelief(HeightTrack track, List<(Posterior Posterior, GaussianState Last, double Weight)> parts)
    {
        Track = track;
        Posterior = parts[0].Posterior;
        Parts = [.. parts.Select(p => (p.Last, p.Weight))];
        Last = GaussianMixture.Of(Parts);
        ReadThisSitting = track.ReadThisSitting;
    }

    /// <summary>The same unit later, the sitting over: what may have knocked it since is counted.</summary>
    private HeightBelief(HeightBelief before)
    {
        (Track, Posterior) = (before.Track, before.Posterior);
        Parts = [.. before.Parts.Select(p => (Knocked(p.Belief), p.Weight))];
        Last = GaussianMixture.Of(Parts);

        static GaussianState Knocked(GaussianState g)
        {
            var pass = new ForwardPass(g);
            HeightSteps.Knock().MoveForward(pass);
            return pass.Current;
        }
    }

    public HeightTrack Track { get; }

    /// <summary>The whole-record solution under the likeliest scatter.</summary>
    public Posterior Posterior { get; }

    /// <summary>Joint belief of the present state and the constants, mixed over the scatters still open.</summary>
    public GaussianState Last { get; }

    /// <summary>The same, one for each scatter, with its weight.</summary>
    public IReadOnlyList<(GaussianState Belief, double Weight)> Parts { get; }

    /// <summary>Whether both sides were read in the sitting at the bench that is on.</summary>
    public bool ReadThisSitting { get; }

    /// <summary>What is known of it at a time, nothing entered since: time passes for questions too. Within the sitting it is what it was.</summary>
    /// <param name="now">When it is asked; the last entry's time or later.</param>
    public HeightBelief At(DateTimeOffset now) => Track.SittingOver(now) ? new(this) : this;

    /// <summary>Estimates the unit's height.</summary>
    public static HeightBelief Of(HeightTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        var parts = new List<(Posterior, GaussianState, double)>();
        foreach (var (weight, spread) in track.WaysToRead())
        {
            var posterior = Solver.Solve(track.Chain, Options with { SpreadOf = spread });
            parts.Add((posterior, posterior.LastState(), weight));
        }
        return new(track, parts);
    }

    /// <summary>Bench height at a side (0 left, 1 right) as the gauge reads it locked, mm.</summary>
    public HeightEstimate BenchMm(int side) => Predict(Term.State(0, side, 1));

    /// <summary>The same less what the gauge reads too much, mm: what a perfect gauge would show.</summary>
    public HeightEstimate TrueBenchMm(int side) => Predict(Term.State(0, side, 1), Term.Constant(HeightLayout.Zero, -1));

    /// <summary>Left less right, mm.</summary>
    public HeightEstimate TiltMm => Predict(Term.State(0, HeightLayout.Left, 1), Term.State(0, HeightLayout.Right, -1));

    /// <summary>What a turn of a screw raises its own side, mm.</summary>
    public HeightEstimate ScrewMmPerTurn(int side) => Predict(Term.Constant(HeightLayout.Turn + side, 1));

    /// <summary>What a turn of the other screw raises this side, as a share of a turn's own move there.</summary>
    public HeightEstimate PullShare(int side) => Ratio(HeightLayout.Pull + side, HeightLayout.Turn + (1 - side));

    /// <summary>Lost motion of a screw on reversal, turns.</summary>
    public HeightEstimate LostTurns(int side) => Ratio(HeightLayout.Lost + side, HeightLayout.Turn + side);

    /// <summary>Lost motion of a screw on reversal, mm.</summary>
    public HeightEstimate LostMm(int side) => Predict(Term.Constant(HeightLayout.Lost + side, 1));

    /// <summary>Scatter of one gauge reading by the person who reads most, mm.</summary>
    public HeightEstimate GaugeSdMm => Track.People.Where(p => p.Readings > 0).MaxBy(p => p.Readings)?.Estimate ?? new(Track.Unit.GaugeSdMm, 0.6 * Track.Unit.GaugeSdMm);

    /// <summary>What tightening the nuts adds at a side, mm; null unless both locked and unlocked readings exist, as one kind alone cannot tell.</summary>
    public HeightEstimate? LockShiftMm(int side) => Track.LockShiftLearnt ? Predict(Term.Constant(HeightLayout.Lock + side, 1)) : null;

    /// <summary>Bench height as read less height cut, mm: either sign. The gauge's zero is in it: readings on turf tell only both together.</summary>
    /// <param name="area">The area; null for the one last mown.</param>
    /// <param name="wet">Whether it is wet.</param>
    /// <param name="soft">Whether it is soft; null as last looked.</param>
    public HeightEstimate SinkMm(string? area = null, bool wet = false, bool? soft = null) => Predict(Track.SinkOn(area, wet, soft));

    /// <summary>Height expected to be cut at the next mowing as the unit stands, mm, that day's grain included.</summary>
    public HeightEstimate CutMm(string? area = null, bool wet = false, bool? soft = null) =>
        WithGrain(Predict(NoGrain(Track.CutOn(area, wet, soft))));

    /// <summary>The same under the place where a side (0 left, 1 right) is read, mm.</summary>
    public HeightEstimate CutSideMm(int side, string? area = null, bool wet = false, bool? soft = null) =>
        WithGrain(Predict([Term.State(0, side, 1), .. CutTerms.Less(Track.SinkOn(area, wet, soft))]));

    /// <summary>Height expected to be cut with the gauge at a bench height, mm.</summary>
    public HeightEstimate CutAtMm(double benchMm, string? area = null, bool wet = false, bool? soft = null)
    {
        var sink = SinkMm(area, wet, soft);
        return WithGrain(new(benchMm - sink.Mean, sink.Sd));
    }

    /// <summary>The bench height to set for a wanted cut, as the gauge reads it, mm; its spread is how far the cut may then be off, grain apart.</summary>
    public HeightEstimate SetBenchMm(double cutMm, string? area = null, bool wet = false, bool? soft = null)
    {
        var sink = SinkMm(area, wet, soft);
        return new(cutMm + sink.Mean, sink.Sd);
    }

    /// <summary>Room between the bedknife's lip and the turf at the lower side, mm; null where the lip was not told. Under 0.3 it drags.</summary>
    public HeightEstimate? KnifeClearMm(string? area = null, bool wet = false)
    {
        if (Track.Unit.LipMm is not { } lip) return null;
        var side = BenchMm(0).Mean <= BenchMm(1).Mean ? HeightLayout.Left : HeightLayout.Right;
        var room = Predict([Term.State(0, side, 1), .. CutTerms.Less(Track.SinkOn(area, wet, null))]);
        return room with { Mean = room.Mean - lip };
    }

    /// <summary>The lowest bench height, as the gauge reads it, at which the knife does not drag on an area, mm; null where the lip was not told.</summary>
    public HeightEstimate? LowestBenchMm(string? area = null, bool wet = false)
    {
        if (Track.Unit.LipMm is not { } lip) return null;
        var sink = SinkMm(area, wet);
        return new(KnifeClear.LowestBenchMm(lip, sink.Mean), sink.Sd);
    }

    /// <summary>What the height cut rests on, the most uncertain first.</summary>
    public IReadOnlyList<CutDriver> CutDrivers(string? area = null, bool wet = false, bool? soft = null)
    {
        var terms = NoGrain(Track.CutOn(area, wet, soft));
        var grain = HeightDefaults.GrainMm * HeightDefaults.GrainMm;
        var total = Last.Predict(terms).Variance + grain;
        var parts = terms.GroupBy(Name).Select(g => Driver(g.Key, [.. g])).Append(new("grain", 0, grain / total));
        return [.. parts.OrderByDescending(d => d.Share)];

        CutDriver Driver(string what, Term[] own)
        {
            // Covariance with the whole, by the variance of the sum and the difference.
            var (mean, variance) = Last.Predict(own);
            var rest = terms.Except(own).ToArray();
            var covariance = variance + ((total - grain - variance - Last.Predict(rest).Variance) / 2);
            return new(what, mean, covariance / total);
        }

        static string Name(Term t) => !t.IsConstant ? t.Index == HeightLayout.Season ? "season" : "bench" : t.Index switch
        {
            HeightLayout.Zero => "gauge zero",
            HeightLayout.SinkWet => "wetness",
            HeightLayout.SinkSoft => "softness",
            HeightLayout.SinkGrooved => "roller",
            _ => "sink",
        };
    }

    /// <summary>The probability that both sides stand within a tolerance of what is wanted, as the gauge reads them.</summary>
    public double WithinTolerance(BenchPair wanted, double tolMm) => Parts.Sum(p => p.Weight * BoxProbability.Of(p.Belief, wanted, tolMm));

    private static Term[] NoGrain(Term[] terms) => [.. terms.Where(t => t.IsConstant || t.Index != HeightLayout.Grain)];

    private static HeightEstimate WithGrain(HeightEstimate e) => new(e.Mean, Math.Sqrt((e.Sd * e.Sd) + (HeightDefaults.GrainMm * HeightDefaults.GrainMm)));

    private HeightEstimate Predict(params Term[] terms) => HeightEstimate.Of(Last.Predict(terms));

    /// <summary>A ratio of two constants, to first order in their spreads.</summary>
    private HeightEstimate Ratio(int above, int below)
    {
        double a = Last.Mean[HeightLayout.StateSize + above], b = Last.Mean[HeightLayout.StateSize + below];
        return HeightEstimate.Of((a / b, Last.Predict([Term.Constant(above, 1 / b), Term.Constant(below, -a / (b * b))]).Variance));
    }
}
