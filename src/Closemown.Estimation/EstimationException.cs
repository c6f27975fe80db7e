namespace Closemown.Estimation;

/// <summary>The entries do not determine an answer, or contradict each other beyond what numbers can hold.</summary>
/// <remarks>The message names the variable (or the reading), the cause, and the reading that would cure it.</remarks>
public sealed class EstimationException : Exception
{
    /// <summary>An error without parts; use the three-part form where the variable is known.</summary>
    public EstimationException() : this("The estimate failed.") { }

    /// <summary>An error with its message alone.</summary>
    public EstimationException(string message) : base(message) { }

    /// <summary>An error with its message and what raised it.</summary>
    public EstimationException(string message, Exception inner) : base(message, inner) { }

    internal EstimationException(string variable, string cause, string cure)
        : base($"{variable} {cause}: {cure}") => (Variable, Cause, Cure) = (variable, cause, cure);

    /// <summary>What is not determined, such as "state 'clearance left' at step 3".</summary>
    public string Variable { get; } = "";

    /// <summary>Why, such as "is tied to nothing (no prior and no reading)".</summary>
    public string Cause { get; } = "";

    /// <summary>What would cure it, such as "add a starting value for it or a reading that sees it".</summary>
    public string Cure { get; } = "";
}
