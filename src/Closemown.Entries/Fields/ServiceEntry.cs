using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>service</c>: done to the machine, or to be done again.</summary>
public static class ServiceEntry
{
    public const string Name = "service";

    /// <summary>Oil, grease, bearings, seals, belt, chain, plug, filter, battery, wash, store, start, knife-screws, or a word of the person's own.</summary>
    public static Field<string> What { get; } = Text("what", "oil, grease, bearings, seals, belt, chain, plug, filter, battery, wash, store, start, knife-screws, or a word of the person's own").Must();

    /// <summary>Hours on the meter.</summary>
    public static Field<double> MeterH { get; } = Number("meterH", 0, 100000, "hours on the meter").OnlyKept();

    /// <summary>To be done again after so many hours.</summary>
    public static Field<double> EveryH { get; } = Number("everyH", 0.1, 100000, "to be done again after so many hours").OnlyKept();

    /// <summary>To be done again after so many days.</summary>
    public static Field<double> EveryDays { get; } = Number("everyDays", 1, 10000, "to be done again after so many days").OnlyKept();

    /// <summary>Which part was used.</summary>
    public static Field<string> Part { get; } = Text("part", "which part was used").OnlyKept();

    /// <summary>What it cost.</summary>
    public static Field<double> Cost { get; } = Number("cost", 0, 1000000, "what it cost").OnlyKept();

    /// <summary>In which money.</summary>
    public static Field<string> Currency { get; } = Text("currency", "in which money").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "done to the machine, or to be done again",
        What, MeterH, EveryH, EveryDays, Part, Cost, Currency)
    {
        Example = """{"kind":"service","what":"knife-screws"}""",
    };
}
