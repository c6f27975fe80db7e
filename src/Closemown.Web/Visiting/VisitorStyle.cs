using Closemown.Quantities;
using Closemown.Serving;

namespace Closemown.Web;

/// <summary>A way of writing by the names that settings have: words us or uk, gap um, thou or hundredth, height mm, inch or fraction, decimal point or comma.</summary>
internal static class VisitorStyle
{
    /// <summary>The program's own settings: what a visitor gets who has chosen nothing.</summary>
    public static WritingStyle Usual(ServeOptions options) => Of(options.Words, options.Gap, options.Height, options.DecimalSign);

    public static WritingStyle Of(string words, string gap, string height, string decimalSign) => new()
    {
        Words = words == "uk" ? Wording.UK : Wording.US,
        Gap = gap switch { "thou" => GapUnit.Thou, "hundredth" => GapUnit.HundredthMm, _ => GapUnit.Micrometre },
        Height = height switch { "inch" => HeightUnit.InchDecimal, "fraction" => HeightUnit.InchFraction, _ => HeightUnit.Mm },
        DecimalSign = decimalSign == "comma" ? ',' : '.',
    };
}
