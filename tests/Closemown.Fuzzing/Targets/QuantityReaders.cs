using Closemown.Quantities;

namespace Closemown.Fuzzing;

/// <summary>Reads a text as one quantity in one way of writing, and checks that what is printed reads back.</summary>
internal delegate void QuantityReading(string text, WritingStyle style);

/// <summary>The readers of quantities, each with all of its units.</summary>
internal static class QuantityReaders
{
    private delegate bool Try<TUnit, T>(string? text, WritingStyle style, TUnit? unit, out T value, out ParseFault? fault) where TUnit : struct, Enum;

    /// <summary>Units as people write them.</summary>
    public static IReadOnlyList<string> Units { get; } =
    [
        "mm", "um", "µm", "in", "\"", "'", "thou", "mil", "hundredths", "cm", "m", "ft", "h", "min", "s", ":", "m2", "m²", "sq ft", "acre", "ha", "g/m2", "kg/m2", "lb/1000 sq ft", "gsm", "lb", "l", "ml", "gal", "km/h", "mph", "m/s", "C", "°F", "F", "K",
        "turn", "turns", "deg", "°", "rpm", "1/s", "%", "click", "clicks", "flats", "notches", "half a", "a quarter", "just under", "out", "in",
    ];

    public static IReadOnlyList<QuantityReading> All { get; } =
    [
        Of<LengthUnit, Length>(Length.TryParse, v => v.Mm, (x, u, s) => Length.Print(x, u, s), Length.PrintRoundTrip),
        Of<AreaUnit, Area>(Area.TryParse, v => v.SquareMetres, (x, u, s) => Area.Print(x, u, s), Area.PrintRoundTrip),
        Of<DurationUnit, Duration>(Duration.TryParse, v => v.Hours, (x, u, s) => Duration.Print(x, u, s), Duration.PrintRoundTrip),
        Of<GrammageUnit, Grammage>(Grammage.TryParse, v => v.Gsm, (x, u, s) => Grammage.Print(x, u, s), Grammage.PrintRoundTrip),
        Of<NumberUnit, Number>(Number.TryParse, v => v.Value, (x, u, s) => Number.Print(x, u, s), Number.PrintRoundTrip),
        Of<RotationUnit, Rotation>(Rotation.TryParse, v => v.PerMinute, (x, u, s) => Rotation.Print(x, u, s), Rotation.PrintRoundTrip),
        Of<SpeedUnit, Speed>(Speed.TryParse, v => v.MetresPerSecond, (x, u, s) => Speed.Print(x, u, s), Speed.PrintRoundTrip),
        Of<SpreadRateUnit, SpreadRate>(SpreadRate.TryParse, v => v.GramsPerSquareMetre, (x, u, s) => SpreadRate.Print(x, u, s), SpreadRate.PrintRoundTrip),
        Of<TemperatureUnit, Temperature>(Temperature.TryParse, v => v.Celsius, (x, u, s) => Temperature.Print(x, u, s), Temperature.PrintRoundTrip),
        Of<TurnsUnit, Turns>(Turns.TryParse, v => v.Count, (x, u, s) => Turns.Print(x, u, s), Turns.PrintRoundTrip),
        Of<VolumeUnit, Volume>(Volume.TryParse, v => v.Litres, (x, u, s) => Volume.Print(x, u, s), Volume.PrintRoundTrip),
        OfClicks,
        Printing,
    ];

    private static QuantityReading Of<TUnit, T>(Try<TUnit, T> read, Func<T, double> value, Func<double, TUnit, WritingStyle, string> print, Func<double, TUnit, WritingStyle, string> roundTrip)
        where TUnit : struct, Enum =>
        (text, style) =>
        {
            foreach (TUnit? usual in (TUnit?[])[null, default(TUnit)])
            {
                if (!read(text, style, usual, out var found, out var fault))
                {
                    Fault(text, fault);
                    continue;
                }
                var number = value(found);
                Laws.Must(double.IsFinite(number), "a quantity is a finite number", $"{typeof(T).Name} {text}");
                foreach (var unit in Enum.GetValues<TUnit>()) Back(number, unit);
            }

            void Back(double number, TUnit unit)
            {
                // Beyond this the number of a smaller unit is more than a double holds.
                if (Math.Abs(number) > 1e300) return;
                var exact = roundTrip(number, unit, style);
                Laws.Must(read(exact, style, null, out var again, out _) || read(exact, style, unit, out again, out _), "an exact print reads back", $"{typeof(T).Name} {text} → {exact}");
                Laws.Must(value(again) == number, "an exact print reads back the same", $"{typeof(T).Name} {text} → {exact} → {value(again):R}");
                var rounded = print(number, unit, style);
                Laws.Must(read(rounded, style, null, out _, out _) || read(rounded, style, unit, out _, out _), "a rounded print reads back", $"{typeof(T).Name} {text} → {rounded}");
            }
        };

    private static void OfClicks(string text, WritingStyle style)
    {
        if (!Clicks.TryParse(text, style, out var clicks, out var fault))
        {
            Fault(text, fault);
            return;
        }
        Laws.Must(double.IsFinite(clicks.Count), "a quantity is a finite number", $"clicks {text}");
        foreach (var printed in (string[])[Clicks.Print(clicks.Count, style), Clicks.PrintDirected(clicks.Count, style)])
            Laws.Must(Clicks.TryParse(printed, style, out var again, out _) && again.Count == clicks.Count, "printed clicks read back the same", $"{text} → {printed}");
    }

    /// <summary>Prints that are for reading only: they stand whatever number came in.</summary>
    private static void Printing(string text, WritingStyle style)
    {
        if (Length.TryParse(text, style, LengthUnit.Mm, out var length, out _))
        {
            if (double.IsFinite(length.Um)) Laws.Must(LengthPrinting.Gap(length.Um, style).Length > 0, "a gap is printed", text);
            Laws.Must(LengthPrinting.NearRound(length.Mm, LengthUnit.Mm, style).Length > 0, "a length is printed", text);
            if (Math.Abs(length.Mm) <= 1e6) Laws.Must(LengthPrinting.Height(length.Mm, style).Length > 0, "a height is printed", text);
        }
        if (!Duration.TryParse(text, style, DurationUnit.Hour, out var time, out _) || time.Hours is < 0 or > 1e5) return;
        Laws.Must(Duration.PrintAbout(time.Hours).Length > 0, "a duration is printed", text);
        var clock = Duration.PrintClock(time.Hours);
        Laws.Must(Duration.TryParse(clock, style, null, out _, out _), "a clock print reads back", $"{text} → {clock}");
    }

    private static void Fault(string text, ParseFault? fault)
    {
        Laws.Must(fault is not null, "what cannot be read has a fault", text);
        Laws.Told(fault!.Message, fault.Remedy);
        Laws.Must(fault.Start >= 0 && fault.Start + fault.Length <= text.Length, "a fault's spot lies in the text", $"{fault.Start} {fault.Length} {text}");
        Laws.Must(fault.Render().Split('\n').Length == 2, "a fault is shown on two lines", text);
    }
}
