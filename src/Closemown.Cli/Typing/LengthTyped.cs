using System.CommandLine;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>A length given with an option.</summary>
internal static class LengthTyped
{
    /// <summary>The length, mm; null where the option was not given.</summary>
    /// <exception cref="CliFault">The text is no length.</exception>
    public static double? Mm(Call call, Option<string> option)
    {
        if (call.Parsed.GetValue(option) is not { } text) return null;
        // A bare number is in the unit the person reads heights in.
        var unit = call.Style.Height == HeightUnit.Mm ? LengthUnit.Mm : LengthUnit.Inch;
        return Length.TryParse(text, call.Style, unit, out var length, out var fault) ? length.Mm
            : throw CliFault.Refused($"{option.Name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
    }
}
