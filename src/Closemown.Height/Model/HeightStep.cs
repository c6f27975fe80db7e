using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>One step of the height's chain, mm.</summary>
internal sealed class HeightStep() : ChainStep<HeightStep>(HeightLayout.StateSize, HeightLayout.ConstantCount, StillMm)
{
    private const double StillMm = 2e-4;

    public HeightStep BothSides(double sdMm) => Noise(HeightLayout.Left, sdMm).Noise(HeightLayout.Right, sdMm);

    /// <summary>Forgets a state and gives it a new spread about zero.</summary>
    public HeightStep Renew(int state, double sdMm) => Keep(state, 0).Noise(state, sdMm);
}
