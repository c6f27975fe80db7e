using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>Reads a number with its unit; the field's name tells what it measures and the unit of a bare number.</summary>
public static partial class NumberText
{
    /// <summary>Reads the text, or says why not.</summary>
    /// <param name="field">The field; the end of its name is its unit.</param>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="number">The number in the unit of the name.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryRead(FieldSpec field, string text, WritingStyle style, out TypedNumber number, [NotNullWhen(false)] out ParseFault? fault)
    {
        number = default;
        if (field.Form == FieldForm.HalfSteps)
            return Taken(Clicks.TryParse(text, style, out var c, out fault), c.Count, null, text, out number);
        switch (Measure(field))
        {
            case "um":
                return Taken(Length.TryParse(text, style, LengthUnit.Um, out var um, out fault), um.Um, um.Unit, text, out number);
            // A litre on a square metre stands a millimetre high.
            case "mm" when field.Name is "mm" or "rainMm" && LitrePerSquareMetre().Match(text) is { Success: true } litres:
                return Taken(Length.TryParse(litres.Groups[1].Value, style, LengthUnit.Mm, out var high, out fault), high.Mm, null, text, out number);
            case "l":
                return Taken(Volume.TryParse(text, style, VolumeUnit.Litre, out var l, out fault), l.Litres, null, text, out number);
            case "g/m2":
                return Taken(SpreadRate.TryParse(PerSquareMetre(text), style, SpreadRateUnit.GramPerSquareMetre, out var g, out fault), g.GramsPerSquareMetre, null, text, out number);
            case "kg/m2":
                return Taken(SpreadRate.TryParse(PerSquareMetre(text), style, SpreadRateUnit.KilogramPerSquareMetre, out var kg, out fault), kg.GramsPerSquareMetre / 1000, null, text, out number);
            case "s":
                return Taken(Duration.TryParse(text, style, DurationUnit.Second, out var s, out fault), s.Seconds, null, text, out number);
            case "%":
                // "5 %" and 5 are the same here.
                return Taken(Number.TryParse(text, style, NumberUnit.One, out var share, out fault), share.Unit == NumberUnit.Percent ? Math.Round(share.Value * 100, 9) : share.Value, null, text, out number);
            case "mm":
                return Taken(Length.TryParse(text, style, LengthUnit.Mm, out var mm, out fault), mm.Mm, mm.Unit, text, out number);
            case "m":
                return Taken(Length.TryParse(text, style, LengthUnit.M, out var m, out fault), m.Mm / 1000, m.Unit, text, out number);
            case "h":
                return Taken(Duration.TryParse(text, style, DurationUnit.Hour, out var h, out fault), h.Hours, null, text, out number);
            case "min":
                return Taken(Duration.TryParse(text, style, DurationUnit.Minute, out var min, out fault), min.Minutes, null, text, out number);
            case "m2":
                return Taken(Area.TryParse(text, style, AreaUnit.SquareMetre, out var m2, out fault), m2.SquareMetres, null, text, out number);
            case "gsm":
                return Taken(Grammage.TryParse(text, style, GrammageUnit.GramPerSquareMetre, out var gsm, out fault), gsm.Gsm, null, text, out number);
            case "c":
                return Taken(Temperature.TryParse(text, style, TemperatureUnit.Celsius, out var t, out fault), t.Celsius, null, text, out number);
            case "m/s":
                return Taken(Speed.TryParse(text, style, SpeedUnit.MetrePerSecond, out var v, out fault), v.MetresPerSecond, null, text, out number);
            case "turns":
                return Taken(Turns.TryParse(text, style, TurnsUnit.Turn, out var turns, out fault), turns.Count, null, text, out number);
            default:
                return Taken(Number.TryParse(text, style, NumberUnit.One, out var n, out fault), n.Value, null, text, out number);
        }
    }

    /// <summary>Whether what was typed is what was kept; it is not where a slip was corrected.</summary>
    public static bool Says(FieldSpec f, string typed, double kept, WritingStyle style) =>
        (TryRead(f, typed, style, out var n, out _) || TryRead(f, typed, WritingStyle.Plain, out n, out _)) && Math.Abs(n.Value - kept) <= 1e-6 * Math.Max(1e-9, Math.Abs(kept));

    /// <summary>What a field measures: a number at a station is a length, for the name of a station has no unit at its end.</summary>
    public static string Measure(FieldSpec field) => field.Form == FieldForm.Number && Stations.IndexOf(field.Name) >= 0 ? "mm" : Measure(field.Name);

    /// <summary>What a field of that name measures.</summary>
    public static string Measure(string name)
    {
        var own = name[(name.LastIndexOf('.') + 1)..];
        bool Ends(string suffix) => own.EndsWith(suffix, StringComparison.Ordinal);
        if (own == "um" || Ends("Um")) return "um";
        if (own == "gsm") return "gsm";
        if (own == "hours" || own == "sunH") return "h";
        if (own is "minutes" or "minutesADay") return "min";
        if (own == "m2" || (Ends("M2") && own is not "radMjM2" and not "kgM2")) return "m2";
        if (own == "litres") return "l";
        if (own == "nGm2") return "g/m2";
        if (own == "kgM2") return "kg/m2";
        if (own == "s") return "s";
        if (Ends("Pct")) return "%";
        if (own == "windMs") return "m/s";
        if (own is "up" or "down" or "altitudeM" or "windHeightM") return "m";
        if (own is "tMinC" or "tMaxC" or "tMeanC" or "dewC") return "c";
        if (Ends("Turns")) return "turns";
        return own == "mm" || Ends("Mm") ? "mm" : "";
    }

    /// <summary>"1.5g" and "1 kg N" are said of a square metre.</summary>
    private static string PerSquareMetre(string text) => Weight().Match(text) is { Success: true } m ? $"{m.Groups[1].Value} {m.Groups[2].Value}/m2" : text;

    [GeneratedRegex(@"^\s*([\d.,½¼/ ]+?)\s*(g|kg)(\s*n)?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Weight();

    [GeneratedRegex(@"^\s*([\d.,½¼/ ]+?)\s*(?:l|litres?|liters?)\s*/\s*(?:m2|m²|sqm)\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex LitrePerSquareMetre();

    private static bool Taken(bool read, double value, LengthUnit? unit, string text, out TypedNumber number)
    {
        number = read ? new(value, unit, text.Trim() != value.ToString("R", CultureInfo.InvariantCulture)) : default;
        return read;
    }
}
