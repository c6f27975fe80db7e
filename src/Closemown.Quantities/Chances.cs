using System.Globalization;

namespace Closemown.Quantities;

/// <summary>Chances as people say them: the one place for their words. Nothing is ever told as certain.</summary>
public static class Chances
{
    /// <summary>The chance in a word, from "almost sure" down to "hardly likely".</summary>
    /// <param name="p">The chance, 0 to 1.</param>
    public static string Word(double p) => p switch
    {
        >= 0.95 => "almost sure",
        >= 0.8 => "very likely",
        >= 0.6 => "likely",
        >= 0.4 => "about even",
        >= 0.2 => "unlikely",
        >= 0.05 => "very unlikely",
        _ => "hardly likely",
    };

    /// <summary>"likely to be", with what it is said of after it: "it is likely to be in tolerance".</summary>
    /// <param name="p">The chance, 0 to 1.</param>
    public static string ToBe(double p) => Word(p) is var word && word == "about even" ? "as likely as not to be" : $"{word} to be";

    /// <summary>"94 in 100", at most 99.</summary>
    /// <param name="p">The chance, 0 to 1.</param>
    public static string InHundred(double p) =>
        p < 0.005 ? "less than 1 in 100" : $"{Math.Min(99, Math.Round(p * 100)).ToString(CultureInfo.InvariantCulture)} in 100";

    /// <summary>In a word and a number: "likely, 72 in 100".</summary>
    /// <param name="p">The chance, 0 to 1.</param>
    public static string Both(double p) => $"{Word(p)}, {InHundred(p)}";
}
