using System.Text.Json;

namespace Closemown.Estimation.Tests;

/// <summary>Reads the tables of outside values that stand beside the tests.</summary>
internal static class CheckFile
{
    public static JsonElement Read(string name) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", name))).RootElement;

    public static double Number(this JsonElement e, string name) => e.GetProperty(name).GetDouble();

    /// <summary>A number, or the given one where the table has null for no limit.</summary>
    public static double Number(this JsonElement e, string name, double missing) =>
        e.GetProperty(name).ValueKind == JsonValueKind.Null ? missing : e.GetProperty(name).GetDouble();

    public static double[] Numbers(this JsonElement e) => [.. e.EnumerateArray().Select(x => x.GetDouble())];

    public static double[] Numbers(this JsonElement e, string name) => e.GetProperty(name).Numbers();

    public static double[][] Table(this JsonElement e, string name) => [.. e.GetProperty(name).EnumerateArray().Select(Numbers)];
}
