using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>One step of the steel's chain, µm.</summary>
internal sealed class Step() : ChainStep<Step>(Layout.StateSize, Layout.ConstantCount, SteelDefaults.StillNoiseUm)
{
    /// <summary>Forgets a state and gives it a new mean and spread.</summary>
    public Step Reset(int state, Entries.Prior p) => Keep(state, 0).Add(state, p.Mean).Noise(state, p.Sd);
}
