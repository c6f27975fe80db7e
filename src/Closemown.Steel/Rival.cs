using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>What may lie behind readings that do not fit.</summary>
public enum RivalKind
{
    /// <summary>Nothing: readings scatter.</summary>
    Chance,

    /// <summary>One reading was misread or mistyped.</summary>
    MistakenReading,

    /// <summary>It hit something while mowing, unnoticed.</summary>
    Strike,

    /// <summary>An adjuster did not move as far as was turned.</summary>
    SlippedClick,

    /// <summary>Something moved where it was put together.</summary>
    MovedAtRebuild,

    /// <summary>Something else moved before the reading, unnoticed.</summary>
    MovedUnseen,
}

/// <summary>One explanation of readings that do not fit, with its probability among the rivals.</summary>
/// <param name="Kind">What.</param>
/// <param name="About">The entry it is about; null for chance.</param>
/// <param name="Station">The station of a mistaken reading; −1 else.</param>
/// <param name="Probability">0–1.</param>
public sealed record Explanation(RivalKind Kind, Entry? About, int Station, double Probability)
{
    /// <summary>Its name in answers.</summary>
    public string Name => Kind switch
    {
        RivalKind.MistakenReading => "mistaken-reading",
        RivalKind.Strike => "strike",
        RivalKind.SlippedClick => "slipped-click",
        RivalKind.MovedAtRebuild => "moved-at-rebuild",
        RivalKind.MovedUnseen => "moved-unseen",
        _ => "chance",
    };
}
