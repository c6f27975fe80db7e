using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What is known of a unit's steel after all its entries, from the whole chain.</summary>
public sealed class SteelBelief
{
    private const int DrawCount = 2000;
    private const int WarmFrom = 400;
    private const ulong Seed = 20260101;
    private static readonly SolveOptions Options = new() { SweepTolerance = 1e-7 };

    private readonly List<(Reading Way, Posterior Posterior, GaussianState Last)> parts;

    private SteelBelief(UnitTrack track, List<(Reading Way, Posterior Posterior, GaussianState Last)> parts)
    {
        (Track, this.parts) = (track, parts);
        Posterior = parts[0].Posterior;
        Last = GaussianMixture.Of(Parts);
    }

    public UnitTrack Track { get; }

    /// <summary>The whole-record solution under the likeliest reading of the record.</summary>
    public Posterior Posterior { get; }

    /// <summary>Joint belief of the present state and the constants, mixed over the ways to read the record.</summary>
    public GaussianState Last { get; }

    /// <summary>The same, one for each way to read the record (scatter of the person, rival explanations), with its weight.</summary>
    public IReadOnlyList<(GaussianState Belief, double Weight)> Parts => [.. parts.Select(p => (p.Last, p.Way.Weight))];

    /// <summary>How much the readings of the person who reads most scatter, against the starting values.</summary>
    public double ScatterFactor => Track.People.Where(p => p.Readings > 0).MaxBy(p => p.Readings)?.Mean ?? 1;

    /// <summary>Estimates the unit's steel.</summary>
    /// <param name="track">The unit's entries.</param>
    /// <param name="warm">An earlier estimate of the same unit, to start from; null for a cold start.</param>
    public static SteelBelief Of(UnitTrack track, SteelBelief? warm = null)
    {
        ArgumentNullException.ThrowIfNull(track);
        var parts = new List<(Reading, Posterior, GaussianState)>();
        foreach (var way in track.WaysToRead())
        {
            var options = Options with { SpreadByGroup = way.SpreadByPerson, SpreadOf = track.SpreadOf(way) };
            var start = warm?.parts.Find(p => p.Way.Name == way.Name).Posterior ?? warm?.Posterior;
            // A small book is solved from nothing, so that the same entries give the same bits; a large one goes on from the last answer.
            if (track.Chain.StepCount < WarmFrom || (start is not null && start.StepCount > track.Chain.StepCount)) start = null;
            var posterior = Solver.Solve(track.Chain, options, start);
            parts.Add((way, posterior, posterior.LastState()));
        }
        return new(track, parts);
    }

    /// <summary>Clearance at a station (0, 1, 2), bow included, µm.</summary>
    public Estimate ClearanceUm(int station)
    {
        var (m, v) = Stations3.Clearance(Last, Track.Unit, station);
        return Estimate.Normal(m, v);
    }

    /// <summary>Bluntness at a station, µm.</summary>
    public Estimate EdgeUm(int station) => State(Layout.Edge + station);

    public Estimate BowUm => State(Layout.Bow);

    /// <summary>One click of a side (0 left, 1 right), µm.</summary>
    public Estimate ClickUm(int side) => Predict(Term.Constant(Layout.Click, 1), Term.Constant(Layout.ClickSide, side == 0 ? 1 : -1));

    public Estimate OpeningUmPerHour(int side) => Predict(Term.Constant(Layout.OpeningPerHour + side, 1));

    public Estimate OpeningUmPerOuting(int side) => Predict(Term.Constant(Layout.OpeningPerOuting + side, 1));

    public Estimate LostMotionUm(int side) => Predict(Term.Constant(Layout.LostMotion + side, 1));

    /// <summary>Opening a minute of lapping where the pair stands close, with the grit last used.</summary>
    public Estimate LapUmPerMinute => Layout.GritClass(Track.LastGrit) is var c and >= 0
        ? Predict(Term.Constant(Layout.LapOpening, 1), Term.Constant(c, 1))
        : Predict(Term.Constant(Layout.LapOpening, 1));

    public Estimate DullingUmPerHour => Predict(Term.Constant(Layout.Dulling, 1));

    /// <summary>Gap + bluntness at which half the leaves tear here, µm.</summary>
    public Estimate CleanUm
    {
        get
        {
            var e = Predict(Term.Constant(Layout.CleanOffset, 1));
            return Estimate.Normal(Track.Unit.CleanUm.Mean + e.Mean, e.Sd * e.Sd);
        }
    }

    /// <summary>Difference of the ends, left less right, in clicks of their mean size.</summary>
    public Estimate TiltClicks
    {
        get
        {
            var (m, v) = Last.Predict([Term.State(0, Layout.ClearanceLeft, 1), Term.State(0, Layout.ClearanceRight, -1)]);
            var click = Math.Max(1, Last.Mean[Layout.StateSize + Layout.Click]);
            return Estimate.Normal(m / click, v / (click * click));
        }
    }

    /// <summary>The largest clearance + edge of the three stations, µm; from seeded draws, as a largest is not bell-shaped.</summary>
    public Estimate UsableGapUm()
    {
        var draws = SteelDraws.Of(Parts, DrawCount, Seed, extra: 0);
        var largest = new double[DrawCount];
        var unit = Track.Unit;
        Span<double> weight = stackalloc double[6];
        for (var s = 0; s < 3; s++) (weight[2 * s], weight[(2 * s) + 1]) = unit.Weights(s);
        for (var k = 0; k < DrawCount; k++)
        {
            var x = draws[k];
            var best = double.NegativeInfinity;
            for (var s = 0; s < 3; s++)
                best = Math.Max(best, (weight[2 * s] * x[0]) + (weight[(2 * s) + 1] * x[1]) + (s == 1 ? x[Layout.Bow] : 0) + x[Layout.Edge + s]);
            largest[k] = best;
        }
        return Estimate.FromDraws(largest);
    }

    /// <summary>Probabilities of each category of a check, were it done now.</summary>
    public double[] Probabilities(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var (m, v) = Last.Predict(check.Terms);
        var into = new double[check.CutPoints.Length + 1];
        Categories.Probabilities(m, v, check.SdUm * ScatterFactor, check.CutPoints, into);
        return into;
    }

    private Estimate State(int component) => Predict(Term.State(0, component, 1));

    private Estimate Predict(params Term[] terms)
    {
        var (m, v) = Last.Predict(terms);
        return Estimate.Normal(m, v);
    }
}
