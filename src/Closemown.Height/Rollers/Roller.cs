namespace Closemown.Height;

/// <summary>A roller seen from the side: its axis and its radius, mm. x runs rearward, y upward, both in the unit's own frame.</summary>
/// <param name="XMm">Axis, along the way of travel, rearward +.</param>
/// <param name="YMm">Axis, upward +.</param>
/// <param name="RadiusMm">Radius, more than 0.</param>
public readonly record struct Roller(double XMm, double YMm, double RadiusMm);

/// <summary>Which roller's brackets the height screws move.</summary>
public enum ScrewedRoller
{
    Front,
    Rear,
}
