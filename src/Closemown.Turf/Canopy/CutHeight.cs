namespace Closemown.Turf;

/// <summary>What a mowing is expected to have left, before the turf says anything.</summary>
/// <param name="Mm">The height, mm.</param>
/// <param name="SdMm">How far off it may be, the same at every mowing with that unit, mm.</param>
public readonly record struct CutHeight(double Mm, double SdMm);
