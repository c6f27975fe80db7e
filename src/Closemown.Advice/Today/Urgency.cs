namespace Closemown.Advice;

/// <summary>How pressing a thing is today, the most pressing first. The one rule by which today's things are ordered, in words and in JSON alike.</summary>
public enum Urgency
{
    /// <summary>People or machine could be hurt: a bad fit, a hit or a strange sound not yet looked into, a change at the bench not yet felt after.</summary>
    Safety,

    /// <summary>The turf must not be walked on or mown today.</summary>
    KeepOff,

    /// <summary>A match is today or tomorrow, or after today it is too late before one.</summary>
    Match,

    /// <summary>The unit mows today (or nobody can tell when), and as it stands it would do so out of tolerance, or tear.</summary>
    OutOfTolerance,

    /// <summary>Waiting to the next day that is free would take more than a third or scalp, or the turf wilts.</summary>
    Now,

    /// <summary>Due today; a day later costs a little.</summary>
    Today,

    /// <summary>Worth doing, not today.</summary>
    CanWait,

    /// <summary>Nothing to do but to come back.</summary>
    Nothing,
}
