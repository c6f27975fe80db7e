using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>How a unit's sink came to be known over its mowings, as a picture of it needs.</summary>
public static class SinkAnswer
{
    /// <summary>The answer.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="unit">The cutting unit.</param>
    /// <param name="area">Only this area; null for all.</param>
    public static JsonObject Of(Desk desk, string unit, string? area)
    {
        ArgumentNullException.ThrowIfNull(desk);
        return new JsonObject
        {
            ["unit"] = unit,
            ["moments"] = new JsonArray([.. SinkHistory.Of(unit, desk.Standing, area).Select(m => (JsonNode)new JsonObject
            {
                ["date"] = m.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                ["area"] = m.Area,
                ["benchMm"] = StepJson.Q(m.BenchMm),
                ["readMm"] = m.ReadMm,
                ["spots"] = m.Spots,
                ["sinkMm"] = StepJson.Q(m.SinkMm),
            })]),
        };
    }
}
