using System.Text;

namespace Closemown.Fuzzing;

/// <summary>One reader that takes bytes or text from outside, and the laws it must keep whatever comes.</summary>
/// <param name="name">How it is named on the command line.</param>
public abstract class FuzzTarget(string name)
{
    /// <summary>How it is named on the command line.</summary>
    public string Name { get; } = name;

    /// <summary>Good inputs, from which others are made.</summary>
    public abstract IReadOnlyList<byte[]> Seeds { get; }

    /// <summary>Pieces that mean something to it.</summary>
    public virtual IReadOnlyList<byte[]> Words => Vocabulary.Common;

    /// <summary>The longest input made for it, in bytes.</summary>
    public virtual int Longest => 4096;

    /// <summary>How much of the time it gets, against 1 of a cheap one.</summary>
    public virtual int Weight => 1;

    /// <summary>Gives it one input; the same input must always do the same.</summary>
    /// <param name="input">Any bytes.</param>
    /// <exception cref="LawBrokenException">A law was broken. Any other exception is a fault too.</exception>
    public abstract void Run(byte[] input);

    /// <summary>Texts as bytes.</summary>
    protected static IReadOnlyList<byte[]> Bytes(IEnumerable<string> texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];

    public override string ToString() => Name;
}
