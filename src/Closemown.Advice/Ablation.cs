namespace Closemown.Advice;

/// <summary>Parts of the advice that can be left out, to measure what each is worth.</summary>
[Flags]
public enum Ablation
{
    None = 0,

    /// <summary>Contact is never asked for.</summary>
    Contact = 1,

    /// <summary>Lapping is never advised.</summary>
    Laps = 2,

    /// <summary>Odd readings are taken like any other.</summary>
    Surprise = 4,

    /// <summary>Decides on the mean as if it were known.</summary>
    Spread = 8,

    /// <summary>The person's scatter is not learned.</summary>
    Scatter = 16,

    /// <summary>It may mow after a turn or lap without the strip.</summary>
    StripLast = 32,
}
