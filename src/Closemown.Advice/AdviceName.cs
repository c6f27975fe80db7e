namespace Closemown.Advice;

/// <summary>What an advice's id says.</summary>
/// <param name="Count">How many entries the book held.</param>
/// <param name="Sum">What an id tells of the sum of their marks; 0 in an older id.</param>
/// <param name="Chain">In an older id the start of the book's hash by arrival; null in others.</param>
/// <param name="Step">What was advised, in short; null in an older id.</param>
/// <param name="Steel">The question, where it was for the steel.</param>
/// <param name="Setting">The question, where it was for setting a height.</param>
public sealed record AdviceName(int Count, ulong Sum, string? Chain, AdviceStep? Step, NextQuestion? Steel, AimQuestion? Setting)
{
    /// <summary>The unit that the advice is about.</summary>
    public string Unit => Steel?.Unit ?? Setting!.Unit;
}
