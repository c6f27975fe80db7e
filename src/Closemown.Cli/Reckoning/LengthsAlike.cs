using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Lengths of which only the ratio counts: bare numbers, or any units of length. What has no unit is in that of the first that has one.</summary>
internal sealed class LengthsAlike
{
    /// <summary>Reads them.</summary>
    /// <param name="typed">The names and texts.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <exception cref="CliFault">A text is no length.</exception>
    public LengthsAlike(IReadOnlyList<(string Name, string Text)> typed, WritingStyle style)
    {
        LengthUnit? unit = null;
        foreach (var (_, text) in typed)
        {
            if (!Number.TryParse(text, style, NumberUnit.One, out _, out _) && Length.TryParse(text, style, null, out var first, out _)) unit ??= first.Unit;
        }
        Unit = unit is { } u ? Length.Symbol(u) : "";
        Values = [.. typed.Select(t => Read(t.Name, t.Text, style, unit))];
    }

    /// <summary>The unit they are all in; empty for bare numbers.</summary>
    public string Unit { get; }

    /// <summary>The values in that unit.</summary>
    public IReadOnlyList<double> Values { get; }

    private static double Read(string name, string text, WritingStyle style, LengthUnit? unit)
    {
        ParseFault? fault;
        if (unit is { } u)
        {
            if (Length.TryParse(text, style, u, out var length, out fault)) return length.In(u);
        }
        else if (Number.TryParse(text, style, NumberUnit.One, out var number, out fault)) return number.Value;
        throw CliFault.Refused($"{name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
    }
}
