namespace Closemown.Quantities;

/// <summary>What a slip turns a value into, and how that is said; # stands for the number given.</summary>
internal readonly record struct SlipReading(double Value, string Words)
{
    private const double Inch = 25.4;

    public static SlipReading[] Of(UnitSlipKind kind, double x) => kind switch
    {
        UnitSlipKind.TenTimes => [new(x / 10, "a tenth of it"), new(x * 10, "ten times it")],
        UnitSlipKind.ThouOrHundredth =>
            [new(x * 10 / Inch, "hundredths of a mm, not thou"), new(x * Inch / 10, "thou, not hundredths of a mm")],
        UnitSlipKind.InchOrMm => [new(x / Inch, "mm, not inches"), new(x * Inch, "inches, not mm")],
        UnitSlipKind.UmOrThou => [new(x / Inch, "µm, not thou"), new(x * Inch, "thou, not µm")],
        UnitSlipKind.UmOrMm => [new(x / 1000, "µm, not mm"), new(x * 1000, "mm, not µm")],
        UnitSlipKind.CmOrMm => [new(x / 10, "mm, not cm"), new(x * 10, "cm, not mm")],
        UnitSlipKind.MinuteOrHour => [new(x / 60, "# minutes, not hours"), new(x * 60, "# hours, not minutes")],
        UnitSlipKind.SecondOrMinute => [new(x / 60, "# seconds, not minutes"), new(x * 60, "# minutes, not seconds")],
        UnitSlipKind.SquareFootOrMetre => [new(x * 0.09290304, "# square feet, not m²")],
        UnitSlipKind.FahrenheitOrCelsius => [new((x - 32) * 5 / 9, "# °F, not °C")],
        UnitSlipKind.KmHOrMs => [new(x / 3.6, "# km/h, not m/s")],
        _ => [],
    };
}
