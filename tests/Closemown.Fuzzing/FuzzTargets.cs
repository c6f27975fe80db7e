namespace Closemown.Fuzzing;

/// <summary>All that is fuzzed: whatever reads what comes from outside.</summary>
public static class FuzzTargets
{
    private static readonly (string Name, Func<FuzzTarget> Make)[] Makers =
    [
        ("entry", () => new EntryTarget()), ("pipe", () => new PipeTarget()), ("typed", () => new TypedTarget()), ("day", () => new DayTarget()), ("names", () => new NamesTarget()), ("quantity", () => new QuantityTarget()),
        ("weather", () => new WeatherTarget()), ("form", () => new FormTarget()), ("path", () => new PathTarget()), ("look", () => new LookTarget()), ("import", () => new ImportTarget()), ("advice-id", () => new AdviceIdTarget()),
        ("settings", () => new SettingsTarget()), ("book-file", () => new BookFileTarget()),
    ];

    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Makers.Select(m => m.Name)];

    /// <summary>Makes the one of that name; null where there is none.</summary>
    public static FuzzTarget? Of(string name) => Array.Find(Makers, m => m.Name == name).Make?.Invoke();
}
