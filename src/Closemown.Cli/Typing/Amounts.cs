using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Puts a number and the unit typed after it together again: "20", "min" is "20 min"; a word that is no unit stays by itself.</summary>
internal static class Amounts
{
    private const int Longest = 5;
    private static readonly string[] NumberWords = ["half", "one", "two", "three", "four"];

    /// <summary>The words, with each amount in one.</summary>
    public static List<string> Join(KindSpec kind, WritingStyle style, IReadOnlyList<string> words)
    {
        var joined = new List<string>();
        for (var i = 0; i < words.Count;)
        {
            var n = StartsNumber(words[i]) ? Length(kind, style, words, i) : 1;
            joined.Add(string.Join(' ', words.Skip(i).Take(n)));
            i += n;
        }
        return joined;
    }

    /// <summary>Whether a word begins with a figure.</summary>
    public static bool IsNumber(string word) => word.Length > 0 && (char.IsDigit(word[0]) || word[0] is '½' or '¼' or '¾' || (word.Length > 1 && word[0] is '.' or ',' or '+' or '-' && (char.IsDigit(word[1]) || word[1] is '.' or ',')));

    /// <summary>Whether a word is a number and nothing else.</summary>
    public static bool IsBare(string word) => IsNumber(word) && word.All(c => char.IsDigit(c) || c is '.' or ',' or '+' or '-' or '/');

    /// <summary>The number fields of a kind that read a text.</summary>
    public static IEnumerable<FieldSpec> Readers(KindSpec kind, string text, WritingStyle style) =>
        kind.Fields.Where(f => f.Form is FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers or FieldForm.Numbers && NumberText.TryRead(f, text, style, out _, out _));

    private static bool StartsNumber(string word) => IsNumber(word) || NumberWords.Contains(word, StringComparer.OrdinalIgnoreCase);

    /// <summary>How many words from a place on are one amount of some field: the most that can be read.</summary>
    private static int Length(KindSpec kind, WritingStyle style, IReadOnlyList<string> words, int at)
    {
        for (var n = Math.Min(Longest, words.Count - at); n > 1; n--)
        {
            if (Readers(kind, string.Join(' ', words.Skip(at).Take(n)), style).Any()) return n;
        }
        return 1;
    }
}
