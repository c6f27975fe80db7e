using System.Text.Json;
using System.Text.Json.Nodes;

namespace Closemown.Cli;

/// <summary>The small file with what a person has set.</summary>
internal sealed class SettingsFile
{
    public const string Variable = "CLOSEMOWN_SETTINGS";
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };
    private readonly JsonObject values;

    private SettingsFile(string? path, JsonObject values) => (Path, this.values) = (path, values);

    /// <summary>Where it is, or would be; null where the machine names no folder for settings.</summary>
    public string? Path { get; }

    public bool Exists => Path is not null && File.Exists(Path);

    /// <summary>Reads the file; one that is not there is empty.</summary>
    /// <exception cref="CliFault">It cannot be read.</exception>
    public static SettingsFile Read(Func<string, string?> variable)
    {
        var path = Place(variable);
        if (path is null || !File.Exists(path)) return new(path, []);
        try
        {
            if (JsonNode.Parse(File.ReadAllText(path)) is JsonObject read && IsReadable(read)) return new(path, read);
        }
        catch (Exception e) when (e is JsonException or UnauthorizedAccessException or InvalidOperationException or ArgumentException)
        {
        }
        throw CliFault.Refused($"The settings in {path} cannot be read.", "Correct the file (a JSON object), or move it away and set things anew.");
    }

    /// <summary>Whether all of it can be read: names and texts are only decoded when they are asked for, and a name given twice is only then found.</summary>
    private static bool IsReadable(JsonObject read) =>
        read.All(p => p.Value is not JsonValue v || v.GetValueKind() != JsonValueKind.String || v.GetValue<string>() is not null);

    public string? this[string name] => values[name] switch
    {
        JsonValue v when v.GetValueKind() == JsonValueKind.String => v.GetValue<string>(),
        JsonValue v when v.GetValueKind() == JsonValueKind.Number => v.ToJsonString(),
        _ => null,
    };

    /// <summary>Sets a value, or with null takes it out, and writes the file.</summary>
    public void Set(string name, string? value)
    {
        if (Path is null) throw CliFault.Refused("This machine names no folder for settings.", $"Set {Variable} to the path of a file.");
        if (value is null) values.Remove(name);
        else values[name] = value;
        if (System.IO.Path.GetDirectoryName(Path) is { Length: > 0 } folder) Directory.CreateDirectory(folder);
        var part = Path + ".part";
        File.WriteAllText(part, values.ToJsonString(Indented) + "\n");
        File.Move(part, Path, overwrite: true);
    }

    private static string? Place(Func<string, string?> variable)
    {
        if (variable(Variable) is { Length: > 0 } told) return System.IO.Path.GetFullPath(told);
        string? Full(string name) => variable(name) is { Length: > 0 } folder && System.IO.Path.IsPathFullyQualified(folder) ? folder : null;
        var home = Full("HOME");
        var config = OperatingSystem.IsWindows() ? Full("APPDATA")
            : OperatingSystem.IsMacOS() ? home is null ? null : System.IO.Path.Combine(home, "Library", "Application Support")
            : Full("XDG_CONFIG_HOME") ?? (home is null ? null : System.IO.Path.Combine(home, ".config"));
        return config is null ? null : System.IO.Path.Combine(config, "closemown", "settings.json");
    }
}
