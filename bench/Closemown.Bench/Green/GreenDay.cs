namespace Closemown.Bench.Green;

/// <summary>What a person can know on a morning. All of it can be written as entries: canopy, look, clippings, mow, weather, water, wish.</summary>
internal sealed record GreenDay
{
    /// <summary>Days since the season began.</summary>
    public required int Number { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>Whether the person is there today.</summary>
    public required bool Free { get; init; }

    /// <summary>Whether the ground keeps everyone off: seen by standing on it.</summary>
    public required bool KeepOff { get; init; }

    public required bool Wilting { get; init; }

    /// <summary>Yesterday's weather.</summary>
    public required SkyDay Yesterday { get; init; }

    /// <summary>Forecast from today on, seven days.</summary>
    public required SkyDay[] Forecast { get; init; }

    /// <summary>Watered yesterday, mm.</summary>
    public required double WateredMm { get; init; }

    /// <summary>Mean of five spots this morning, mm, where read.</summary>
    public double? CanopyMm { get; init; }

    /// <summary>Reads five spots now, mm, for who is told to read first.</summary>
    public required Func<double> Read { get; init; }

    /// <summary>The last mowing, if it was yesterday: set to, mean of spots after it, litres a m² where read.</summary>
    public (double SetMm, double? AfterMm, double? LitresM2)? MownYesterday { get; init; }

    /// <summary>Stress as seen where looked at: 0 to 3.</summary>
    public int? StressSeen { get; init; }

    /// <summary>Scalped at the last mowing, where it was yesterday.</summary>
    public bool ScalpSeen { get; init; }

    /// <summary>As the machine is set, mm.</summary>
    public required double SetMm { get; init; }

    public required double WishMm { get; init; }

    public DateOnly? WishBy { get; init; }

    public required IReadOnlyList<DayOfWeek> Weekdays { get; init; }

    public required IReadOnlyList<DateOnly> Fixtures { get; init; }
}

/// <summary>What is done today; the cut is what the machine is set to.</summary>
internal readonly record struct Decision(bool Mow, double CutMm)
{
    public static Decision None { get; } = new(false, 0);
}

/// <summary>A way to decide about mowing. Asked every morning, whether or not anyone can mow.</summary>
internal interface IGreenStrategy
{
    Decision Day(GreenDay today);
}
