namespace Closemown.Turf;

/// <summary>Where each unknown of the canopy model stands: five states after each day with an entry, seven constants.</summary>
public static class CanopyLayout
{
    /// <summary>What the turf stands at, mm.</summary>
    public const int Canopy = 0;

    /// <summary>What it stood at just before the last mowing, mm: what the box and the eye tell of.</summary>
    public const int Before = 1;

    /// <summary>What is cut more than was set or told, mm: wanders slowly.</summary>
    public const int Offset = 2;

    /// <summary>How far growth strays from its pattern these weeks, mm a day at full growth.</summary>
    public const int Spell = 3;

    /// <summary>Stress: 0 none, 1 slight, 2 marked, 3 severe.</summary>
    public const int Stress = 4;
    public const int StateSize = 5;

    /// <summary>Growth in height at its best, mm a day.</summary>
    public const int Rate = 0;

    /// <summary>What a g/m² of nitrogen at work adds to it, mm a day.</summary>
    public const int Feed = 1;

    /// <summary>What a mm more of standing height adds to it, mm a day a mm.</summary>
    public const int Tall = 2;

    /// <summary>What more this turf grows where the published bell gives little: towards a wider bell, mm a day.</summary>
    public const int Wide = 3;

    /// <summary>What it grows of that which the water balance says a dry soil withholds, mm a day.</summary>
    public const int Dry = 4;

    /// <summary>Leaf taken off per volume of clippings, mm per L/m².</summary>
    public const int Clippings = 5;

    /// <summary>How much of what the weather asks this turf feels.</summary>
    public const int Feels = 6;
    public const int ConstantCount = 7;

    public static IReadOnlyList<string> StateNames { get; } = ["canopy", "canopy before mowing", "cut offset", "growing spell", "stress"];

    public static IReadOnlyList<string> ConstantNames { get; } =
    [
        "growth at its best", "response to nitrogen", "response to height", "growth beside the bell", "growth on dry soil",
        "leaf per clippings", "stress felt",
    ];
}
