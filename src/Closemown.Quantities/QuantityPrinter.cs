namespace Closemown.Quantities;

/// <summary>Prints a number in a unit: rounded for people, or with as many digits as read back bit for bit.</summary>
internal static class QuantityPrinter
{
    private static readonly int[] Precisions = [15, 16, 17, 20, 25, 30, 40, 60, 120, 400, 800];

    public static string Print<TUnit>(double value, UnitRow<TUnit> row, WritingStyle style, int? decimals) where TUnit : struct, Enum
    {
        Exact inUnit = row.FromBase(Exact.Of(Finite(value)));
        string number = decimals is { } fixedDecimals
            ? Fixed(inUnit, fixedDecimals, style, false)
            : Fixed(inUnit, row.Decimals(inUnit.ToDouble()), style, true);
        return WithUnit(number, row);
    }

    public static string RoundTrip<TUnit>(double value, UnitRow<TUnit> row, WritingStyle style) where TUnit : struct, Enum
    {
        Exact inUnit = row.FromBase(Exact.Of(Finite(value)));
        foreach (int digits in Precisions)
        {
            string text = inUnit.ToScientific(digits);
            var reader = new NumberReader(text, 0, '.');
            if (reader.TryRead(out Exact read, out _) && row.ToBase(read).ToDouble() == value)
                return WithUnit(Plain(text).Replace('.', style.DecimalSign), row);
        }

        throw new InvalidOperationException("Bug in Closemown.Quantities: no number of digits reads back.");
    }

    public static string Fixed(Exact number, int decimals, WritingStyle style, bool trim)
    {
        string text = number.ToFixed(decimals);
        if (trim && decimals > 0)
            text = text.TrimEnd('0').TrimEnd('.');
        return text.Replace('.', style.DecimalSign);
    }

    /// <summary>The value, which must be a number.</summary>
    public static double Finite(double value) => double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite number can be printed.");

    public static string WithUnit<TUnit>(string number, UnitRow<TUnit> row) where TUnit : struct, Enum
    {
        string unit = number is "1" or "-1" ? row.Shown : row.ShownMany;
        return unit.Length == 0 ? number : number + " " + unit;
    }

    /// <summary>The same number without a power of ten, where that is not too long.</summary>
    private static string Plain(string scientific)
    {
        int letter = scientific.IndexOf('e', StringComparison.Ordinal);
        if (letter < 0)
            return scientific;
        int power = int.Parse(scientific.AsSpan(letter + 1), System.Globalization.NumberStyles.AllowLeadingSign,
            System.Globalization.CultureInfo.InvariantCulture);
        if (power is < -6 or > 17)
            return scientific;
        string sign = scientific[0] == '-' ? "-" : "";
        string digits = scientific[sign.Length..letter].Replace(".", "", StringComparison.Ordinal);
        if (power < 0)
            return sign + "0." + new string('0', -power - 1) + digits;
        digits = digits.PadRight(power + 1, '0');
        return digits.Length == power + 1 ? sign + digits : sign + digits[..(power + 1)] + "." + digits[(power + 1)..];
    }
}
