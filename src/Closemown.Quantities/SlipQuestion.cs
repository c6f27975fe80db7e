namespace Closemown.Quantities;

/// <summary>A value that may have been meant.</summary>
/// <param name="Value">In the base unit of the range.</param>
/// <param name="Written">How it would be written: <c>0.0007 in</c>.</param>
/// <param name="Reading">What was then meant, in words: "a tenth of it: 17.8 µm (0.7 thou)".</param>
/// <param name="Slip">The slip that explains it.</param>
public sealed record SlipCandidate(double Value, string Written, string Reading, UnitSlipKind Slip);

/// <summary>What to ask about an implausible value before it is kept.</summary>
/// <param name="Why">Why it is asked, in words.</param>
/// <param name="Candidates">Values that may have been meant, likeliest first; empty when none is plausible.</param>
public sealed record SlipQuestion(string Why, IReadOnlyList<SlipCandidate> Candidates);
