using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>How high the turf is still green: a cut below it scalps, however little comes off.</summary>
/// <remarks>
/// The base follows the height that stood over some two weeks (<see cref="AreaDefaults.BaseShare"/> of it), down more slowly than up, as
/// long leaves have to die first, and lies higher where the turf is puffy or soft; how much this area's differs is learned from the scalp
/// looked at after mowings. The form and its numbers are assumptions, no source.
/// </remarks>
public sealed class GreenBase
{
    private const double KeptDays = 14, FallsDays = 21, SoftMm = 0.3, LookSdMm = 0.3, AreaMm = 0.4, LateShare = 0.6;
    private static readonly Term[] Own = [Term.State(0, 0, 1)];
    private readonly ForwardPass pass = new(new GaussianState(["green base"], [], [0], [AreaDefaults.BaseSdMm * AreaDefaults.BaseSdMm]));
    private DateTimeOffset? keptSince;
    private double kept;
    private double lastCut;
    private bool soft;

    /// <summary>Looks that told of it.</summary>
    public int Looks { get; private set; }

    /// <summary>Mean and spread of the base now, mm; null before the first mowing.</summary>
    public (double Mean, double Sd)? Mm => keptSince is null ? null
        : (Level + pass.Current.Mean[0], double.Hypot(Math.Sqrt(pass.Current.Covariance[0]), AreaDefaults.BaseShareSd * kept));

    private double Level => (AreaDefaults.BaseShare * kept) + (soft ? SoftMm : 0);

    /// <summary>The height that stood on average over the last weeks, mm; null before the first mowing.</summary>
    public double? KeptMm => keptSince is null ? null : kept;

    /// <summary>How far the base has come up to a new height after some days.</summary>
    public static double Followed(double days) => 1 - Math.Exp(-Math.Max(0, days) / KeptDays);

    /// <summary>Mean and spread of the base at a time, given what stands then, mm; null before the first mowing.</summary>
    /// <param name="at">The time, at or after the last mowing.</param>
    /// <param name="standingMm">What stands then, mm: since the last mowing the base has begun to follow it.</param>
    public (double Mean, double Sd)? At(DateTimeOffset at, double standingMm)
    {
        if (Mm is not { } b || keptSince is not { } since) return null;
        var follows = AreaDefaults.BaseShare * Moved((at - since).TotalDays, Stood(lastCut, standingMm));
        return (b.Mean + follows, b.Sd);
    }

    /// <summary>The height that counts of turf that grew from one to another: the later days more.</summary>
    private static double Stood(double fromMm, double toMm) => fromMm + (LateShare * Math.Max(0, toMm - fromMm));

    /// <summary>How far the height that counts moves in some days towards one that stood, mm.</summary>
    private double Moved(double days, double stood) => Followed(stood < kept ? days * KeptDays / FallsDays : days) * (stood - kept);

    /// <summary>A mowing left the turf at a height.</summary>
    /// <param name="at">When.</param>
    /// <param name="beforeMm">What it stood at before, mm.</param>
    /// <param name="cutMm">What it was left at, mm.</param>
    public void Mown(DateTimeOffset at, double beforeMm, double cutMm)
    {
        var stood = Stood(keptSince is null ? cutMm : lastCut, beforeMm);
        lastCut = cutMm;
        if (keptSince is not { } since)
        {
            (keptSince, kept) = (at, stood);
            return;
        }
        kept += Moved((at - since).TotalDays, stood);
        keptSince = at;
    }

    /// <summary>A look after it.</summary>
    public void Look(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        soft = e[LookEntry.Soft] ?? soft;
        if (keptSince is null || e[LookEntry.ScalpPct] is not { } pct) return;
        Looks++;
        if (pct > 0) pass.ObserveGaussian(Own, lastCut - Level + (AreaMm * Math.Sqrt(pct / 100)), LookSdMm);
        else pass.ObserveInterval(Own, 0, double.NegativeInfinity, lastCut - Level, LookSdMm);
    }

    /// <summary>The probability that a cut goes below the base.</summary>
    /// <param name="cutMm">The cut expected, mm.</param>
    /// <param name="sdMm">Its spread, mm.</param>
    public double Scalps(double cutMm, double sdMm)
    {
        if (Mm is not { } b) return 0;
        return NormalMath.Phi((b.Mean - cutMm) / Math.Sqrt((b.Sd * b.Sd) + (sdMm * sdMm)));
    }
}
