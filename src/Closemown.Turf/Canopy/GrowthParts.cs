namespace Closemown.Turf;

/// <summary>What some days would grow, mm a unit of each constant.</summary>
/// <param name="Growth">Of growth at its best.</param>
/// <param name="Fed">Of the response to nitrogen.</param>
/// <param name="Wide">Of growth beside the bell.</param>
/// <param name="Dry">Of growth on dry soil.</param>
internal readonly record struct GrowthParts(double Growth, double Fed, double Wide, double Dry);
