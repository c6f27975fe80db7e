namespace Closemown.Turf;

/// <summary>What decided about mowing on a day.</summary>
public enum PlanReason
{
    /// <summary>Mow: what waiting is expected to cost more; the number is how much, in mowings.</summary>
    WaitingCostsMore,

    /// <summary>Mow: by the next day the person is likely to be free more than a third would come off; the number is the probability.</summary>
    OverThirdByNextFreeDay,

    /// <summary>Mow: to bring the cut towards the wish; the number is how far it still is, mm.</summary>
    TowardsWish,

    /// <summary>Mow: too tall for one mowing, so a third at most comes off now; the number is the share that the used height would take.</summary>
    ComingDown,

    /// <summary>Mow: raised turf comes back to what it is used to; the number is that height, mm.</summary>
    ComingBack,

    /// <summary>Not: the last mowing above the used height is too few days past; the number is the days to wait.</summary>
    ComingDownWaits,

    /// <summary>Not: more than a third would come off, and a match near or too few minutes allow no other height; the number is the share that the machine would take as it is set.</summary>
    TooTall,

    /// <summary>Not: nobody knows what stands there, so it is read first; no number.</summary>
    HeightNotKnown,

    /// <summary>Not: frost, frozen or full soil; the number is the probability.</summary>
    KeepOff,

    /// <summary>Not: the person is unlikely to be there; the number is the probability of being there.</summary>
    NotFree,

    /// <summary>Not: too few minutes; the number is the minutes there are.</summary>
    NoMinutes,

    /// <summary>Not: little has grown; the number is the share that would come off.</summary>
    LittleGrown,

    /// <summary>Not: a stressed plant is better left; the number is the stress.</summary>
    Stressed,

    /// <summary>Not: mowing then is expected to cost more than a later day; the number is how much, in mowings.</summary>
    LaterCostsLess,
}

/// <summary>What decided about the height of a day's mowing.</summary>
public enum HeightReason
{
    /// <summary>The cut is the wish.</summary>
    AtWish,

    /// <summary>Lowered, towards the wish; the number is the step, mm.</summary>
    LoweredTowardsWish,

    /// <summary>Raised, or kept up, because too much would come off; the number is the share the last cut would take.</summary>
    RaisedForShare,

    /// <summary>Raised, or kept up, because the plant is stressed; the number is the stress.</summary>
    RaisedForStress,

    /// <summary>Raised, or kept up, because a lower cut may scalp; the number is that probability.</summary>
    RaisedForScalp,

    /// <summary>Raised towards the wish; the number is the step, mm.</summary>
    RaisedTowardsWish,

    /// <summary>Raised because the machine is set more than one step under what the turf is used to; the number is how far, mm.</summary>
    RaisedForStep,

    /// <summary>Raised so that a third at most comes off, on the way back to the used height; the number is that height, mm.</summary>
    ComingDown,

    /// <summary>Not lowered: wilting; the number is the probability.</summary>
    HeldWilting,

    /// <summary>Not lowered: stressed; the number is the stress.</summary>
    HeldStressed,

    /// <summary>Not lowered: too few mowings since the last lowering; the number is how many.</summary>
    HeldThreeMowings,

    /// <summary>Not lowered: the days ahead hardly grow; the number is what they grow, mm.</summary>
    HeldNoGrowth,

    /// <summary>Not lowered: sanded or opened lately; the number is the days it is still held.</summary>
    HeldWork,

    /// <summary>No change: a match is near; the number is the days to it.</summary>
    HeldFixture,

    /// <summary>Not lowered: it would cost more than it gains; the number is how much, in mowings.</summary>
    HeldCostsMore,
}

/// <summary>How the cut of a mowing stands to the height that the turf is used to.</summary>
public enum CutMove
{
    Same,
    Lowered,
    Raised,
}

/// <summary>A deciding reason and its number.</summary>
public readonly record struct PlanWhy(PlanReason Reason, double Value);

/// <inheritdoc cref="PlanWhy"/>
public readonly record struct HeightWhy(HeightReason Reason, double Value);

