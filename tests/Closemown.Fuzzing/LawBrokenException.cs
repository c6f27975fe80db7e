namespace Closemown.Fuzzing;

/// <summary>A reader did not keep one of its laws.</summary>
/// <param name="law">The law; the same words for every input that breaks it.</param>
/// <param name="seen">What was seen instead.</param>
public sealed class LawBrokenException(string law, string seen) : Exception($"{law}: {seen}")
{
    /// <summary>The law.</summary>
    public string Law { get; } = law;
}
