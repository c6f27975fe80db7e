namespace Closemown.Bench.Workshop.Strategies;

/// <summary>In what manner a person uses Closemown.</summary>
internal sealed record GuidedManner
{
    /// <summary>Whether the unit is on the bench anyway when the question is asked.</summary>
    public bool AtBench { get; init; } = true;

    /// <summary>Whether both ends are felt and the strip fed in at three stations before the first question of every sitting.</summary>
    public bool FixedChecks { get; init; }

    /// <summary>Starting values other than the usual ones.</summary>
    public IReadOnlyList<(string Name, double Mean, double Sd)> Priors { get; init; } = [];
}
