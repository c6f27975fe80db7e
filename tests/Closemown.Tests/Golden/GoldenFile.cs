using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Golden;

/// <summary>A text on record in tests/Checks/golden: what is said now must be that text. To change it on purpose, run the tests with CLOSEMOWN_WRITE_GOLDEN=1 and say why in the commit.</summary>
internal static class GoldenFile
{
    private const int Shown = 8;
    private static readonly bool Writes = Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_GOLDEN") == "1";

    private static string Folder { get; } = Path.Combine(Path.GetDirectoryName(DocsFolder.Find())!, "tests", "Checks", "golden");

    public static void Holds(string name, string text)
    {
        var file = Path.Combine(Folder, name);
        var said = text.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        if (Writes)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, said);
            return;
        }
        Assert.True(File.Exists(file), $"{name} is not on record: run the tests with CLOSEMOWN_WRITE_GOLDEN=1 and look at it.");
        var (kept, now) = (File.ReadAllText(file).Split('\n'), said.Split('\n'));
        var differ = Enumerable.Range(0, Math.Max(kept.Length, now.Length)).Where(i => Line(kept, i) != Line(now, i)).ToList();
        Assert.True(differ.Count == 0, $"{name}: {differ.Count} lines differ from those on record, the first:\n"
            + string.Join('\n', differ.Take(Shown).Select(i => $"line {i + 1}\n  on record: {Line(kept, i)}\n  now:       {Line(now, i)}"))
            + "\nMeant? Run the tests with CLOSEMOWN_WRITE_GOLDEN=1 and say why in the commit.");
    }

    /// <summary>JSON with its numbers to nine digits: the last ones are the processor's, not ours.</summary>
    public static JsonNode? Rounded(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, Rounded(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Rounded)]),
        JsonValue v when v.TryGetValue(out double x) => JsonNode.Parse(x.ToString("G9", CultureInfo.InvariantCulture)),
        _ => node?.DeepClone(),
    };

    private static string Line(string[] lines, int i) => i >= lines.Length ? "(nothing)" : lines[i].Length > 300 ? lines[i][..300] + "…" : lines[i];
}
