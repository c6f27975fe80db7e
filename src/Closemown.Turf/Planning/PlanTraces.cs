using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>Ways the weeks ahead may go on an area: each draws what is not known of the turf and a way the weather may go.</summary>
public sealed class PlanTraces
{
    private const ulong Seed = 4711;

    private PlanTraces(int count, int days)
    {
        (Count, Days) = (count, days);
        (GrowthMm, Stress) = (new double[count * days], new double[count * days]);
        (Off, Wilting) = (new bool[count * days], new bool[count * days]);
        CanopyMm = new double[count];
    }

    public int Count { get; }

    public int Days { get; }

    /// <inheritdoc cref="PlanProblem.GrowthMm"/>
    public double[] GrowthMm { get; }

    /// <inheritdoc cref="PlanProblem.Stress"/>
    public double[] Stress { get; }

    /// <inheritdoc cref="PlanProblem.Off"/>
    public bool[] Off { get; }

    /// <inheritdoc cref="PlanProblem.Wilting"/>
    public bool[] Wilting { get; }

    /// <inheritdoc cref="PlanProblem.CanopyMm"/>
    public double[] CanopyMm { get; }

    /// <summary>Draws the traces.</summary>
    /// <param name="belief">What is known of the area.</param>
    /// <param name="at">The time of the first day from which on they run.</param>
    /// <param name="days">Days, 1 to 90.</param>
    /// <param name="count">Traces, even.</param>
    public static PlanTraces Of(AreaBelief belief, DateTimeOffset at, int days, int count)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var (track, state) = (belief.Track, belief.At(at));
        var first = track.Area.LocalDate(at);
        var draws = Draws.From(state, count, Seed);
        var noise = new SeededNormal(Seed + 1);
        var traces = new PlanTraces(count, days);
        var today = track.Days.On(first);
        var spellKept = Math.Exp(-1 / AreaDefaults.SpellDays);
        var spellSd = track.Area.FullRateMm * AreaDefaults.SpellShareSd * Math.Sqrt(1 - (spellKept * spellKept));
        var stays = Math.Exp(-1 / AreaDefaults.StressDays);
        var straySd = AreaDefaults.StressStraySd * Math.Sqrt(1 - (stays * stays));
        double rateLow = 0.1 * track.Area.FullRateMm;
        for (var s = 0; s < count; s++)
        {
            var x = draws[s];
            double canopy = Math.Max(0.5, x[CanopyLayout.Canopy]), stress = Math.Clamp(x[CanopyLayout.Stress], 0, StressSources.Severe), spell = x[CanopyLayout.Spell];
            double rate = Math.Max(rateLow, x[CanopyLayout.StateSize + CanopyLayout.Rate]), feed = Math.Max(0, x[CanopyLayout.StateSize + CanopyLayout.Feed]);
            double tall = x[CanopyLayout.StateSize + CanopyLayout.Tall], feels = Math.Max(0, x[CanopyLayout.StateSize + CanopyLayout.Feels]);
            traces.CanopyMm[s] = canopy;
            var run = track.Days.RunAfter(first);
            var weather = new WeatherTrace(track.Days, first, s);
            for (var d = 0; d < days; d++)
            {
                var i = (s * days) + d;
                var day = today;
                if (d > 0)
                {
                    var date = first.AddDays(d);
                    day = run.Next(date, weather.On(date), track.Days.Usual.On(date), default);
                    var luck = Math.Exp((AreaDefaults.DayShareSd * noise.Next()) - (AreaDefaults.DayShareSd * AreaDefaults.DayShareSd / 2));
                    traces.GrowthMm[i] = Math.Max(0, (rate + spell + (feed * day.NitrogenGm2) + (tall * (canopy - AreaTrack.RateAtMm))) * day.Growth * luck);
                    spell = (spellKept * spell) + (spellSd * noise.Next());
                    stress = Math.Clamp((stays * stress) + (feels * (1 - stays) * day.Stress.Greatest) + (straySd * noise.Next()), 0, StressSources.Severe);
                }
                traces.Off[i] = day.KeepOff != KeepOff.None;
                traces.Wilting[i] = day.Wilting;
                traces.Stress[i] = stress;
            }
        }
        return traces;
    }
}
