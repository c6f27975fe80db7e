namespace Closemown.Turf;

/// <summary>The height that turf is used to, told from its mowings: the lowest cut of the last weeks. A cut above it is raised for a while, and comes back freely.</summary>
/// <param name="Mm">The height, mm.</param>
/// <param name="DaysSinceRaised">Days since the last mowing where that was above it; null where it was not.</param>
/// <remarks>
/// Common practice, no source; that it lasts <see cref="PlanLimits.UsedDays"/> days, or longer while raised cuts still come down, is assumed. Turf that was raised or left for longer is used to no less than it was
/// cut to meanwhile, but at most to <see cref="Far"/> times the old height: so much comes back by thirds after any neglect, the rest slowly (assumed).
/// </remarks>
public readonly record struct UsedHeight(double Mm, int? DaysSinceRaised)
{
    /// <summary>How far above the old height turf comes back by thirds after it has forgotten that.</summary>
    public const double Far = 1.5;

    private const double SameMm = 0.1;

    /// <summary>Reads it off the mowings.</summary>
    /// <param name="mowings">Day and cut, mm, oldest first.</param>
    /// <param name="standsMm">What the turf stands at now, mm.</param>
    /// <param name="today">The day it is asked for; later mowings are not looked at.</param>
    /// <returns>Null where nothing was mown.</returns>
    public static UsedHeight? Of(IEnumerable<(DateOnly Day, double CutMm)> mowings, double standsMm, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(mowings);
        List<(DateOnly Day, double CutMm)> all = [.. mowings.Where(m => m.Day <= today)];
        if (all.Count == 0) return null;
        var (used, seen, lowest) = (all[0].CutMm, all[0].Day, double.PositiveInfinity);
        foreach (var (day, cut) in all)
        {
            if (cut <= used + SameMm)
            {
                (used, seen, lowest) = (Lowest(day), day, double.PositiveInfinity);
            }
            else if (day.DayNumber - seen.DayNumber > PlanLimits.UsedDays)
            {
                (used, seen, lowest) = (Math.Min(Lowest(day), Far * used), day, cut);
            }
            else if (cut < lowest - SameMm)
            {
                if (double.IsFinite(lowest)) seen = day;
                lowest = cut;
            }
        }
        if (today.DayNumber - seen.DayNumber > PlanLimits.UsedDays)
        {
            // As if it were mown now: a third off, or back to it.
            var now = Math.Max(used, standsMm * (1 - ThirdRule.Share));
            used = Math.Min(Math.Min(now, Lowest(today, now)), Far * used);
        }
        var last = all[^1];
        return new(used, last.CutMm > used + SameMm ? today.DayNumber - last.Day.DayNumber : null);

        double Lowest(DateOnly day, double none = double.PositiveInfinity)
        {
            var low = none;
            foreach (var (d, cut) in all)
            {
                if (d <= day && day.DayNumber - d.DayNumber <= PlanLimits.UsedDays) low = Math.Min(low, cut);
            }
            return low;
        }
    }
}
