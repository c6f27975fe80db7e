namespace Closemown.Steel;

/// <summary>What a track learns besides the steel itself.</summary>
/// <param name="Rivals">Odd readings are noticed, and rival explanations weighed.</param>
/// <param name="Scatter">Each person's scatter is learned.</param>
public sealed record LearningOptions(bool Rivals = true, bool Scatter = true)
{
    public static LearningOptions All { get; } = new();
}