/// <summary>A distribution as it is shown.</summary>
public readonly record struct Spread(double Mean, double Sd, double P05, double P50, double P95);

/// <summary>One day of a plan. Canopy and share hold if the days before went as planned.</summary>
public sealed record PlanDay
{
    public required DateOnly Date { get; init; }

    /// <summary>Whether to mow: the first day's decision; on later days what the plan expects to decide.</summary>
    public required bool Mow { get; init; }

    /// <summary>Probability that this day is mown, over weather, growth and the person's being there.</summary>
    public required double MowProbability { get; init; }

    /// <summary>Height left by the mowing, mm; on days without one what the next would leave if made then.</summary>
    public required double CutMm { get; init; }

    /// <summary>Against the height that the turf is used to by then.</summary>
    public required CutMove Move { get; init; }

    /// <summary>Whether the machine has to be set anew.</summary>
    public required bool SetAnew { get; init; }

    /// <summary>Standing height that morning, mm.</summary>
    public required Spread CanopyMm { get; init; }

    /// <summary>Share of it that comes off at <see cref="CutMm"/>, 0 to 1.</summary>
    public required Spread Share { get; init; }

    public required double OverThirdProbability { get; init; }

    public required double ScalpProbability { get; init; }

    /// <summary>Whether the person is asked to say yes to more than a third that day: no other mowing is possible, and waiting costs more. Not planned.</summary>
    public required bool AskFirst { get; init; }

    public required double KeepOffProbability { get; init; }

    public required double FreeProbability { get; init; }

    public required double WiltingProbability { get; init; }

    /// <summary>Stress expected that morning, 0 to 3.</summary>
    public required double Stress { get; init; }

    /// <summary>What is expected to be lost from that day to the end of the plan by mowing on it, in mowings.</summary>
    public required double LossMown { get; init; }

    /// <summary>The same by not mowing on it.</summary>
    public required double LossNotMown { get; init; }

    /// <summary>Minutes of the day's work, 0 without any.</summary>
    public required double Minutes { get; init; }

    /// <summary>Why mown, or why not.</summary>
    public required PlanWhy Why { get; init; }

    /// <summary>Why that height.</summary>
    public required HeightWhy WhyHeight { get; init; }
}

/// <summary>When the wished height can be reached.</summary>
/// <param name="Earliest">First day by which it is mown to with a probability of <see cref="PlanLimits.Reached"/> at least.</param>
/// <param name="Extrapolated">Whether that lies past the days planned and was reckoned on from the pace of the plan.</param>
/// <param name="ByDateProbability">Probability that the wished date is met; null where none is wished or it lies past the days planned.</param>
/// <param name="CanMeetDate">Whether the wished date can be met; null where none is wished.</param>
public readonly record struct WishOutlook(DateOnly? Earliest, bool Extrapolated, double? ByDateProbability, bool? CanMeetDate);

/// <summary>What else belongs to a date.</summary>
public enum PlanNoteKind
{
    /// <summary>Lap no later than this day.</summary>
    LapBy,

    /// <summary>Sand no later than this day.</summary>
    SandBy,

    /// <summary>Roll or double-cut before trying a lower height: green speed may come without it.</summary>
    RollFirst,

    /// <summary>No height change from this day on to the match.</summary>
    HeightHeldFrom,
}

/// <param name="Kind">What.</param>
/// <param name="Date">When.</param>
/// <param name="Fixture">For which match.</param>
public readonly record struct PlanNote(PlanNoteKind Kind, DateOnly Date, DateOnly? Fixture);

/// <summary>A mowing plan.</summary>
/// <param name="Days">The days, in order.</param>
/// <param name="Wish">When the wish can be reached.</param>
/// <param name="Notes">What else belongs to a date.</param>
/// <param name="ExpectedLoss">What is expected to be lost over the days shown, in mowings, with absences and weather.</param>
public sealed record MowingPlan(IReadOnlyList<PlanDay> Days, WishOutlook Wish, IReadOnlyList<PlanNote> Notes, double ExpectedLoss);
