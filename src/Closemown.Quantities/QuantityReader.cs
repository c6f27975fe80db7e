using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>What was read: the exact value in the base unit and the unit typed.</summary>
internal readonly record struct Reading<TUnit>(Exact Value, TUnit Unit, string UnitText) where TUnit : struct, Enum;

/// <summary>Reads a number and its unit against a table of units.</summary>
internal static class QuantityReader
{
    /// <summary>Longest text that is looked at, in characters.</summary>
    public const int LongestText = 1000;

    private static readonly (string Word, int Upper, int Lower)[] NumberWords =
    [
        ("half an", 1, 2), ("half a", 1, 2), ("a half", 1, 2), ("half", 1, 2), ("a quarter", 1, 4), ("quarter", 1, 4),
        ("an", 1, 1), ("a", 1, 1), ("no", 0, 1), ("one", 1, 1), ("two", 2, 1), ("three", 3, 1), ("four", 4, 1),
    ];

    public static bool TryRead<TUnit>(
        string text, WritingStyle style, UnitTable<TUnit> table, TUnit? defaultUnit, out Reading<TUnit> reading,
            [NotNullWhen(false)] out ParseFault? fault)
        where TUnit : struct, Enum
    {
        reading = default;
        if (!TryStart(text, table.Quantity, table.Example, out fault))
            return false;
        if (!TryNumber(text, 0, style, table.Quantity, table.Example, out Exact number, out int at, out _, out fault))
            return false;
        if (!TryUnit(text, at, text.Length, table, defaultUnit, out UnitRow<TUnit>? row, out fault))
            return false;
        if (!table.Signed && number.Numerator.Sign < 0)
        {
            fault = BelowZero(text, table.Quantity);
            return false;
        }

        Exact value = row.ToBase(number);
        if (!double.IsFinite(value.ToDouble()) || !double.IsFinite(number.ToDouble()))
        {
            fault = ParseFault.At(text, 0, text.Length, "The number is too large.", $"Write it like {table.Example}.");
            return false;
        }

        reading = new Reading<TUnit>(value, row.Unit, text[at..].Trim());
        return true;
    }

    /// <summary>Refuses what is empty or far too long.</summary>
    public static bool TryStart(string text, string quantity, string example, [NotNullWhen(false)] out ParseFault? fault)
    {
        fault = string.IsNullOrWhiteSpace(text)
            ? ParseFault.At(text, 0, text.Length, "Nothing was typed.", $"Write {Spelling.WithArticle(quantity)} like {example}.")
            : text.Length > LongestText
                ? ParseFault.At(text, LongestText, text.Length, "The text is too long.",
                    $"Write {Spelling.WithArticle(quantity)} like {example}.")
                : null;
        return fault is null;
    }

    /// <summary>Reads a number in figures or a small one in words.</summary>
    public static bool TryNumber(
        string text, int start, WritingStyle style, string quantity, string example, out Exact number, out int at,
            out NumberReader reader, [NotNullWhen(false)] out ParseFault? fault)
    {
        reader = new NumberReader(text, start, style.DecimalSign);
        bool found = reader.TryRead(out number, out fault);
        at = reader.At;
        if (found || fault is not null)
            return found;
        ReadOnlySpan<char> rest = text.AsSpan(at);
        foreach ((string word, int upper, int lower) in NumberWords)
        {
            if (rest.StartsWith(word, StringComparison.OrdinalIgnoreCase) && rest.Length > word.Length
                && char.IsWhiteSpace(rest[word.Length]))
            {
                number = Exact.Of(upper, lower);
                at += word.Length;
                return true;
            }
        }

        int end = Word(text, at);
        fault = ParseFault.At(text, at, end - at, "A number is missing here.", $"Write {Spelling.WithArticle(quantity)} like {example}.");
        return false;
    }

    /// <summary>Looks up the unit between two places in the text, or takes the default where nothing stands.</summary>
    public static bool TryUnit<TUnit>(
        string text, int at, int end, UnitTable<TUnit> table, TUnit? defaultUnit, [NotNullWhen(true)] out UnitRow<TUnit>? row,
            [NotNullWhen(false)] out ParseFault? fault)
        where TUnit : struct, Enum
    {
        row = null;
        fault = null;
        string unit = text[at..end].Trim();
        if (unit.Length == 0)
        {
            if (defaultUnit is { } known)
            {
                row = table[known];
                return true;
            }

            fault = ParseFault.At(text, text.TrimEnd().Length - 1, 1, "The unit is missing.",
                $"Write {Spelling.WithArticle(table.Quantity)} like {table.Example}.");
            return false;
        }

        row = table.Find(unit);
        if (row is not null)
            return true;
        int start = text.IndexOf(unit, at, StringComparison.Ordinal);
        (string message, string remedy) = UnitHints.For(unit, table);
        fault = ParseFault.At(text, start, unit.Length, message, remedy);
        return false;
    }

    public static ParseFault BelowZero(string text, string quantity) =>
        ParseFault.At(text, text.Length - text.TrimStart().Length, 1, $"This {quantity} cannot be below zero.", "Leave the minus out.");

    private static int Word(string text, int at)
    {
        int end = at;
        while (end < text.Length && !char.IsWhiteSpace(text[end]))
            end++;
        return end;
    }
}
