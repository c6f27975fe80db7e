namespace Closemown.Bench.Green;

/// <summary>A strategy that says what it believes, to be held to it. Each is what was said this morning; null where nothing was.</summary>
internal interface ISays
{
    /// <summary>Standing height this morning before it was read: mean and spread, mm.</summary>
    (double Mean, double Sd)? Said { get; }

    /// <summary>What the coming seven days grow where nobody mows, mm.</summary>
    (double Mean, double Sd)? WeekGrowth { get; }

    /// <summary>What it will stand at in seven days where nobody mows, mm.</summary>
    (double Mean, double Sd)? InAWeek { get; }

    /// <summary>By when the wish is reached, as today's plan has it.</summary>
    WishPromise? Promise { get; }

    /// <summary>Growth at its best, mm a day; the last word on it.</summary>
    double? RateMm { get; }
}

/// <summary>The first day by which the wish is reached with 80 in 100.</summary>
/// <param name="On">That day.</param>
/// <param name="ReckonedOn">Whether it lies past the days planned: reckoned on from the plan's pace, with no probability behind it.</param>
internal readonly record struct WishPromise(DateOnly On, bool ReckonedOn);
