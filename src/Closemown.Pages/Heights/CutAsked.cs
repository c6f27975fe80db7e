using Closemown.Quantities;

namespace Closemown.Pages.Heights;

/// <summary>A height that somebody asks for, as typed.</summary>
/// <param name="Typed">What was typed; empty for nothing.</param>
/// <param name="Mm">The height, mm; null where nothing was typed or it could not be read.</param>
/// <param name="Fault">Why it could not be read, with the remedy; else null.</param>
public readonly record struct CutAsked(string Typed, double? Mm, string? Fault)
{
    private const double LeastMm = 0.5, MostMm = 150;

    /// <summary>Reads a height: a bare number is in the reader's unit of heights.</summary>
    /// <param name="text">What was typed; null or blank for nothing.</param>
    /// <param name="style">The reader's way of writing.</param>
    public static CutAsked Of(string? text, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        if (string.IsNullOrWhiteSpace(text)) return new("", null, null);
        if (!Length.TryParse(text, style, style.Height == HeightUnit.Mm ? LengthUnit.Mm : LengthUnit.Inch, out var length, out var fault)) return new(text.Trim(), null, $"{fault.Message} {fault.Remedy}");
        return length.Mm is >= LeastMm and <= MostMm ? new(text.Trim(), length.Mm, null)
            : new(text.Trim(), null, $"{Length.Print(length.Mm, LengthUnit.Mm, style)} is no height to mow at. Write one from {Length.Print(LeastMm, LengthUnit.Mm, style)} to {Length.Print(MostMm, LengthUnit.Mm, style)}.");
    }
}
