namespace Closemown.Estimation;

/// <summary>Limits and choices of a solution.</summary>
public sealed record SolveOptions
{
    /// <summary>The form asked for: <see cref="EstimateKind.ExpectationPropagation"/> (the default) or <see cref="EstimateKind.Laplace"/>.</summary>
    /// <remarks>A model of Gaussian factors alone is exact and comes out as <see cref="EstimateKind.Gaussian"/> under either.</remarks>
    public EstimateKind Method { get; init; } = EstimateKind.ExpectationPropagation;

    /// <summary>Newton steps at most; at least 1.</summary>
    public int MaxNewtonSteps { get; init; } = 100;

    /// <summary>Moment-matching sweeps at most; at least 1.</summary>
    public int MaxSweeps { get; init; } = 400;

    /// <summary>Sweeps stop when every reading's matched mean (in its predictor's sd) and variance (as a share) is this close; positive.</summary>
    public double SweepTolerance { get; init; } = 1e-10;

    /// <summary>The spread of every interval of group g is multiplied by the g-th number (positive, finite); groups beyond it, and all when null, keep theirs.</summary>
    public double[]? SpreadByGroup { get; init; }

    /// <summary>Spreads by factor index that take the place of the model's own for this solution (the group no longer counts); null for none.</summary>
    /// <remarks>
    /// Infinity leaves an interval out, as if it had never been read: it adds 0 to the evidence. Gaussian factors stay normalised under
    /// their new spread, so evidences of rival spreads can be compared.
    /// </remarks>
    public IReadOnlyDictionary<int, double>? SpreadOf { get; init; }

    /// <summary>Whether readings of the very same predictor have one site between them; false only to see what that changes.</summary>
    internal bool JoinsRepeats { get; init; } = true;

    internal SolveOptions Checked()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(MaxNewtonSteps, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(MaxSweeps, 1);
        if (!(SweepTolerance > 0)) throw new ArgumentOutOfRangeException(nameof(SweepTolerance), SweepTolerance, "The sweep tolerance must be positive.");
        return this;
    }
}
