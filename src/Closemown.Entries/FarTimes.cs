namespace Closemown.Entries;

/// <summary>Asks about times that a slip of the finger or a wrong clock makes: one such entry would come before or after all others.</summary>
internal static class FarTimes
{
    /// <summary>How far from the clock nobody is asked: devices and zones differ by less.</summary>
    private static readonly TimeSpan Near = TimeSpan.FromDays(1);

    /// <summary>The question about the time of an entry; null where there is none.</summary>
    /// <param name="at">The time of the entry.</param>
    /// <param name="byClock">Whether the clock gave it.</param>
    /// <param name="context">Knows the clock, and the last entry.</param>
    public static EntryFault? Ask(DateTimeOffset at, bool byClock, EntryContext context)
    {
        if (!context.AsksPlausible || context.Clock is null) return null;
        var now = context.Clock();
        if (at - now > Near)
            return new(FaultCodes.Implausible, "at", $"The entry is of {EntryTime.Write(at)}, which is to come: the clock here says {EntryTime.Write(now)}.",
                "Correct the time or the clock, or add \"confirmed\": [\"at\"] if it is right as it is.");
        if (byClock && context.Latest?.Invoke() is { } last && last - at > Near)
            return new(FaultCodes.Implausible, "at", $"The clock here says {EntryTime.Write(at)}, but the last entry is of {EntryTime.Write(last)}.",
                "Set the clock right, or take out that entry if its time is wrong, or add \"confirmed\": [\"at\"] if the clock is right as it is.");
        return null;
    }
}
