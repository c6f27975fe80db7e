using System.Text.RegularExpressions;

namespace Closemown.Cli;

/// <summary>What a soil test found: "P 20", "K60", "Mg: 110 mg/kg".</summary>
internal static partial class ElementWords
{
    /// <summary>Takes an element and its number from the words at a place.</summary>
    /// <returns>How many words were used; 0 for none.</returns>
    public static int Take(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        if (!entry.Kind.OtherFieldsAreNumbers) return 0;
        if (Together().Match(words[at]) is { Success: true } m)
        {
            entry.SetOther(m.Groups[1].Value, m.Groups[2].Value);
            return 1;
        }
        if (words[at] is "mg/kg" or "ppm") return 1;
        var name = words[at].TrimEnd(':');
        if (at + 1 >= words.Count || !name.All(char.IsLetter) || !Amounts.IsNumber(words[at + 1])) return 0;
        entry.SetOther(name, words[at + 1]);
        return 2;
    }

    [GeneratedRegex(@"^([A-Z][a-z]?):?(\d[\d.,]*(?:mg/kg|ppm)?)$")]
    private static partial Regex Together();
}
