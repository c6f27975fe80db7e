namespace Closemown.Height;

/// <summary>What to do in setting the height.</summary>
public enum HeightDo
{
    /// <summary>Read both sides with the nuts tight.</summary>
    Gauge,

    /// <summary>Turn the height screws.</summary>
    Screw,

    /// <summary>Tighten the nuts.</summary>
    Lock,

    /// <summary>Nothing more: set.</summary>
    Done,
}

/// <summary>Why it is the next step.</summary>
public enum HeightWhy
{
    /// <summary>The height is not known yet.</summary>
    Unread,

    /// <summary>A reading did not fit; another one tells which it was.</summary>
    OddReading,

    /// <summary>It was set or read in an earlier sitting: it is read once before it is believed.</summary>
    SetEarlier,

    /// <summary>Nuts are loose, and only a reading with tight nuts counts.</summary>
    NutsLoose,

    /// <summary>A side is off by more than it is uncertain and more than a hand can set.</summary>
    Off,

    /// <summary>A side comes down past the height, so as to come up to it: then the lost motion drops out.</summary>
    DownToComeUp,

    /// <summary>Both may be right, but one reading alone is largely luck.</summary>
    NotSureYet,

    /// <summary>Both sides are within tolerance with the probability asked for.</summary>
    Sure,

    /// <summary>No reading or turn would bring it nearer.</summary>
    AsNearAsCanBe,
}

/// <summary>The one next step in setting the height, and what it should lead to.</summary>
/// <param name="Do">What to do.</param>
/// <param name="Why">Why.</param>
/// <param name="Turns">Turns of the screws, + raises; nothing but for <see cref="HeightDo.Screw"/>.</param>
/// <param name="TakesMinutes">About how long it takes, minutes (common practice, no source).</param>
/// <param name="Within">Probability that both sides are within tolerance as they stand.</param>
/// <param name="WithinAfter">The same once the step is done and the nuts are tight, before it is read again.</param>
/// <param name="Left">Left bench height expected after the step, mm.</param>
/// <param name="Right">Right bench height expected after the step, mm.</param>
/// <param name="KnifeWouldDrag">Whether the knife would rather drag than clear the turf at the setting wanted; null where the lip was not told.</param>
public sealed record HeightAdvice(
    HeightDo Do, HeightWhy Why, ScrewTurns Turns, double TakesMinutes, double Within, double WithinAfter, HeightEstimate Left, HeightEstimate Right, bool? KnifeWouldDrag)
{
    /// <summary>The further steps of the same plan, in order.</summary>
    public IReadOnlyList<HeightDo> Then => Do switch
    {
        HeightDo.Screw when Why == HeightWhy.DownToComeUp => [HeightDo.Screw, HeightDo.Lock, HeightDo.Gauge],
        HeightDo.Screw => [HeightDo.Lock, HeightDo.Gauge],
        HeightDo.Lock => [HeightDo.Gauge],
        _ => [],
    };
}
