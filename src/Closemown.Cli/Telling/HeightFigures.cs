using System.Globalization;
using Closemown.Height;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Heights as numbers in the person's unit, fine enough for a setting: hundredths of a millimetre, thousandths of an inch.</summary>
internal sealed class HeightFigures(WritingStyle style)
{
    private const double MmPerInch = 25.4;

    private bool Metric => style.Height == Quantities.HeightUnit.Mm;

    public string Unit => Metric ? "mm" : "in";

    /// <summary>"4.86".</summary>
    public string Number(double mm) => Decimals(Metric ? mm : mm / MmPerInch, Metric ? 2 : 3);

    /// <summary>"4.86 mm".</summary>
    public string Whole(double mm) => $"{Number(mm)} {Unit}";

    /// <summary>"4.85": to what a hand can set.</summary>
    public string Near(double mm) => Number(LengthPrinting.HandyHeight(mm, style));

    /// <summary>"4.85 mm".</summary>
    public string NearWhole(double mm) => Whole(LengthPrinting.HandyHeight(mm, style));

    /// <summary>"4.86 ± 0.05".</summary>
    public string Pair(HeightEstimate e) => $"{Number(e.Mean)} ± {Number(e.Sd)}";

    /// <summary>"4.66 to 5.05 mm".</summary>
    public string Range(HeightEstimate e) => $"{Number(e.P05)} to {Number(e.P95)} {Unit}";

    /// <summary>A plain number with decimals and the person's decimal sign.</summary>
    public string Decimals(double value, int decimals)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        if (text.Trim('-', '0', '.').Length == 0) text = text.TrimStart('-');
        return text.Replace('.', style.DecimalSign);
    }

    /// <summary>Two numbers with decimals: "0.09 ± 0.05".</summary>
    public string Plain(HeightEstimate e, int decimals) => $"{Decimals(e.Mean, decimals)} ± {Decimals(e.Sd, decimals)}";
}
