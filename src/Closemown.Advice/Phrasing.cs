using System.Globalization;
using System.Text;
using Closemown.Quantities;

namespace Closemown.Advice;

/// <summary>Puts the person's own words and units into a sentence of the advice.</summary>
public sealed class Phrasing(WritingStyle style, string step = "click")
{
    /// <summary>Sentences as programs read them: US words, µm.</summary>
    public static Phrasing Plain { get; } = new(WritingStyle.Plain);

    /// <summary>The sentence with its places filled in.</summary>
    /// <exception cref="FormatException">The sentence has a place of no known name: a fault of the program.</exception>
    public string Say(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        if (!sentence.Contains('{', StringComparison.Ordinal)) return sentence;
        var said = new StringBuilder(sentence.Length + 16);
        var at = 0;
        while (sentence.IndexOf('{', at) is var open and >= 0)
        {
            var close = sentence.IndexOf('}', open);
            said.Append(sentence, at, open - at).Append(Word(sentence[(open + 1)..close]));
            at = close + 1;
        }
        return said.Append(sentence, at, sentence.Length - at).ToString();
    }

    private string Word(string place) => place switch
    {
        "reel" => Words.For(style, WordKey.Reel),
        "bedknife" => Words.For(style, WordKey.Bedknife),
        "gap" => Words.For(style, WordKey.Clearance),
        "bluntness" => Words.For(style, WordKey.Edge),
        "centre" => Words.For(style, WordKey.Centre),
        "lap" => Words.For(style, WordKey.Lap),
        "Lap" => Capital(Words.For(style, WordKey.Lap)),
        "step" => step,
        _ when place.StartsWith("um:", StringComparison.Ordinal) => LengthPrinting.Gap(double.Parse(place.AsSpan(3), CultureInfo.InvariantCulture), style),
        _ when place.StartsWith("mm:", StringComparison.Ordinal) => Height(double.Parse(place.AsSpan(3), CultureInfo.InvariantCulture)),
        _ => throw new FormatException($"Bug in Phrasing: no place {place}."),
    };

    /// <summary>Settings are read to a few hundredths of a millimetre, for which fractions of an inch are too coarse.</summary>
    private string Height(double mm) => Length.Print(Math.Round(mm, 2), style.Height == HeightUnit.Mm ? LengthUnit.Mm : LengthUnit.Inch, style);

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
