using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>The share of its variance that a repeat of a check has in common with the first: learned within bounds from the repeats of a unit, on a small grid.</summary>
/// <remarks>Each repeat weighs the shares by how probable they made it, given those before it. Without repeats it stays at its starting value.</remarks>
internal sealed class RepeatShare
{
    private const double Spread = 0.1;                   // of the starting value: an assumption, no source
    private static readonly double[] Shares = [0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 0.95];
    private readonly double? told;
    private readonly double[] log = Array.ConvertAll(Shares, s => -0.5 * Math.Pow((s - SteelDefaults.RepeatShare) / Spread, 2));

    /// <param name="told">The share where the person set it, which is then kept; null to learn it.</param>
    public RepeatShare(double? told) => this.told = told is { } share ? Math.Clamp(share, 0, Shares[^1]) : null;

    /// <summary>Mean of what is known, 0 to 0.95.</summary>
    public double Mean
    {
        get
        {
            if (told is { } share) return share;
            var weights = LogWeights.Shares(log);
            return Shares.Zip(weights, (s, w) => s * w).Sum();
        }
    }

    /// <summary>Takes a repeat in.</summary>
    /// <param name="probability">How probable it was given those before it, under a share.</param>
    public void Learn(Func<double, double> probability)
    {
        if (told is not null) return;
        for (var i = 0; i < Shares.Length; i++) log[i] += Math.Log(Math.Max(1e-300, probability(Shares[i])));
    }
}
