namespace Closemown.Quantities;

/// <summary>Lengths printed as one person reads them: gaps, heights, fractions of an inch, and "just under" a round size.</summary>
public static class LengthPrinting
{
    private const double ExactMm = 1e-9;
    private const double TouchingUm = -2.5, PressingUm = -25;

    /// <summary>Prints a gap or another small length, in the person's unit of the gap: <c>18 µm</c>, <c>0.7 thou</c>, <c>1.8 hundredths
    /// mm</c>.</summary>
    /// <param name="um">µm; finite.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Gap(double um, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(um, GapRow(style), style, null);
    }

    /// <summary>
    /// A gap as it is said: to what a hand can set (5 µm, 0.2 thou, half a hundredth), and a gap below nothing as a touch:
    /// <c>35 µm</c>, <c>touching</c>, <c>touching hard</c>.
    /// </summary>
    /// <param name="um">The gap, µm; below zero the edges press.</param>
    /// <param name="style">The person's way of writing.</param>
    public static string SaidGap(double um, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return um < PressingUm ? "touching hard" : um < TouchingUm ? "touching" : Gap(Handy(um, style), style);
    }

    /// <summary>How far off a gap may be, as it is said: to what a hand can set, and never nothing.</summary>
    /// <param name="um">The spread, µm.</param>
    /// <param name="style">The person's way of writing.</param>
    public static string SaidSpread(double um, WritingStyle style) => Gap(Math.Max(HandStepUm(style), Handy(um, style)), style);

    /// <summary>A gap to the nearest step that a hand can set, µm.</summary>
    public static double Handy(double um, WritingStyle style) => Math.Round(um / HandStepUm(style), MidpointRounding.AwayFromZero) * HandStepUm(style);

    /// <summary>A height as it is said: to 0.05 mm, or two thousandths of an inch.</summary>
    public static double HandyHeight(double mm, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        var step = style.Height == HeightUnit.Mm ? 0.05 : 0.002 * 25.4;
        return Math.Round(mm / step, MidpointRounding.AwayFromZero) * step;
    }

    /// <summary>A standing height as it is worth saying: to a tenth of a millimetre, or 5 thousandths of an inch; mm.</summary>
    public static double StandingHeight(double mm, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        var step = style.Height == HeightUnit.Mm ? 0.1 : 0.005 * 25.4;
        return Math.Round(mm / step, MidpointRounding.AwayFromZero) * step;
    }

    /// <summary>The least step of a gap that a hand can set and that is worth saying, µm.</summary>
    public static double HandStepUm(WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return style.Gap == GapUnit.Thou ? 0.2 * 25.4 : 5;
    }

    /// <summary>Prints a height in the person's unit of heights: <c>4 mm</c>, <c>0.156 in</c>, <c>5/32 in</c>, <c>just under 1/4
    /// in</c>.</summary>
    /// <param name="mm">mm; finite.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or as a fraction beyond 1,000,000 mm.</exception>
    public static string Height(double mm, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return style.Height switch
        {
            HeightUnit.InchFraction => InchFraction(mm),
            HeightUnit.InchDecimal => Length.Print(mm, LengthUnit.Inch, style),
            _ => Length.Print(mm, LengthUnit.Mm, style),
        };
    }

    /// <summary>
    /// Prints the nearest fraction of an inch: <c>5/32 in</c>, <c>1 1/4 in</c>; with "just under" or "just over" before it when the
    /// length is
    /// not that fraction. 6 mm is <c>just under 1/4 in</c>.
    /// </summary>
    /// <param name="mm">mm, between -1,000,000 and 1,000,000.</param>
    /// <param name="finest">The finest fraction: 2, 4, 8, 16, 32 (default) or 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static string InchFraction(double mm, int finest = 32)
    {
        if (!(Math.Abs(mm) <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(mm), mm, "A fraction of an inch is printed between -1000000 and 1000000 mm.");
        if (finest is not (2 or 4 or 8 or 16 or 32 or 64))
            throw new ArgumentOutOfRangeException(nameof(finest), finest, "The finest fraction is 2, 4, 8, 16, 32 or 64.");
        double size = Math.Abs(mm);
        int parts = (int)Math.Round(size * finest / 25.4, MidpointRounding.AwayFromZero);
        double difference = size - parts * 25.4 / finest;
        string near = Math.Abs(difference) < ExactMm ? "" : difference < 0 ? "just under " : "just over ";
        return near + (mm < 0 && parts > 0 ? "-" : "") + Mixed(parts, finest) + " in";
    }

    /// <summary>
    /// Prints against a round size where the length is near one: <c>just under 4 mm</c> for 5/32 in, otherwise like <see
    /// cref="Length.Print"/>.
    /// Round sizes are whole numbers of the unit; near is within 0.1 of it.
    /// </summary>
    /// <param name="mm">mm; finite.</param>
    /// <param name="unit">The unit to print.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string NearRound(double mm, LengthUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        UnitRow<LengthUnit> row = Length.Units[unit];
        double count = row.FromBase(Exact.Of(QuantityPrinter.Finite(mm))).ToDouble();
        double whole = Math.Round(count, MidpointRounding.AwayFromZero);
        double difference = Math.Abs(count) - Math.Abs(whole);
        if (whole == 0 || Math.Abs(difference) > 0.1 || Math.Abs(difference) < ExactMm)
            return Length.Print(mm, unit, style);
        string number = QuantityPrinter.Fixed(Exact.Of(whole), 0, style, false);
        return (difference < 0 ? "just under " : "just over ") + QuantityPrinter.WithUnit(number, row);
    }

    // The gap is kept in µm: the same rows with µm as their base.
    private static UnitRow<LengthUnit> GapRow(WritingStyle style)
    {
        UnitRow<LengthUnit> row = Length.Units[style.Gap switch
        {
            GapUnit.Thou => LengthUnit.Thou,
            GapUnit.HundredthMm => LengthUnit.HundredthMm,
            _ => LengthUnit.Um,
        }];
        return row with { Factor = row.Factor * Exact.Of(1000, 1) };
    }

    private static string Mixed(int parts, int finest)
    {
        int whole = parts / finest;
        int upper = parts % finest;
        int lower = finest;
        while (upper > 0 && upper % 2 == 0)
        {
            upper /= 2;
            lower /= 2;
        }

        return upper == 0 ? Text(whole) : (whole == 0 ? "" : Text(whole) + " ") + Text(upper) + "/" + Text(lower);
    }

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
