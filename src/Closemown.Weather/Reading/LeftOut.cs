namespace Closemown.Weather;

/// <summary>Values of one field that were read and not taken.</summary>
/// <param name="Field">The field's name in an entry.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="CanBe">Whether such a value can be, and is only not plausible: then the person may say that it is meant.</param>
public sealed record LeftOut(string Field, string Unit, bool CanBe)
{
    /// <summary>How many are kept to show.</summary>
    public const int Shown = 3;

    private readonly List<(DateOnly Date, double Value, int Line)> first = [];

    /// <summary>How many there are.</summary>
    public int Count { get; private set; }

    /// <summary>The first few by day: the day, the value in the entry's unit, and the line it stood in.</summary>
    public IReadOnlyList<(DateOnly Date, double Value, int Line)> First => first;

    internal void Add(DateOnly date, double value, int line)
    {
        Count++;
        if (first.Count < Shown) first.Add((date, value, line));
    }
}
