namespace Closemown.Turf;

/// <summary>Why a day is, or is not, a day to mow.</summary>
public enum DayReason
{
    /// <summary>Mown to keep the height.</summary>
    Due,

    /// <summary>Mown on the way down to the wished height.</summary>
    StepDown,

    /// <summary>Mown higher than set: too much would come off, or the turf is stressed.</summary>
    Raise,

    /// <summary>A light trim under stress.</summary>
    Trim,

    /// <summary>Frost, frozen or flooded ground is likely.</summary>
    KeepOff,

    /// <summary>Not one of the person's days, or too few minutes.</summary>
    NotFree,

    /// <summary>Too little has grown.</summary>
    LittleGrown,

    /// <summary>The turf is stressed or wilts.</summary>
    Stressed,

    /// <summary>Another day costs less.</summary>
    Later,
}

/// <summary>A number as a plan knows it: over its traces.</summary>
public readonly record struct PlanNumber(double Mean, double Sd, double P05, double P50, double P95)
{
    internal static PlanNumber Of(Span<double> values)
    {
        values.Sort();
        double sum = 0, square = 0;
        foreach (var v in values)
        {
            sum += v;
            square += v * v;
        }
        var mean = sum / values.Length;
        return new(mean, Math.Sqrt(Math.Max(0, (square / values.Length) - (mean * mean))), At(values, 0.05), At(values, 0.5), At(values, 0.95));
    }

    private static double At(ReadOnlySpan<double> sorted, double p)
    {
        var x = p * (sorted.Length - 1);
        var i = (int)x;
        return i + 1 < sorted.Length ? sorted[i] + ((x - i) * (sorted[i + 1] - sorted[i])) : sorted[i];
    }
}

/// <summary>One day of a plan.</summary>
/// <param name="Date">The day.</param>
/// <param name="Mow">Whether to mow.</param>
/// <param name="CutMm">The cut to be set, mm; as before where there is no mowing.</param>
/// <param name="ChangeMm">How far the setting moves, mm: + higher, 0 as it is.</param>
/// <param name="CanopyMm">What the turf stands at before, if the plan is followed till then, mm.</param>
/// <param name="ShareRemoved">What comes off, or would.</param>
/// <param name="OverThird">Probability that it is more than a third.</param>
/// <param name="Scalp">Probability of a cut below the green base.</param>
/// <param name="KeepOff">Probability that the day keeps everyone off.</param>
/// <param name="Stressed">Probability of stress or wilting.</param>
/// <param name="MowLoss">Expected cost from here on if mown that day as well as may be, in mowings.</param>
/// <param name="WaitLoss">The same if not.</param>
/// <param name="Reason">What decides.</param>
/// <param name="AskFirst">Whether more than a third is likely to come off: only after asking.</param>
/// <param name="LowerRefused">Whether lowering was wanted and a rule forbids it.</param>
public sealed record PlanDay(
    DateOnly Date, bool Mow, double CutMm, double ChangeMm, PlanNumber CanopyMm, PlanNumber ShareRemoved, double OverThird, double Scalp, double KeepOff, double Stressed,
    double MowLoss, double WaitLoss, DayReason Reason, bool AskFirst, bool LowerRefused);

/// <summary>A plan of the coming weeks.</summary>
/// <param name="Days">Its days, in order.</param>
/// <param name="WishReached">The first day by which the wished cut is mown with a probability of at least 0.8; null where the days looked at do not reach it.</param>
/// <param name="ReachedByDate">Probability that it is mown at the wished cut by the date wished; null where none is.</param>
/// <param name="Loss">Expected cost of the plan, in mowings.</param>
public sealed record MowingPlan(IReadOnlyList<PlanDay> Days, DateOnly? WishReached, double? ReachedByDate, double Loss);
