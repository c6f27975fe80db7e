namespace Closemown.Turf;

/// <summary>The cut that turf is used to, told from the mowings: a cut far above it is one on the way down after overgrowth, not a new height.</summary>
/// <param name="Mm">The cut, mm.</param>
/// <param name="DaysSinceComingDown">Days since the last mowing on the way down; null where the turf is not on it.</param>
/// <remarks>Assumed, no source: turf is used to another height once it is not cut lower, and so towards the old one, for <see cref="Forgets"/> days.</remarks>
public readonly record struct KeptCut(double Mm, int? DaysSinceComingDown)
{
    /// <summary>Days without a lower cut after which the last cut is the kept one.</summary>
    public const int Forgets = 21;

    private const double SameMm = 0.1;

    /// <summary>The least first cut on the way, in kept cuts: that of turf of which the kept cut would take just <see cref="PlanLimits.MostShare"/>.</summary>
    private const double Far = (1 - PlanLimits.ComingDownShare) / (1 - PlanLimits.MostShare);

    /// <summary>Reads it off the mowings.</summary>
    /// <param name="mowings">Day and cut, mm, oldest first.</param>
    /// <param name="wishMm">Height wished, mm; a cut up to it is a new height. Null: none is.</param>
    /// <param name="today">The day it is asked for.</param>
    /// <returns>Null where nothing was mown.</returns>
    public static KeptCut? Of(IEnumerable<(DateOnly Day, double CutMm)> mowings, double? wishMm, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(mowings);
        double? kept = null;
        (DateOnly Lowered, DateOnly Last, double CutMm, double LowestMm)? way = null;
        foreach (var (day, cut) in mowings)
        {
            if (way is { } before && (day.DayNumber - before.Lowered.DayNumber > Forgets)) (kept, way) = (before.CutMm, null);
            var above = kept is { } k && cut > Math.Max(k, wishMm ?? 0) + SameMm;
            // What grew back meanwhile may ask for a higher cut: the way goes on.
            if (above && way is { } on) way = (cut < on.LowestMm - SameMm ? day : on.Lowered, day, cut, Math.Min(cut, on.LowestMm));
            else if (above && cut >= (Far * kept!.Value) - SameMm) way = (day, day, cut, cut);
            else (kept, way) = (cut, null);
        }
        if (kept is not { } mm) return null;
        if (way is not { } now) return new(mm, null);
        return today.DayNumber - now.Lowered.DayNumber > Forgets ? new(now.CutMm, null) : new(mm, Math.Max(0, today.DayNumber - now.Last.DayNumber));
    }
}
