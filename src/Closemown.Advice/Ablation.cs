namespace Closemown.Advice;

/// <summary>Parts that can be taken out of the advice, to measure what each is good for; never for use at the bench.</summary>
[Flags]
public enum Ablation
{
    None = 0,

    /// <summary>Contact is never offered.</summary>
    Contact = 1,

    /// <summary>Laps are never offered.</summary>
    Laps = 2,

    /// <summary>Odd readings are taken like any other.</summary>
    Surprise = 4,

    /// <summary>Decides on the mean as if it were known.</summary>
    Spread = 8,

    /// <summary>The person's scatter is not learned.</summary>
    Scatter = 16,
}
