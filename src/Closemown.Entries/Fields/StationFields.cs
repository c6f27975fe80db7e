namespace Closemown.Entries;

/// <summary>What was found at the stations left, centre, right, of whichever kind of check an entry is.</summary>
public static class StationFields
{
    /// <summary>A word at each: of a strip, a drag, a touch, the torch, the swath.</summary>
    public static IReadOnlyList<Field<string>> Words { get; } = [PaperCutEntry.Left, PaperCutEntry.Centre, PaperCutEntry.Right];

    /// <summary>A feeler gauge at each.</summary>
    public static IReadOnlyList<Field<GoNoGo>> Feelers { get; } = [FeelerEntry.Left, FeelerEntry.Centre, FeelerEntry.Right];

    /// <summary>A number at each: of steel that was measured.</summary>
    public static IReadOnlyList<Field<double>> Numbers { get; } = [MeasureEntry.Left, MeasureEntry.Centre, MeasureEntry.Right];
}
