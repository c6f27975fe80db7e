namespace Closemown.Quantities;

/// <summary>Prints the values of a question: in the unit typed, and for lengths in both metric and inch.</summary>
internal sealed class SlipScale(string baseUnit, WritingStyle style, LengthUnit? typedIn)
{
    private readonly double _mm = baseUnit switch { "µm" => 0.001, "mm" => 1, "m" => 1000, _ => 0 };

    /// <summary>Three figures and the unit; less than an hour in minutes, as people write it.</summary>
    public string Written(double value) => _mm > 0 && typedIn is { } unit ? InLength(value, unit) : baseUnit == "h" && value < 1 ? $"{Figures(value * 60)} min" : InBase(value);

    /// <summary>The metric value, and for lengths the inch value behind it.</summary>
    public string Both(double value)
    {
        if (_mm == 0)
            return InBase(value);
        LengthUnit imperial = Math.Abs(value * _mm) < 1 ? LengthUnit.Thou : LengthUnit.Inch;
        return $"{InBase(value)} ({InLength(value, imperial)})";
    }

    /// <summary>Three figures and the base unit.</summary>
    public string InBase(double value)
    {
        string number = Figures(value);
        return baseUnit.Length == 0 ? number : number + " " + baseUnit;
    }

    private string InLength(double value, LengthUnit unit)
    {
        UnitRow<LengthUnit> row = Length.Units[unit];
        return QuantityPrinter.WithUnit(Figures(row.FromBase(Exact.Of(value * _mm)).ToDouble()), row);
    }

    /// <summary>Three figures alone.</summary>
    public string Figures(double value)
    {
        double size = Math.Abs(value);
        int decimals = size == 0 || size >= 100 ? 0 : Math.Min(12, 2 - (int)Math.Floor(Math.Log10(size)));
        return QuantityPrinter.Fixed(Exact.Of(value), decimals, style, true);
    }
}
