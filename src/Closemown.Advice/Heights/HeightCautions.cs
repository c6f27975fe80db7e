using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>The usual cautions of setting the height. Common practice; the maker's manual comes first.</summary>
public static class HeightCautions
{
    public const string Edges = "Blades and {bedknife} cut while they stand still: cut-resistant gloves, and the {reel} held from turning, before a gauge or a hand goes near.";

    public const string Back = "Back to the green: both nuts tight, both ends felt, first strip on the surround, look, then the green.";

    /// <summary>The cautions of a step, those already shown in this sitting left out.</summary>
    public static IReadOnlyList<string> For(string step, BenchMemory memory, SittingNow sitting)
    {
        ArgumentNullException.ThrowIfNull(memory);
        ArgumentNullException.ThrowIfNull(sitting);
        if (step == "mow") return [Back];
        if (sitting.Entries.Count == 0) return [Cautions.Hands, Cautions.Tip, Edges];
        return sitting.Has("gauge", "screw", "locked") ? [] : [Edges];
    }
}
