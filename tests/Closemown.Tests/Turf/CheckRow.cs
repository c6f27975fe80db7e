using System.Globalization;
using System.Text.Json;

namespace Closemown.Tests.Turf;

/// <summary>One row of Checks/turf/turf.json; its source and mark stand there.</summary>
internal sealed record CheckRow(JsonElement Json)
{
    public static IReadOnlyList<CheckRow> All { get; } =
        [.. JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "turf", "turf.json"))).RootElement.EnumerateArray().Select(r => new CheckRow(r))];

    public static CheckRow Of(string id) => All.Single(r => r.Id == id);

    public string Id => Json.GetProperty("id").GetString()!;

    public string Mark => Json.GetProperty("mark").GetString()!;

    public string Source => Json.GetProperty("source").GetString()!;

    /// <summary>An input as a number.</summary>
    public double this[string name] => Input(name).GetDouble();

    public int Int(string name) => Input(name).GetInt32();

    public double[] List(string name) => [.. Input(name).EnumerateArray().Select(v => v.GetDouble())];

    public string Word(string name) => Input(name).GetString()!;

    /// <summary>What is expected: a number, yes as 1 and no as 0, dates as day numbers; or a list of them.</summary>
    public double[] Expected => Numbers(Json.GetProperty("expected").GetProperty("value"));

    /// <summary>The exact value of the formula where a source prints a rounded one.</summary>
    public double? Full => Json.TryGetProperty("full", out var f) ? f.GetProperty("value").GetDouble() : null;

    public double FullTolerance => Json.GetProperty("full").GetProperty("relTol").GetDouble() * Math.Abs(Full!.Value);

    /// <summary>Allowed difference from an expected value; an exact row bears the rounding of a unit's conversion.</summary>
    public double Tolerance(double expected) =>
        Json.TryGetProperty("absTol", out var abs) ? Math.Max(abs.GetDouble(), 1e-12 * Math.Abs(expected)) : Json.GetProperty("relTol").GetDouble() * Math.Abs(expected);

    private JsonElement Input(string name) => Json.GetProperty("inputs").GetProperty(name).GetProperty("value");

    private static double[] Numbers(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Array => [.. value.EnumerateArray().SelectMany(Numbers)],
        JsonValueKind.True => [1],
        JsonValueKind.False => [0],
        JsonValueKind.String => [DateOnly.Parse(value.GetString()!, CultureInfo.InvariantCulture).DayNumber],
        _ => [value.GetDouble()],
    };
}
