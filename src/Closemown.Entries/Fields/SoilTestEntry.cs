namespace Closemown.Entries;

/// <summary>An entry of the kind <c>soil-test</c>: measured in the soil: element: mg/kg.</summary>
public static class SoilTestEntry
{
    public const string Name = "soil-test";

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Reading, "measured in the soil: element: mg/kg")
    {
        OtherFieldsAreNumbers = true,
        Example = """{"kind":"soil-test","area":"green","P":20,"K":60}""",
    };
}
