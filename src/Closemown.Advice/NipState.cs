namespace Closemown.Advice;

/// <summary>One draw's steel just before mowing: clearance at the ends, edges, bow; µm.</summary>
internal struct NipState
{
    public double Left, Right, EdgeLeft, EdgeCentre, EdgeRight, Bow;
}
