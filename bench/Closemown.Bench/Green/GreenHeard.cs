namespace Closemown.Bench.Green;

/// <summary>What a strategy said in a season, held to the green's own truth.</summary>
internal sealed class GreenHeard
{
    /// <summary>Days in which a strategy is still learning the green.</summary>
    public const int EarlyDays = 28;

    private const int WeekDays = 7, TenWeeks = 70;

    /// <summary>Standing height before it was read, in the early days and in the rest.</summary>
    public SaidCount EarlyHeight { get; } = new();

    /// <inheritdoc cref="EarlyHeight"/>
    public SaidCount LaterHeight { get; } = new();

    /// <summary>Growth of the coming week where nobody mows.</summary>
    public SaidCount WeekGrowth { get; } = new();

    /// <summary>Standing height at its end.</summary>
    public SaidCount InAWeek { get; } = new();

    /// <summary>
    /// How far the growth rate believed after four and after ten weeks lies from the green's own, as a share; null where nothing was said.
    /// </summary>
    public double? RateOff4 { get; private set; }

    /// <inheritdoc cref="RateOff4"/>
    public double? RateOff10 { get; private set; }

    /// <summary>What the first plan with a date promised after the lower wish was told; null where there was none.</summary>
    public WishPromise? Promise { get; private set; }

    /// <param name="says">The strategy, which has decided.</param>
    /// <param name="green">The green this morning.</param>
    /// <param name="day">Of the season.</param>
    /// <param name="wishTold">Whether a lower wish was told, today or before.</param>
    public void Hear(ISays says, IGreen green, int day, bool wishTold)
    {
        if (says.Said is { } said) (day < EarlyDays ? EarlyHeight : LaterHeight).Add(said, green.CanopyMm);
        if (says.WeekGrowth is { } growth) WeekGrowth.Add(growth, Unmown(green, day) - green.CanopyMm);
        if (says.InAWeek is { } stands) InAWeek.Add(stands, Unmown(green, day));
        if (wishTold) Promise ??= says.Promise;
        if (says.RateMm is not { } rate) return;
        var off = Math.Abs(rate - green.Make.RateMm) / green.Make.RateMm;
        if (day <= EarlyDays) RateOff4 = off;
        if (day <= TenWeeks) RateOff10 = off;
    }

    /// <summary>What it would stand at a week on, mm.</summary>
    private static double Unmown(IGreen green, int day)
    {
        var copy = green.Copy();
        for (var a = 0; a < WeekDays; a++) copy.Pass(day + a);
        return copy.CanopyMm;
    }
}
