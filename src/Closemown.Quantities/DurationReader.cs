using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Reads durations: one number and unit, several in falling order (<c>1 h 20 min</c>), or hours and minutes with a
/// colon.</summary>
internal static class DurationReader
{
    public static bool TryRead(
        string text, WritingStyle style, DurationUnit? defaultUnit, out Reading<DurationUnit> reading,
            [NotNullWhen(false)] out ParseFault? fault)
    {
        UnitTable<DurationUnit> table = Duration.Units;
        reading = default;
        if (!QuantityReader.TryStart(text, table.Quantity, table.Example, out fault))
            return false;
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon >= 0)
            return TryColon(text, colon, out reading, out fault);

        Exact sum = Exact.Zero;
        UnitRow<DurationUnit>? first = null;
        UnitRow<DurationUnit>? last = null;
        int at = 0;
        do
        {
            int begin = at;
            if (!QuantityReader.TryNumber(text, at, style, table.Quantity, table.Example, out Exact number, out at, out _, out fault))
                return false;
            int end = NextNumber(text, at);
            if (!QuantityReader.TryUnit(text, at, end, table, first is null && end == text.Length ? defaultUnit : null,
                out UnitRow<DurationUnit>? row, out fault))
                return false;
            if (number.Numerator.Sign < 0)
            {
                fault = QuantityReader.BelowZero(text, table.Quantity);
                return false;
            }

            if (last is not null && row.Factor.ToDouble() >= last.Factor.ToDouble())
            {
                fault = ParseFault.At(text, begin, end - begin, "The larger unit comes first, each unit once.",
                    "Write it like 1 h 20 min.");
                return false;
            }

            sum += row.ToBase(number);
            first ??= row;
            last = row;
            at = end;
        }
        while (!string.IsNullOrWhiteSpace(text[at..]));

        if (!double.IsFinite((sum * Exact.Of(3600, 1)).ToDouble()))
        {
            fault = ParseFault.At(text, 0, text.Length, "The number is too large.", $"Write it like {table.Example}.");
            return false;
        }

        reading = new Reading<DurationUnit>(sum, first.Unit, "");
        return true;
    }

    private static bool TryColon(string text, int colon, out Reading<DurationUnit> reading, [NotNullWhen(false)] out ParseFault? fault)
    {
        fault = null;
        string hours = text[..colon].Trim();
        string minutes = text[(colon + 1)..].Trim();
        reading = default;
        if (hours.Length is 0 or > 4 || minutes.Length != 2 || !hours.All(char.IsAsciiDigit) || !minutes.All(char.IsAsciiDigit))
        {
            fault = ParseFault.At(text, colon, 1, "A colon stands between hours and two digits of minutes.", "Write 1:30, or 1 min 30 s.");
            return false;
        }

        int m = Whole(minutes);
        if (m > 59)
        {
            fault = ParseFault.At(text, colon + 1, text.TrimEnd().Length - colon - 1, "Minutes after a colon go up to 59.",
                $"Write {m} min.");
            return false;
        }

        reading = new Reading<DurationUnit>(Exact.Of(Whole(hours) * 60 + m, 60), DurationUnit.Hour, "");
        return true;
    }

    private static int Whole(string digits) =>
        int.Parse(digits, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture);

    private static int NextNumber(string text, int at)
    {
        while (at < text.Length && !char.IsAsciiDigit(text[at])
            && !(text[at] is '.' or ',' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1])))
            at++;
        return at;
    }
}
