using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>What is known of an area after all its entries, from the whole chain, and what is expected from there.</summary>
public sealed class AreaBelief
{
    private static readonly double[] LevelCuts = [0.5, 1.5, 2.5];
    private const double LeastMm = 0.5;
    private readonly GaussianState last;

    private AreaBelief(AreaTrack track, Posterior posterior)
    {
        (Track, Posterior, last) = (track, posterior, posterior.LastState());
    }

    public AreaTrack Track { get; }

    /// <summary>The whole-record solution.</summary>
    public Posterior Posterior { get; }

    /// <summary>Estimates an area.</summary>
    public static AreaBelief Of(AreaTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return new(track, Solver.Solve(track.Chain, new SolveOptions { SweepTolerance = 1e-8 }));
    }

    /// <summary>Joint belief at a time, if nobody mows between the entry before it and then; weather not yet recorded counts as forecast or usual.</summary>
    /// <param name="at">The time; before the first entry it is what is believed there.</param>
    /// <param name="days">The days that pass until then; null for those of the record.</param>
    public GaussianState At(DateTimeOffset at, TurfDays? days = null)
    {
        var (from, state) = Before(at);
        var pass = new ForwardPass(state);
        Track.MoveOn(pass, from, at, days ?? Track.Days);
        return pass.Current;
    }

    /// <summary>What the turf stands at at a time, mm, if nobody mows between the entry before it and then: turf that nobody mows does not shrink, and stands no higher than an unmown sward.</summary>
    /// <param name="at">The time.</param>
    /// <param name="moved">The belief at that time, from <see cref="At"/>.</param>
    public (double Mean, double Sd) StandsMm(DateTimeOffset at, GaussianState moved)
    {
        var (mean, sd) = CanopyMm(moved);
        var (before, _) = CanopyMm(Before(at).State);
        var ceiling = Track.Area.CeilingMm;
        return (Math.Max(LeastMm, Math.Clamp(mean, before, Math.Max(before, ceiling))), Math.Min(sd, AreaDefaults.WidestShare * ceiling));
    }

    /// <summary>The last step not after a time.</summary>
    private (DateTimeOffset From, GaussianState State) Before(DateTimeOffset at)
    {
        var moments = Track.Moments;
        var step = moments.Count - 1;
        while (step > 0 && moments[step].At > at) step--;
        return step < 0 || step == moments.Count - 1 ? (Track.Last ?? at, last) : (moments[step].At, Posterior.StateAt(step));
    }

    /// <summary>What the turf stands at, mm.</summary>
    public static (double Mean, double Sd) CanopyMm(GaussianState at) => State(at, CanopyLayout.Canopy);

    /// <summary>Stress on its scale of 0 to 3.</summary>
    public static (double Mean, double Sd) Stress(GaussianState at) => State(at, CanopyLayout.Stress);

    /// <summary>Probability of none, slight, marked and severe stress.</summary>
    public static double[] StressLevels(GaussianState at)
    {
        var (mean, sd) = Stress(at);
        var p = new double[LevelCuts.Length + 1];
        Categories.Probabilities(mean, sd * sd, 1e-6, LevelCuts, p);
        return p;
    }

    /// <summary>Growth in height on a day, mm: what this area's record and the day's weather say, one day's own luck apart.</summary>
    public static (double Mean, double Sd) GrowthMm(GaussianState at, TurfDay day)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(day);
        var (mean, variance) = at.Predict(GrowthTerms(at, day));
        var unread = day.GrowthSd * Math.Max(0, at.Mean[CanopyLayout.StateSize + CanopyLayout.Rate]);
        return (Math.Max(0, mean), Math.Sqrt(variance + (unread * unread)));
    }

    /// <summary>Growth at its best, mm a day.</summary>
    public (double Mean, double Sd) FullRateMm => Constant(CanopyLayout.Rate);

    /// <summary>What a g/m² of nitrogen at work adds to it, mm a day.</summary>
    public (double Mean, double Sd) FeedMm => Constant(CanopyLayout.Feed);

    /// <summary>Leaf taken off per volume of clippings, mm per L/m².</summary>
    public (double Mean, double Sd) ClipMmPerLM2 => Constant(CanopyLayout.Clippings);

    /// <summary>What is cut more than was set or told, mm.</summary>
    public (double Mean, double Sd) CutOffsetMm => State(last, CanopyLayout.Offset);

    /// <summary>The canopy at each step of the chain with its spread, for drawing.</summary>
    public IEnumerable<(CanopyMoment Moment, double MeanMm, double SdMm)> Past()
    {
        for (var t = 0; t < Track.Moments.Count; t++)
            yield return (Track.Moments[t], Posterior.StateMean(t, CanopyLayout.Canopy), Math.Sqrt(Math.Max(0, Posterior.StateVariance(t, CanopyLayout.Canopy))));
    }

    internal static Term[] GrowthTerms(GaussianState at, TurfDay day) =>
    [
        Term.State(0, CanopyLayout.Spell, day.Growth), Term.Constant(CanopyLayout.Rate, day.Growth), Term.Constant(CanopyLayout.Feed, day.Growth * day.NitrogenGm2),
        Term.Constant(CanopyLayout.Wide, day.Wide), Term.Constant(CanopyLayout.Dry, day.Dry),
        Term.Constant(CanopyLayout.Tall, day.Growth * (at.Mean[CanopyLayout.Canopy] - AreaTrack.RateAtMm)),
    ];

    private (double Mean, double Sd) Constant(int j) => (last.Mean[CanopyLayout.StateSize + j], Math.Sqrt(last.Covariance[(CanopyLayout.StateSize + j) * (last.Size + 1)]));

    private static (double Mean, double Sd) State(GaussianState at, int i) => (at.Mean[i], Math.Sqrt(Math.Max(0, at.Covariance[i * (at.Size + 1)])));
}
