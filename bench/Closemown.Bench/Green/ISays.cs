namespace Closemown.Bench.Green;

/// <summary>A strategy that says what it believes, so that it can be held to it.</summary>
internal interface ISays
{
    /// <summary>Standing height this morning before it was read: mean and spread, mm; null where nothing was said.</summary>
    (double Mean, double Sd)? Said { get; }

    /// <summary>Growth at its best, mm a day; null before anything was said.</summary>
    double? RateMm { get; }
}
