using Closemown.Height;

namespace Closemown.Advice;

/// <summary>The question for the next step in setting the height, with all that its answer depends on besides the book.</summary>
/// <param name="Unit">The cutting unit.</param>
/// <param name="Now">When it is asked.</param>
/// <param name="BenchMm">The bench height wanted, as the unit's gauge reads it, mm; null where a cut is wanted.</param>
/// <param name="CutMm">The cut wanted, mm; null where a bench height is.</param>
/// <param name="Area">The area it is cut on; null for the one last mown.</param>
/// <param name="TolMm">How far off either side may be, mm.</param>
/// <param name="Probability">How sure it must be that both are within it.</param>
public sealed record AimQuestion(
    string Unit, DateTimeOffset Now, double? BenchMm, double? CutMm = null, string? Area = null, double TolMm = HeightAim.DefaultTolMm, double Probability = HeightAim.DefaultProbability)
{
    /// <summary>What is to be set on the bench.</summary>
    public HeightAim Aim(HeightBelief belief) => BenchMm is { } bench ? HeightAim.Of(bench, TolMm, Probability) : HeightAim.ForCut(belief, CutMm!.Value, Area, TolMm, Probability);
}
