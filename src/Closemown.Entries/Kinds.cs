namespace Closemown.Entries;

/// <summary>Every kind of entry there is.</summary>
public static class Kinds
{
    private static readonly Dictionary<string, KindSpec> ByName;

    static Kinds()
    {
        All =
        [
            UnitEntry.Kind, StripEntry.Kind, FitEntry.Kind, PaperCutEntry.Kind, PaperDragEntry.Kind, ContactEntry.Kind, TorchEntry.Kind,
            SwathEntry.Kind, FeelerEntry.Kind, ClicksEntry.Kind, SquareUpEntry.Kind, LapEntry.Kind, StoneEntry.Kind, GrindEntry.Kind,
            RebuildEntry.Kind, StrikeEntry.Kind, GaugeEntry.Kind, ScrewEntry.Kind, LockedEntry.Kind, MeasureEntry.Kind, ServiceEntry.Kind,
            AreaEntry.Kind, MowEntry.Kind, CanopyEntry.Kind, LookEntry.Kind, ClippingsEntry.Kind, WeatherEntry.Kind, WaterEntry.Kind,
            FeedEntry.Kind, TreatEntry.Kind, WorkEntry.Kind, SoilTestEntry.Kind, PaceEntry.Kind, WishEntry.Kind, DeclineEntry.Kind,
            VoidEntry.Kind,
        ];
        ByName = All.ToDictionary(k => k.Name, StringComparer.Ordinal);
    }

    public static IReadOnlyList<KindSpec> All { get; }

    /// <summary>Names kept for later: nothing can be written under them yet.</summary>
    public static IReadOnlyList<string> Reserved { get; } = ["inspect", "photo"];

    /// <summary>The kind of that name, or null.</summary>
    public static KindSpec? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The kind of that name.</summary>
    /// <exception cref="KeyNotFoundException">There is none: a fault of the program.</exception>
    public static KindSpec Get(string name) => ByName[name];
}
