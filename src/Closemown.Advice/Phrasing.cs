using System.Globalization;
using System.Text;
using Closemown.Quantities;

namespace Closemown.Advice;

/// <summary>Puts the person's own words and units into a sentence of the advice.</summary>
/// <remarks>A sentence has places in braces: {reel}, {mm:4.25}, {n:0.5}. What a person typed goes into it through <see cref="AsTyped"/>, so that
/// a brace in it is no place.</remarks>
public sealed class Phrasing(WritingStyle style, string step = "click")
{
    /// <summary>Sentences as programs read them: US words, µm.</summary>
    public static Phrasing Plain { get; } = new(WritingStyle.Plain);

    /// <summary>Whether commands to type are said; not where nothing can be typed, as on a page.</summary>
    public bool Commands { get; init; } = true;

    /// <summary>The part of a sentence that names a command to type, told only where it can be typed.</summary>
    public static string Typed(string part) => $"{{typed:{part}}}";

    /// <summary>What a person typed (a name, a label), to be put into a sentence: it comes out as it was typed.</summary>
    public static string AsTyped(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Replace("{", "{{", StringComparison.Ordinal);
    }

    /// <summary>The place of a bare number, which is said with the person's decimal sign.</summary>
    /// <param name="value">The number.</param>
    /// <param name="format">How many decimals: "0.##".</param>
    public static string Number(double value, string format) => $"{{n:{value.ToString(format, CultureInfo.InvariantCulture)}}}";

    /// <summary>The sentence with its places filled in; what is no place stays as it is.</summary>
    public string Say(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        if (!sentence.Contains('{', StringComparison.Ordinal)) return sentence;
        var said = new StringBuilder(sentence.Length + 16);
        var at = 0;
        while (sentence.IndexOf('{', at) is var open and >= 0)
        {
            said.Append(sentence, at, open - at);
            if (open + 1 < sentence.Length && sentence[open + 1] == '{')
            {
                said.Append('{');
                at = open + 2;
                continue;
            }
            var close = sentence.IndexOf('}', open);
            var word = close < 0 ? null : Word(sentence[(open + 1)..close]);
            said.Append(word ?? "{");
            at = word is null ? open + 1 : close + 1;
        }
        return said.Append(sentence, at, sentence.Length - at).ToString();
    }

    /// <summary>What stands at a place; null where it is none.</summary>
    private string? Word(string place) => place switch
    {
        "reel" => Words.For(style, WordKey.Reel),
        "bedknife" => Words.For(style, WordKey.Bedknife),
        "gap" => Words.For(style, WordKey.Clearance),
        "bluntness" => Words.For(style, WordKey.Edge),
        "centre" => Words.For(style, WordKey.Centre),
        "lap" => Words.For(style, WordKey.Lap),
        "Lap" => Capital(Words.For(style, WordKey.Lap)),
        "step" => step,
        _ when Measured(place, "gap:") is { } gap => LengthPrinting.SaidGap(gap, style),
        _ when Measured(place, "off:") is { } off => LengthPrinting.SaidSpread(off, style),
        _ when Measured(place, "near:") is { } near => Near(LengthPrinting.HandyHeight(near, style)),
        _ when Measured(place, "stands:") is { } stands => Near(LengthPrinting.StandingHeight(stands, style)),
        _ when Measured(place, "degrees:") is { } degrees => TurfPrinting.Warmth(degrees, style),
        _ when Measured(place, "grown:") is { } grown => Near(Math.Round(grown, 2)),
        _ when Measured(place, "water:") is { } water => TurfPrinting.Water(water, style),
        _ when Measured(place, "feed:") is { } feed => TurfPrinting.Feed(feed, style),
        _ when Measured(place, "um:") is { } um => LengthPrinting.Gap(um, style),
        _ when Measured(place, "mm:") is { } mm => Height(mm),
        _ when place.StartsWith("typed:", StringComparison.Ordinal) => Commands ? place["typed:".Length..] : "",
        _ when place.StartsWith("n:", StringComparison.Ordinal) => place[2..].Replace('.', style.DecimalSign),
        _ => null,
    };

    private static double? Measured(string place, string measure) =>
        place.StartsWith(measure, StringComparison.Ordinal) && double.TryParse(place.AsSpan(measure.Length), NumberStyles.Float, CultureInfo.InvariantCulture, out var x) ? x : null;

    /// <summary>Settings are read to a few hundredths of a millimetre, for which fractions of an inch are too coarse.</summary>
    private string Height(double mm) => Length.Print(Math.Round(mm, 2), style.Height == HeightUnit.Mm ? LengthUnit.Mm : LengthUnit.Inch, style);

    /// <summary>What is only about so: in inches to a thousandth.</summary>
    private string Near(double mm) => style.Height == HeightUnit.Mm ? Length.Print(Math.Round(mm, 2), LengthUnit.Mm, style) : Length.Print(mm, LengthUnit.Inch, style, 3);

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
