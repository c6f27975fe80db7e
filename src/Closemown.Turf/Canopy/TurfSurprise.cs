using Closemown.Entries;

namespace Closemown.Turf;

/// <summary>A reading out of this area's pattern.</summary>
/// <param name="Entry">The reading.</param>
/// <param name="Surprise">Probability of one at least this odd, before it was seen.</param>
/// <param name="Under">Whether the turf stood lower than expected; null where it is no height.</param>
/// <param name="Likely">What may lie behind it, the likeliest first.</param>
public sealed record OddTurf(Entry Entry, double Surprise, bool? Under, IReadOnlyList<GrowthCause> Likely);

/// <summary>What may lie behind growth out of its pattern.</summary>
public enum GrowthCause
{
    /// <summary>The roots could not draw what was asked.</summary>
    Drought,

    /// <summary>Cold nights or a soil behind the air.</summary>
    Cold,

    /// <summary>Too hot for the grass.</summary>
    Heat,

    /// <summary>Nitrogen is used up.</summary>
    Hungry,

    /// <summary>Fed lately.</summary>
    Fed,

    /// <summary>A growth regulator at work, or just run out.</summary>
    Regulator,

    /// <summary>Mown and not entered.</summary>
    MownUnsaid,

    /// <summary>The last mowing cut otherwise than was thought.</summary>
    CutOtherwise,

    /// <summary>The reading itself.</summary>
    Reading,
}
