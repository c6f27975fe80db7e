using System.Text.Json;

namespace Closemown.Tests.Height;

/// <summary>Rows of Checks/mechanics/height.json; each names its source and mark there.</summary>
internal static class CheckRows
{
    private static readonly JsonElement All =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "mechanics", "height.json"))).RootElement;

    public static JsonElement Row(string id) => All.EnumerateArray().Single(r => r.GetProperty("id").GetString() == id);

    public static double Expected(string id, string name) => Row(id).GetProperty("expected").GetProperty(name).GetProperty("value").GetDouble();

    public static double Input(string id, string name) => Value(id, name).GetDouble();

    public static double[] Inputs(string id, string name) => [.. Value(id, name).EnumerateArray().Select(v => v.GetDouble())];

    public static string Word(string id, string name) => Value(id, name).GetString()!;

    private static JsonElement Value(string id, string name) => Row(id).GetProperty("inputs").GetProperty(name).GetProperty("value");

    /// <summary>Lines of a data file, split at commas, without the heading.</summary>
    public static IEnumerable<string[]> Data(string file) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Checks", "data", file)).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));
}
