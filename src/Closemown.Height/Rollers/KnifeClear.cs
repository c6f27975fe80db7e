namespace Closemown.Height;

/// <summary>What the bedknife's lip leaves between itself and the turf.</summary>
public static class KnifeClear
{
    /// <summary>Below this the knife drags, mm (common practice, no source).</summary>
    public const double DragsBelowMm = 0.3;

    /// <summary>Room under the knife, mm: bench height − lip − sink; below zero the knife ploughs.</summary>
    /// <example>5 mm on the bench, a lip of 2.2 and a sink of 0.6: 2.2 mm.</example>
    public static double RoomMm(double benchMm, double lipMm, double sinkMm) => benchMm - lipMm - sinkMm;

    /// <summary>Whether the knife drags on the turf.</summary>
    public static bool Drags(double benchMm, double lipMm, double sinkMm) => RoomMm(benchMm, lipMm, sinkMm) < DragsBelowMm;

    /// <summary>The lowest bench height at which this knife does not drag, mm: lip + sink + 0.3.</summary>
    /// <example>A lip of 2.2 and a sink of 0.6: 3.1 mm on the bench, 2.5 mm cut.</example>
    public static double LowestBenchMm(double lipMm, double sinkMm) => lipMm + sinkMm + DragsBelowMm;

    /// <summary>The lowest height this unit can cut at all, mm: what the knife allows, or what the screws reach where that is higher.</summary>
    /// <param name="lipMm">What the bedknife reaches below its edge, mm.</param>
    /// <param name="sinkMm">Bench height less cut height, mm; either sign.</param>
    /// <param name="lowestByScrewsMm">The lowest bench height that the screws and rollers reach, mm; null where not known.</param>
    public static double LowestCutMm(double lipMm, double sinkMm, double? lowestByScrewsMm = null) =>
        Math.Max(LowestBenchMm(lipMm, sinkMm), lowestByScrewsMm ?? double.NegativeInfinity) - sinkMm;
}
