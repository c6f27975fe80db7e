using System.Numerics;

namespace Closemown.Quantities;

/// <summary>An exact fraction. Units are converted exactly and rounded once, so a text printed with enough digits reads back bit for
/// bit.</summary>
internal readonly struct Exact
{
    private Exact(BigInteger numerator, BigInteger denominator)
    {
        Numerator = numerator;
        Denominator = denominator;
    }

    public BigInteger Numerator { get; }

    /// <summary>Above zero.</summary>
    public BigInteger Denominator { get; }

    public static Exact Zero => new(0, 1);

    public static Exact Of(BigInteger numerator, BigInteger denominator) =>
        denominator.Sign > 0 ? new(numerator, denominator) : new(-numerator, -denominator);

    /// <summary>The exact value of a finite double.</summary>
    public static Exact Of(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value);
        int exponent = (int)((bits >> 52) & 0x7FF);
        long mantissa = bits & 0xFFFFFFFFFFFFF;
        if (exponent == 0)
            exponent++;
        else
            mantissa |= 1L << 52;
        exponent -= 1075;
        var signed = new BigInteger(bits < 0 ? -mantissa : mantissa);
        return exponent >= 0 ? new(signed << exponent, 1) : new(signed, BigInteger.One << -exponent);
    }

    public static Exact operator +(Exact a, Exact b) =>
        new(a.Numerator * b.Denominator + b.Numerator * a.Denominator, a.Denominator * b.Denominator);

    public static Exact operator -(Exact a, Exact b) => a + new Exact(-b.Numerator, b.Denominator);

    public static Exact operator *(Exact a, Exact b) => new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Exact operator /(Exact a, Exact b) => Of(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static Exact operator -(Exact a) => new(-a.Numerator, a.Denominator);

    /// <summary>The nearest double, halves to even; infinite when too large.</summary>
    public double ToDouble()
    {
        if (Numerator.IsZero)
            return 0;
        var size = BigInteger.Abs(Numerator);
        long shift = Math.Max(size.GetBitLength() - Denominator.GetBitLength() - 53, -1074);
        BigInteger quotient = Rounded(size, shift);
        if (quotient.GetBitLength() > 53)
            quotient = Rounded(size, ++shift);
        double magnitude = shift > 1024 ? double.PositiveInfinity : Math.ScaleB((double)(long)quotient, (int)shift);
        return Numerator.Sign < 0 ? -magnitude : magnitude;
    }

    private BigInteger Rounded(BigInteger size, long shift)
    {
        BigInteger top = shift < 0 ? size << (int)-shift : size;
        BigInteger bottom = shift > 0 ? Denominator << (int)shift : Denominator;
        return DivideRounded(top, bottom);
    }

    private static BigInteger DivideRounded(BigInteger top, BigInteger bottom)
    {
        var quotient = BigInteger.DivRem(top, bottom, out BigInteger rest);
        int half = (rest * 2).CompareTo(bottom);
        return half > 0 || (half == 0 && !quotient.IsEven) ? quotient + 1 : quotient;
    }

    /// <summary>Digits with a decimal point and that many decimals, halves to even; never with a minus before zero.</summary>
    public string ToFixed(int decimals)
    {
        BigInteger scaled = DivideRounded(BigInteger.Abs(Numerator) * BigInteger.Pow(10, decimals), Denominator);
        string digits = scaled.ToString("R", System.Globalization.CultureInfo.InvariantCulture).PadLeft(decimals + 1, '0');
        string text = decimals == 0 ? digits : digits[..^decimals] + "." + digits[^decimals..];
        return Numerator.Sign < 0 && !scaled.IsZero ? "-" + text : text;
    }

    /// <summary>That many significant digits, as <c>d.ddde±n</c>.</summary>
    public string ToScientific(int digits)
    {
        if (Numerator.IsZero)
            return "0";
        var size = BigInteger.Abs(Numerator);
        int power = (int)Math.Floor(BigInteger.Log10(size) - BigInteger.Log10(Denominator));
        string text;
        do
        {
            int scale = digits - 1 - power;
            BigInteger top = scale > 0 ? size * BigInteger.Pow(10, scale) : size;
            BigInteger bottom = scale < 0 ? Denominator * BigInteger.Pow(10, -scale) : Denominator;
            text = DivideRounded(top, bottom).ToString("R", System.Globalization.CultureInfo.InvariantCulture);
            if (text.Length != digits)
                power += text.Length > digits ? 1 : -1;
        }
        while (text.Length != digits);
        text = text.TrimEnd('0');
        string fraction = text.Length > 1 ? "." + text[1..] : "";
        return (Numerator.Sign < 0 ? "-" : "") + text[0] + fraction + "e"
            + power.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}
