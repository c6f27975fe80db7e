using System.Globalization;
using System.Numerics;

namespace Closemown.Quantities;

/// <summary>Reads a number as people write it, from a place in a text: <c>4</c>, <c>.156</c>, <c>5/32</c>, <c>1 1/4</c>, <c>1-1/4</c>,
/// <c>1½</c>.</summary>
internal ref struct NumberReader(string text, int start, char decimalSign)
{
    private const int LargestPower = 400;
    private readonly ReadOnlySpan<char> _text = text;

    /// <summary>Where reading stands: behind the number after <see cref="TryRead"/>.</summary>
    public int At { get; private set; } = start;

    /// <summary>Whether a sign was typed.</summary>
    public bool Signed { get; private set; }

    /// <summary>The lower number of a fraction, or 0.</summary>
    public BigInteger FractionOf { get; private set; }

    /// <summary>False with a fault when the number is malformed, false without one when there is none.</summary>
    public bool TryRead(out Exact value, out ParseFault? fault)
    {
        value = Exact.Zero;
        fault = null;
        SkipSpace();
        int begin = At;
        bool negative = false;
        if (At < _text.Length && _text[At] is '+' or '-' or '\u2212' or '\u2013')
        {
            negative = _text[At] is not '+';
            Signed = true;
            At++;
            SkipSpace();
        }

        if (!TryUnsigned(out value, out fault))
        {
            if (fault is null && Signed)
                fault = Fault(begin, 1, "A sign stands without a number.", "Write a number after the sign.");
            return false;
        }

        if (negative)
            value = -value;
        return true;
    }

    private bool TryUnsigned(out Exact value, out ParseFault? fault)
    {
        value = Exact.Zero;
        fault = null;
        if (TryVulgar(out value))
            return true;
        int begin = At;
        int whole = Digits();
        bool point = At < _text.Length && _text[At] is '.' or ',' && DigitAt(At + 1);
        if (whole == 0 && !point)
            return false;
        if (!point)
        {
            if (At < _text.Length && _text[At] == decimalSign && (At + 1 >= _text.Length || _text[At + 1] != decimalSign))
            {
                fault = Fault(At, 1, "No digit follows the decimal sign.", "Write the digits, or leave the sign out.");
                return false;
            }

            return TryFraction(begin, out value, out fault);
        }

        if (_text[At] != decimalSign && !IsPlainPoint(whole))
        {
            fault = WrongSign(begin);
            return false;
        }

        int digits = At + 1;
        At++;
        Digits();
        if (At < _text.Length && _text[At] is '.' or ',' && DigitAt(At + 1))
        {
            fault = Fault(At, 1, "A number has one decimal sign, and thousands are written together.",
                "Write 1300 for one thousand three hundred.");
            return false;
        }

        int decimals = At - digits;
        value = Scaled(BigInteger.Parse(string.Concat(_text[begin..(digits - 1)], _text[digits..At]), NumberStyles.None,
            CultureInfo.InvariantCulture), -decimals);
        return TryPower(ref value, out fault);
    }

    private bool TryFraction(int begin, out Exact value, out ParseFault? fault)
    {
        fault = null;
        var whole = BigInteger.Parse(_text[begin..At], NumberStyles.None, CultureInfo.InvariantCulture);
        value = Exact.Of(whole, 1);
        int afterWhole = At;
        if (TryLower(out BigInteger lower))
            return TryDivide(whole, lower, afterWhole, out value, out fault);
        At = afterWhole;
        if (!TryPower(ref value, out fault))
            return false;
        if (At != afterWhole)
            return true;

        SkipSpace();
        if (At < _text.Length && _text[At] is '-' or '\u2212' or '\u2013')
        {
            At++;
            SkipSpace();
        }

        if (TryVulgar(out Exact vulgar))
        {
            value += vulgar;
            return true;
        }

        int second = At;
        if (At > afterWhole && Digits() > 0)
        {
            var upper = BigInteger.Parse(_text[second..At], NumberStyles.None, CultureInfo.InvariantCulture);
            int afterUpper = At;
            if (TryLower(out lower))
            {
                if (!TryDivide(upper, lower, afterUpper, out Exact part, out fault))
                    return false;
                if (upper >= lower)
                {
                    fault = Fault(second, At - second, "The fraction after a whole number must be below one.", "Write it like 1 1/4.");
                    return false;
                }

                value += part;
                return true;
            }
        }

        At = afterWhole;
        return true;
    }

    private readonly bool TryDivide(BigInteger upper, BigInteger lower, int slash, out Exact value, out ParseFault? fault)
    {
        fault = null;
        value = Exact.Zero;
        if (lower.IsZero)
        {
            fault = Fault(slash, At - slash, "A fraction cannot have 0 below its line.", "Write it like 5/32.");
            return false;
        }

        value = Exact.Of(upper, lower);
        return true;
    }

    private bool TryLower(out BigInteger lower)
    {
        lower = 0;
        SkipSpace();
        if (At >= _text.Length || _text[At] is not ('/' or '\u2044'))
            return false;
        At++;
        SkipSpace();
        int begin = At;
        if (Digits() == 0)
            return false;
        lower = BigInteger.Parse(_text[begin..At], NumberStyles.None, CultureInfo.InvariantCulture);
        FractionOf = lower;
        return true;
    }

    private bool TryPower(ref Exact value, out ParseFault? fault)
    {
        fault = null;
        int letter = At;
        if (At >= _text.Length || _text[At] is not ('e' or 'E'))
            return true;
        int sign = At + 1 < _text.Length && _text[At + 1] is '-' or '+' ? 1 : 0;
        if (!DigitAt(At + 1 + sign))
            return true;
        At += 1 + sign;
        int begin = At;
        Digits();
        if (At - begin > 4 || int.Parse(_text[begin..At], NumberStyles.None, CultureInfo.InvariantCulture) is var power
            && power > LargestPower)
        {
            fault = Fault(letter, At - letter, "The power of ten is too large.", "Write the number in a unit that suits it.");
            return false;
        }

        value = Scaled(value, _text[begin - 1] == '-' ? -power : power);
        return true;
    }

    private bool TryVulgar(out Exact value)
    {
        value = Exact.Zero;
        if (At >= _text.Length)
            return false;
        (int upper, int lower) = _text[At] switch
        {
            '½' => (1, 2),
            '¼' => (1, 4),
            '¾' => (3, 4),
            '⅛' => (1, 8),
            '⅜' => (3, 8),
            '⅝' => (5, 8),
            '⅞' => (7, 8),
            '⅓' => (1, 3),
            '⅔' => (2, 3),
            _ => (0, 0),
        };
        if (lower == 0)
            return false;
        At++;
        FractionOf = lower;
        value = Exact.Of(upper, lower);
        return true;
    }

    /// <summary>Whether a point in a comma style can only be a decimal sign: thousands have one to three figures before it and three after.</summary>
    private readonly bool IsPlainPoint(int whole)
    {
        if (_text[At] != '.')
            return false;
        int after = 0;
        while (DigitAt(At + 1 + after))
            after++;
        return after != 3 || whole is 0 or > 3 || _text[At - whole] == '0';
    }

    private ParseFault WrongSign(int begin)
    {
        int sign = At;
        At++;
        int group = Digits();
        string whole = _text[begin..sign].ToString();
        string written = whole + decimalSign + _text[(sign + 1)..At].ToString();
        string remedy = group == 3 && whole.Length is > 0 and < 4
            ? $"Write {written}, or {whole}{_text[(sign + 1)..At]} if thousands were meant."
            : $"Write {written}.";
        return Fault(sign, 1, $"The decimal sign in this way of writing is '{decimalSign}'.", remedy);
    }

    private static Exact Scaled(BigInteger digits, int power) => Scaled(Exact.Of(digits, 1), power);

    private static Exact Scaled(Exact value, int power) => power >= 0
        ? value * Exact.Of(BigInteger.Pow(10, power), 1)
        : value * Exact.Of(1, BigInteger.Pow(10, -power));

    private readonly ParseFault Fault(int start, int length, string message, string remedy) =>
        ParseFault.At(text, start, length, message, remedy);

    private readonly bool DigitAt(int at) => at < _text.Length && char.IsAsciiDigit(_text[at]);

    private int Digits()
    {
        int begin = At;
        while (DigitAt(At))
            At++;
        return At - begin;
    }

    private void SkipSpace()
    {
        while (At < _text.Length && char.IsWhiteSpace(_text[At]))
            At++;
    }
}
