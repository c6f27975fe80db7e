using System.Globalization;
using System.Text;

namespace Closemown.Entries;

/// <summary>Signs that a text may not hold: those that steer a screen, and in a name those that nobody sees.</summary>
/// <remarks>
/// Bidirectional controls are those of Unicode Standard Annex 9, section 2: embeddings, overrides and isolates let a text be shown in
/// another order than it is written. The joiners U+200C and U+200D are let through: scripts and pictures need them.
/// </remarks>
public static class TextSigns
{
    /// <summary>What is wrong with a note or another free text; null where nothing is.</summary>
    /// <param name="text">The text.</param>
    /// <param name="lines">Whether it may hold line breaks and tabs.</param>
    public static string? Steering(string text, bool lines)
    {
        ArgumentNullException.ThrowIfNull(text);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (lines && c is '\n' or '\t') continue;
            if (char.IsControl(c)) return $"It holds the control character {Code(c)} (at character {i + 1}).";
            if (IsBidi(c)) return $"It holds {Code(c)}, which turns the order of what follows (at character {i + 1}).";
        }
        return null;
    }

    /// <summary>What is wrong with a name; null where nothing is.</summary>
    public static string? Hidden(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (Steering(name, lines: false) is { } steering) return steering;
        var (at, seen) = (0, false);
        foreach (var rune in name.EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(rune);
            if (category is UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
                || (category is UnicodeCategory.Format && rune.Value is not (0x200C or 0x200D)))
                return $"It holds {Code(rune.Value)}, which nobody sees (at character {at + 1}).";
            seen |= category is not (UnicodeCategory.Format or UnicodeCategory.SpaceSeparator or UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark);
            at += rune.Utf16SequenceLength;
        }
        return seen ? null : "Nothing of it can be seen.";
    }

    private static bool IsBidi(char c) => c is >= '\u202A' and <= '\u202E' or >= '\u2066' and <= '\u2069';

    private static string Code(int c) => "U+" + c.ToString("X4", CultureInfo.InvariantCulture);
}
