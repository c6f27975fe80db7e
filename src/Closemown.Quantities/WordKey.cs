namespace Closemown.Quantities;

/// <summary>The words of the trade that people read in their own English.</summary>
public enum WordKey
{
    /// <summary>Reel, bedknife, rollers and adjusters as one assembly.</summary>
    Unit,

    /// <summary>The reel.</summary>
    Reel,

    /// <summary>One blade of the reel.</summary>
    Blade,

    /// <summary>The bedknife.</summary>
    Bedknife,

    /// <summary>Left, as seen by the operator behind the mower.</summary>
    Left,

    /// <summary>The middle station.</summary>
    Centre,

    /// <summary>Right, as seen by the operator behind the mower.</summary>
    Right,

    /// <summary>The screw that moves one end.</summary>
    Adjuster,

    /// <summary>One detent of an adjuster.</summary>
    Click,

    /// <summary>One flat of an adjuster.</summary>
    Flat,

    /// <summary>One notch of an adjuster.</summary>
    Notch,

    /// <summary>Between a blade's path and the bedknife edge.</summary>
    Clearance,

    /// <summary>How blunt the pair is.</summary>
    Edge,

    /// <summary>Bringing both ends to the same drag.</summary>
    SquareUp,

    /// <summary>Turning the reel backwards with abrasive compound.</summary>
    Lap,

    /// <summary>Grinding the reel.</summary>
    Grind,

    /// <summary>Grinding the relief.</summary>
    ReliefGrind,

    /// <summary>The unit hit something.</summary>
    Strike,

    /// <summary>Height of the bedknife edge on the bench.</summary>
    BenchHeight,

    /// <summary>What the turf stands at just after mowing.</summary>
    CutHeight,

    /// <summary>Bench height minus cut height.</summary>
    Sink,

    /// <summary>What the turf stands at now.</summary>
    Canopy,

    /// <summary>The share of the leaf taken at one mowing.</summary>
    ShareRemoved,

    /// <summary>Forward travel between two blade passes.</summary>
    Clip,

    /// <summary>The height wanted.</summary>
    Wish,

    /// <summary>A reading out of this mower's own pattern.</summary>
    Surprise,

    /// <summary>Colour, as spelt.</summary>
    Colour,

    /// <summary>Grey, as spelt.</summary>
    Grey,

    /// <summary>Millimetre, as spelt.</summary>
    Millimetre,

    /// <summary>Metre, as spelt.</summary>
    Metre,
}
