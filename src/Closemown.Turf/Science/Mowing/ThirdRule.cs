namespace Closemown.Turf;

/// <summary>The height to mow at so that no more than a share of it comes off.</summary>
/// <remarks>
/// canopy = cut/(1 − share): for a third 1.5 · cut, not cut and a third more, which takes a quarter. The rule rests on Crider 1955, USDA Technical Bulletin 1102, who measured
/// the share of leaf volume, not of height (as read by Woods 2015): advice, no limit. Exact by definition.
/// </remarks>
/// <example>A cut of 4 mm takes a third at 6 mm.</example>
public static class ThirdRule
{
    /// <summary>The share of the rule.</summary>
    public const double Share = 1.0 / 3;

    /// <summary>Standing height at which a cut takes the share, mm.</summary>
    /// <param name="cutMm">Height of cut, mm, above 0.</param>
    /// <param name="share">Share, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double CanopyMm(double cutMm, double share = Share)
    {
        Must.BePositive(cutMm);
        Must.Lie(share, 0, Math.BitDecrement(1));
        return cutMm / (1 - share);
    }
}
