namespace Closemown.Estimation;

/// <summary>How a posterior was reached.</summary>
public enum EstimateKind
{
    /// <summary>All factors are Gaussian: exact.</summary>
    Gaussian,

    /// <summary>The most probable values with their curvature.</summary>
    Laplace,

    /// <summary>Matched moments: means and variances of what the readings leave.</summary>
    ExpectationPropagation,
}
