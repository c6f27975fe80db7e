namespace Closemown.Turf;

/// <summary>What water a root zone holds for the turf.</summary>
/// <remarks>
/// FAO-56 eq. 82 and 83: TAW = 1000·(θFC − θWP)·Zr, RAW = p·TAW, with Zr in m; here the depth is in mm, so the factor falls away. The paper's turf roots 0.5 to 1.0 m
/// deep; those of close-mown turf reach 0.05 to 0.2 m, so the depth is the person's own. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and
/// Drainage Paper 56.
/// </remarks>
/// <example>Sand, 0.16 and 0.04, roots 120 mm, p 0.4: TAW 14.4 mm, RAW 5.76 mm.</example>
public sealed record RootZone
{
    /// <summary>Describes it.</summary>
    /// <param name="fieldCapacity">Water that stays after draining θFC, share of volume, above the wilting point, to 1.</param>
    /// <param name="wiltingPoint">Water left at wilting θWP, share of volume, 0 to 1.</param>
    /// <param name="rootMm">Depth of the roots, mm, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public RootZone(double fieldCapacity, double wiltingPoint, double rootMm)
    {
        MustHold(fieldCapacity, wiltingPoint);
        Must.BePositive(rootMm);
        (FieldCapacity, WiltingPoint, RootMm) = (fieldCapacity, wiltingPoint, rootMm);
    }

    /// <summary>Water that stays after draining, share of volume.</summary>
    public double FieldCapacity { get; }

    /// <summary>Water left at wilting, share of volume.</summary>
    public double WiltingPoint { get; }

    /// <summary>Depth of the roots, mm.</summary>
    public double RootMm { get; }

    /// <summary>Total available water TAW, mm (eq. 82).</summary>
    public double TotalMm => (FieldCapacity - WiltingPoint) * RootMm;

    /// <summary>Readily available water RAW, mm (eq. 83): what may go before the turf feels it.</summary>
    /// <param name="fraction">Depletion fraction p, 0 to 1: <see cref="DepletionFraction"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public double ReadyMm(double fraction)
    {
        Must.Lie(fraction, 0, 1);
        return fraction * TotalMm;
    }

    /// <summary>Water of the soil at a depletion, share of volume.</summary>
    /// <param name="depletionMm">Depletion, mm, 0 to the total.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public double WaterAt(double depletionMm)
    {
        Must.Lie(depletionMm, 0, TotalMm);
        return FieldCapacity - (depletionMm / RootMm);
    }

    internal static void MustHold(double fieldCapacity, double wiltingPoint)
    {
        Must.Lie(wiltingPoint, 0, 1);
        Must.Lie(fieldCapacity, 0, 1);
        if (fieldCapacity <= wiltingPoint) throw new ArgumentOutOfRangeException(nameof(fieldCapacity), fieldCapacity, $"Field capacity lies above the wilting point, {Text.N(wiltingPoint)}.");
    }
}
