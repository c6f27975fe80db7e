namespace Closemown.Height;

/// <summary>One input of an uncertainty budget.</summary>
/// <param name="What">What it is.</param>
/// <param name="U">Its standard uncertainty, as it arrives at the result, in the result's unit.</param>
/// <param name="Freedom">Its degrees of freedom; infinity where it is taken as known.</param>
public readonly record struct BudgetLine(string What, double U, double Freedom)
{
    /// <summary>A value that lies anywhere within ± <paramref name="halfWidth"/>: u = half width/√3 (GUM 4.3.7).</summary>
    public static BudgetLine Even(string what, double halfWidth, double sensitivity = 1, double freedom = double.PositiveInfinity) =>
        new(what, Math.Abs(sensitivity) * halfWidth / Math.Sqrt(3), freedom);
}

/// <summary>Independent uncertainties put together.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), 5.1.2 for the sum of squares, G.4 for the effective degrees of freedom (Welch and Satterthwaite); checked against H.1.</remarks>
public sealed record UncertaintyBudget(IReadOnlyList<BudgetLine> Lines)
{
    /// <summary>Combined standard uncertainty: √Σu².</summary>
    public double Combined => Math.Sqrt(Lines.Sum(l => l.U * l.U));

    /// <summary>u⁴/Σ(uᵢ⁴/νᵢ); infinity where all inputs are taken as known.</summary>
    public double EffectiveFreedom => Math.Pow(Combined, 4) / Lines.Sum(l => Math.Pow(l.U, 4) / l.Freedom);

    /// <summary>Half the width of the interval that holds a share of what may be meant: t(p, ν rounded down)·u (G.4.1).</summary>
    /// <param name="share">The share, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is out of range, or there is less than one degree of freedom.</exception>
    public double Expanded(double share)
    {
        if (!(share > 0 && share < 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1.");
        var freedom = Math.Floor(EffectiveFreedom);
        ArgumentOutOfRangeException.ThrowIfLessThan(freedom, 1);
        // Beyond a million degrees of freedom t is the normal distribution to more digits than anyone reads.
        return IncompleteBeta.TWithin(share, Math.Min(freedom, 1e6)) * Combined;
    }
}
