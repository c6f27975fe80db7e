using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>A reading that was not like this unit.</summary>
/// <param name="Entry">The reading.</param>
/// <param name="Surprise">The probability, before it was seen, of a reading at least this odd.</param>
public sealed record UnusualReading(Entry Entry, double Surprise)
{
    /// <summary>What may lie behind it, the most probable first; weighed again with each reading that follows, while it is among the latest entries.</summary>
    public IReadOnlyList<Explanation> Explanations { get; internal set; } = [];
}
