using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>One step of the canopy's chain.</summary>
internal sealed class CanopyStep() : ChainStep<CanopyStep>(CanopyLayout.StateSize, CanopyLayout.ConstantCount, Still)
{
    private const double Still = 1e-4;
}
