namespace Closemown.Typing;

/// <summary>What a person typed cannot be read: what is wrong with it, and what to write instead.</summary>
/// <param name="message">What is wrong, with what was typed.</param>
/// <param name="remedy">What to write instead; may have several lines.</param>
public class TypedFault(string message, string remedy) : Exception(message)
{
    /// <summary>What to write instead.</summary>
    public string Remedy { get; } = remedy;
}
