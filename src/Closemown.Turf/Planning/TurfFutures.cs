using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>Futures of an area for its plan: each draws what is not known of the turf, and a way the weather may go.</summary>
public static class TurfFutures
{
    private const ulong Seed = 4711;

    /// <summary>Draws them.</summary>
    /// <param name="belief">What is known of the area.</param>
    /// <param name="at">The time of the first day from which on they run.</param>
    /// <param name="days">Days, 1 or more.</param>
    /// <param name="count">Futures, even.</param>
    /// <param name="waters">How it is watered on; null for not at all.</param>
    /// <param name="until">The days until then; null for those of the record.</param>
    public static PlanTraces Of(
        AreaBelief belief, DateTimeOffset at, int days, int count, WaterHabit? waters = null, TurfDays? until = null)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var (track, passed) = (belief.Track, until ?? belief.Track.Days);
        var state = belief.At(at, passed);
        var first = track.Area.LocalDate(at);
        var draws = Draws.From(state, count, Seed);
        var noise = new SeededNormal(Seed + 1);
        var traces = new PlanTraces(count, days);
        var today = passed.On(first);
        var full = track.Area.FullRateMm;
        var kept = Math.Exp(-1 / AreaDefaults.SpellDays);
        var spellSd = full * AreaDefaults.SpellShareSd * Math.Sqrt(1 - (kept * kept));
        for (var s = 0; s < count; s++)
        {
            var x = draws[s].ToArray();
            double Constant(int j) => x[CanopyLayout.StateSize + j];
            double canopy = Math.Clamp(x[CanopyLayout.Canopy], 0.5, track.Area.CeilingMm), spell = x[CanopyLayout.Spell];
            double rate = Math.Max(0.1 * full, Constant(CanopyLayout.Rate)), feed = Math.Max(0, Constant(CanopyLayout.Feed)), feels = Math.Max(0, Constant(CanopyLayout.Feels));
            double tall = Constant(CanopyLayout.Tall) * (canopy - AreaTrack.RateAtMm);
            double wide = Constant(CanopyLayout.Wide), dry = Constant(CanopyLayout.Dry);
            // Dry soil and the form of growth are misjudged alike for days on end.
            var form = rate * noise.Next();
            var run = passed.RunAfter(first);
            var weather = new WeatherTrace(track.Days, first, s);
            var day = today;
            var dryFor = waters is null ? 0 : passed.DryDays(waters, first);
            for (var d = 0; d < days; d++)
            {
                traces.KeepOff[s, d] = day.KeepOff != KeepOff.None;
                traces.Wilting[s, d] = day.Wilting;
                traces.StressInput[s, d] = Math.Clamp(feels * day.Stress.Greatest, 0, StressSources.Severe);
                var date = first.AddDays(d + 1);
                var sky = weather.On(date);
                var watered = waters is not null && waters.Due(++dryFor, sky.RainMm + day.Weather.RainMm);
                if (watered) dryFor = 0;
                day = run.Next(date, sky, track.Days.Usual.On(date), watered ? new(waters!.Mm, 0, false) : default);
                var luck = Math.Exp((AreaDefaults.DayShareSd * noise.Next()) - (AreaDefaults.DayShareSd * AreaDefaults.DayShareSd / 2));
                var usual = ((rate + spell + (feed * day.NitrogenGm2) + tall) * day.Growth) + (wide * day.Wide) + (dry * day.Dry);
                traces.GrowthMm[s, d] = Math.Max(0, (usual * luck) + (form * day.GrowthSd));
                spell = (kept * spell) + (spellSd * noise.Next());
            }
        }
        return traces;
    }
}
