using System.Text.Json;
using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>Reads the <c>aim</c> of a question.</summary>
internal static class AimReader
{
    private const double LeastMm = 0.5, MostMm = 150;

    /// <summary>The question, or null with what is wrong with it.</summary>
    public static AimQuestion? Read(JsonElement aim, string unit, DateTimeOffset now, out EntryFault? fault)
    {
        if (aim.ValueKind != JsonValueKind.Object)
        {
            fault = new(FaultCodes.BadValue, "aim", "The aim is not an object.", """Write "aim":{"benchMm":6} or "aim":{"cutMm":4,"area":"green"}.""");
            return null;
        }
        foreach (var field in aim.EnumerateObject())
        {
            if (field.Name is "benchMm" or "cutMm" or "area" or "tolMm" or "probability") continue;
            fault = new(FaultCodes.BadValue, $"aim.{Spelling.Clip(field.Name)}", $"An aim has no \"{Spelling.Clip(field.Name)}\".", "It has benchMm or cutMm, and may have area, tolMm and probability.");
            return null;
        }
        if (!Number(aim, "benchMm", LeastMm, MostMm, "mm", out var bench, out fault) || !Number(aim, "cutMm", LeastMm, MostMm, "mm", out var cut, out fault)
            || !Number(aim, "tolMm", 0.005, 5, "mm", out var tol, out fault) || !Number(aim, "probability", 0.5, 0.999, "as a share", out var sure, out fault)) return null;
        if ((bench is null) == (cut is null))
        {
            fault = bench is null
                ? new(FaultCodes.Missing, "aim.benchMm", "The aim names no height.", "Add \"benchMm\", what the gauge shall read, or \"cutMm\", what the turf shall be cut at.")
                : new(FaultCodes.Conflict, "aim.cutMm", "The aim names a bench height and a cut height.", "Leave one out: the other follows from it.");
            return null;
        }
        string? area = null;
        if (aim.TryGetProperty("area", out var a) && a.ValueKind != JsonValueKind.Null)
        {
            area = a.ValueKind == JsonValueKind.String ? a.GetString() : null;
            if (area is not { Length: > 0 and <= 80 })
            {
                fault = new(FaultCodes.BadValue, "aim.area", $"{Spelling.Clip(a.GetRawText())} is no area.", "Write its short name in quotes.");
                return null;
            }
        }
        return new(unit, now, bench, cut, area, tol ?? HeightAim.DefaultTolMm, sure ?? HeightAim.DefaultProbability);
    }

    /// <summary>An optional number of a question within a range; false with what is wrong with it.</summary>
    public static bool Number(JsonElement question, string field, double low, double high, string unit, out double? value, out EntryFault? fault)
    {
        (value, fault) = (null, null);
        if (!question.TryGetProperty(field, out var v) || v.ValueKind == JsonValueKind.Null) return true;
        if (v.ValueKind == JsonValueKind.Number && v.TryGetDouble(out var x) && x >= low && x <= high)
        {
            value = x;
            return true;
        }
        fault = new(FaultCodes.BadValue, field, $"{Spelling.Clip(v.GetRawText())} is not within {N(low)} to {N(high)} ({unit}).", $"Write a number from {N(low)} to {N(high)}.");
        return false;
    }

    private static string N(double x) => x.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
