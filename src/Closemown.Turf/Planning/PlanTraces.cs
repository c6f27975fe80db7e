namespace Closemown.Turf;

/// <summary>Futures of equal probability: what each day of each brings.</summary>
/// <remarks>Row n holds the days of trace n; day 0 is the plan's first. What grows on a day grows after that day's mowing.</remarks>
public sealed class PlanTraces
{
    /// <summary>Makes empty traces to fill.</summary>
    /// <param name="count">How many, 1 or more.</param>
    /// <param name="days">Days of each, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public PlanTraces(int count, int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        (Count, Days) = (count, days);
        GrowthMm = new double[count, days];
        KeepOff = new bool[count, days];
        Wilting = new bool[count, days];
        StressInput = new double[count, days];
    }

    public int Count { get; }

    public int Days { get; }

    /// <summary>Growth of the day, mm, 0 or more: growth rate, weather and the day's own luck included.</summary>
    public double[,] GrowthMm { get; }

    /// <summary>Whether frost, frozen or thawing soil or water keep everyone off.</summary>
    public bool[,] KeepOff { get; }

    /// <summary>Whether the turf wilts.</summary>
    public bool[,] Wilting { get; }

    /// <summary>Where the day draws stress, 0 to 3: held for long, stress would come to this.</summary>
    public double[,] StressInput { get; }
}
