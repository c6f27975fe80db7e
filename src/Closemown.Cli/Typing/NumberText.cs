using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Reads a number with its unit; the field's name tells what it measures and the unit of a bare number.</summary>
internal static class NumberText
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
        switch (Measure(field.Name))
        {
            case "um":
                return Taken(Length.TryParse(text, style, LengthUnit.Um, out var um, out fault), um.Um, um.Unit, text, out number);
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
        if (own == "windMs") return "m/s";
        if (own is "up" or "down" or "altitudeM" or "windHeightM") return "m";
        if (own is "tMinC" or "tMaxC" or "tMeanC" or "dewC") return "c";
        if (Ends("Turns")) return "turns";
        return own == "mm" || Ends("Mm") ? "mm" : "";
    }

    private static bool Taken(bool read, double value, LengthUnit? unit, string text, out TypedNumber number)
    {
        number = read ? new(value, unit, text.Trim() != value.ToString("R", CultureInfo.InvariantCulture)) : default;
        return read;
    }
}
