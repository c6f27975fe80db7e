using System.Globalization;
using Closemown.Quantities;
using Closemown.Steel;

namespace Closemown.Cli;

/// <summary>Small lengths as numbers in the person's unit of the gap, for tables and axes.</summary>
internal sealed class GapText(WritingStyle style)
{
    /// <summary>How many µm the person's unit has.</summary>
    public double UmPerUnit => style.Gap switch { GapUnit.Thou => 25.4, GapUnit.HundredthMm => 10, _ => 1 };

    public string Unit => style.Gap switch { GapUnit.Thou => "thou", GapUnit.HundredthMm => "1/100 mm", _ => "µm" };

    /// <summary>A number without its unit.</summary>
    /// <param name="um">µm.</param>
    /// <param name="finer">One decimal more, for clicks and rates.</param>
    public string Number(double um, bool finer = false) => Decimals(um / UmPerUnit, (style.Gap == GapUnit.Micrometre ? 0 : 1) + (finer ? 1 : 0));

    /// <summary>"34 ± 6".</summary>
    public string Pair(Estimate e, bool finer = false) => $"{Number(e.Mean, finer)} ± {Number(e.Sd, finer)}";

    /// <summary>"35 ± 5", rounded to what a hand can set; below nothing "touching".</summary>
    public string Said(Estimate e)
    {
        var said = LengthPrinting.SaidGap(e.Mean, style);
        return char.IsDigit(said[0]) ? $"{Number(LengthPrinting.Handy(e.Mean, style))} ± {Number(Math.Max(LengthPrinting.HandStepUm(style), LengthPrinting.Handy(e.Sd, style)))}" : said;
    }

    public string Decimals(double value, int decimals)
    {
        var text = value.ToString("F" + decimals, CultureInfo.InvariantCulture);
        if (text.Trim('-', '0', '.').Length == 0) text = text.TrimStart('-');
        return style.DecimalSign == ',' ? text.Replace('.', ',') : text;
    }
}
