namespace Closemown.Entries;

/// <summary>The form a field's value takes in JSON.</summary>
public enum FieldForm
{
    /// <summary>A number.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>A number in whole or half steps.</summary>
    HalfSteps,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>One word out of a list.</summary>
    Word,

    /// <summary>Free text.</summary>
    Text,

    /// <summary>A list of words out of a list.</summary>
    Words,

    /// <summary>A list of free texts.</summary>
    Texts,

    /// <summary>A list of numbers of a given count.</summary>
    Numbers,

    /// <summary>A number, or a list of numbers (one a spot).</summary>
    NumberOrNumbers,

    /// <summary>A civil date, yyyy-mm-dd.</summary>
    Date,

    /// <summary>A list of civil dates.</summary>
    Dates,

    /// <summary>An object with goUm and/or noGoUm.</summary>
    GoNoGo,

    /// <summary>An object of name: [mean, sd].</summary>
    Priors,
}

/// <summary>One field of a kind of entry: its name in the contract, its form and its valid range.</summary>
/// <remarks>The same table drives reading, the command line, the published schema and the docs.</remarks>
public abstract record FieldSpec(string Name, FieldForm Form, string Help)
{
    /// <summary>Whether an entry without it is refused.</summary>
    public bool Required { get; init; }

    /// <summary>Whether it is only kept in the record: no model reads it.</summary>
    public bool Kept { get; init; }

    /// <summary>Smallest value taken at all, in the unit of the name.</summary>
    public double Low { get; init; } = double.NegativeInfinity;

    /// <summary>Largest value taken at all, in the unit of the name.</summary>
    public double High { get; init; } = double.PositiveInfinity;

    /// <summary>The words it may be; empty for other forms.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>How many numbers a list must have; 0 for any.</summary>
    public int Count { get; init; }
}
