namespace Closemown.Height;

/// <summary>One mowing on the way down.</summary>
/// <param name="CanopyMm">What the turf stands at before it, mm.</param>
/// <param name="CutMm">What it is cut to, mm.</param>
public readonly record struct StepDownRow(double CanopyMm, double CutMm)
{
    /// <summary>How much of the standing height comes off, 0 to 1.</summary>
    public double ShareRemoved => (CanopyMm - CutMm) / CanopyMm;
}

/// <summary>The fewest mowings from a standing height down to a wished cut that never take more than a share of the leaf, each taking the same share.</summary>
/// <remarks>
/// Between two of them the turf grows by what is given. With n mowings of one share s the turf is cut to c ← (1 − s)·(c + growth); the least n for which
/// the allowed share reaches the wish is taken, and then the s that reaches it exactly, so that no mowing is harder than it need be. The share itself is
/// the person's choice; a third is common practice, no source.
/// </remarks>
public static class StepDown
{
    /// <summary>A third of the leaf (common practice, no source).</summary>
    public const double UsualShare = 1.0 / 3;

    /// <summary>More mowings than this are no plan.</summary>
    private const int Most = 60;

    /// <summary>The mowings in order; the last one cuts to the wish. One mowing where the turf stands low enough already.</summary>
    /// <example>From 8 mm to 4 with at most a third at once and no growth between: 8 → 5.66 → 4, 29 in 100 each time.</example>
    /// <param name="canopyMm">What the turf stands at, mm, more than 0.</param>
    /// <param name="cutMm">The wished cut, mm, more than 0.</param>
    /// <param name="share">The most of the standing height that one mowing may take, above 0, below 1.</param>
    /// <param name="growthMm">What it grows from one mowing to the next, mm, 0 or more.</param>
    /// <returns>The mowings; null where growth outruns the share, so that the wish is never reached: mow more often.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static IReadOnlyList<StepDownRow>? Of(double canopyMm, double cutMm, double share = UsualShare, double growthMm = 0)
    {
        if (!(canopyMm > 0 && double.IsFinite(canopyMm))) throw new ArgumentOutOfRangeException(nameof(canopyMm), canopyMm, "The turf stands at more than 0 mm.");
        if (!(cutMm > 0 && double.IsFinite(cutMm))) throw new ArgumentOutOfRangeException(nameof(cutMm), cutMm, "A cut is at more than 0 mm.");
        if (!(share > 0 && share < 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1.");
        if (!(growthMm >= 0 && double.IsFinite(growthMm))) throw new ArgumentOutOfRangeException(nameof(growthMm), growthMm, "Growth is 0 mm or more.");
        var n = 1;
        while (After(share, n) > cutMm)
        {
            if (++n > Most) return null;
        }
        double low = 0, high = share;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (After(middle, n) > cutMm) low = middle;
            else high = middle;
        }
        var rows = new List<StepDownRow>(n);
        var stands = canopyMm;
        for (var i = 0; i < n; i++)
        {
            var cut = i == n - 1 ? cutMm : (1 - high) * stands;
            rows.Add(new(stands, cut));
            stands = cut + growthMm;
        }
        return rows;

        double After(double s, int mowings)
        {
            var c = (1 - s) * canopyMm;
            for (var i = 1; i < mowings; i++) c = (1 - s) * (c + growthMm);
            return c;
        }
    }
}
