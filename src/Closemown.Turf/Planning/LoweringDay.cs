namespace Closemown.Turf;

/// <summary>When a lower height is come to, although that mowing alone would not be worth it.</summary>
/// <remarks>Common practice, no source: who goes down mows oftener, as turf that has grown on cannot be cut to the lower height within a third.</remarks>
internal static class LoweringDay
{
    /// <summary>For less than this share of the leaf nobody mows for the height alone.</summary>
    private const double WorthShare = 0.15;

    /// <summary>Whether a lower height that is lawful today would take more than a third on the next day that someone is there.</summary>
    /// <param name="canopyMm">Standing height, mm.</param>
    /// <param name="cutMm">The lower height, mm.</param>
    /// <param name="growsMm">What grows until that day, mm.</param>
    public static bool IsLast(double canopyMm, double cutMm, double growsMm) =>
        canopyMm - cutMm >= WorthShare * canopyMm && RaisedCuts.LowestMm(canopyMm + growsMm) > cutMm;
}
