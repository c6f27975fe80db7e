using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Shows what the person has set, and where each came from.</summary>
internal sealed class SettingsCommand : CliCommand
{
    public SettingsCommand() : base("settings", "words, units and the book's place: what holds, and where each came from")
    {
        Examples =
        [
            ("closemown settings", "show all, each with where it came from"),
            ("closemown settings set words uk", "cylinder and bottom blade for reel and bedknife"),
            ("closemown settings set gap thou", "thousandths of an inch"),
            ("closemown settings unset gap", "back to the default"),
        ];
        Details = ["An option goes before the environment, that before the settings file, that before the default.", .. Setting.All.Select(s => $"{s.Name}: {s.Help}; {s.May} (environment: {s.Variable})")];
        Subcommands.Add(new SettingsSetCommand());
        Subcommands.Add(new SettingsUnsetCommand());
    }

    public override int Do(Call call)
    {
        var held = call.Preferences.Held.Select(h => h.Setting == Setting.Book ? h with { Value = call.Location.Path, Source = h.Source == "default" ? "usual folder" : h.Source } : h).ToList();
        var file = call.Preferences.File;
        if (call.Json)
        {
            call.Screen.Line(Conversation.Text(new JsonObject
            {
                ["ok"] = true,
                ["settings"] = new JsonObject(held.Select(h => KeyValuePair.Create<string, JsonNode?>(h.Setting.Name, new JsonObject { ["value"] = h.Value, ["source"] = h.Source }))),
                ["file"] = file.Path,
            }));
            return ExitCodes.Done;
        }
        var widest = held.Max(h => h.Value.Length);
        foreach (var h in held) call.Screen.Line($"{h.Setting.Name,-17} {h.Value.PadRight(Math.Min(widest, 40))}  {h.Source}");
        call.Screen.Line();
        call.Screen.Line($"File: {file.Path ?? "none"}{(file.Exists ? "" : " (not there yet)")}");
        return ExitCodes.Done;
    }

    public static Setting Named(string name) => Setting.All.FirstOrDefault(s => s.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
        ?? throw CliFault.Refused($"There is no setting \"{Spelling.Clip(name)}\".", Spelling.Nearest(name, Setting.All.Select(s => s.Name)) is { } near ? $"Did you mean \"{near}\"?" : $"Settings are {string.Join(", ", Setting.All.Select(s => s.Name))}.");
}

/// <summary>Sets one.</summary>
internal sealed class SettingsSetCommand : CliCommand
{
    private static readonly Argument<string> Name1 = new("name") { HelpName = "NAME", Description = "the setting" };
    private static readonly Argument<string> Value = new("value") { HelpName = "VALUE", Description = "what it shall be" };

    public SettingsSetCommand() : base("set", "set one")
    {
        Examples = [("closemown settings set words uk", "UK words"), ("closemown settings set decimal comma", "5,25 for 5.25"), ("closemown settings set book ~/turf/book.closemown", "another place for the book")];
        Arguments.Add(Name1);
        Arguments.Add(Value);
    }

    public override int Do(Call call)
    {
        var setting = SettingsCommand.Named(call.Parsed.GetRequiredValue(Name1));
        var typed = call.Parsed.GetRequiredValue(Value);
        var value = setting.Normal(typed) ?? throw CliFault.Refused($"\"{Spelling.Clip(typed)}\" cannot be the {setting.Help}.", $"{setting.Name} may be {setting.May}.");
        if (setting == Setting.Book) value = Path.GetFullPath(value);
        var file = SettingsFile.Read(call.Around.Variable);
        file.Set(setting.Name, value);
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["name"] = setting.Name, ["value"] = value, ["file"] = file.Path }));
        else call.Screen.Line($"{setting.Name} is now {value}, kept in {file.Path}.");
        return ExitCodes.Done;
    }
}

/// <summary>Takes one out of the file.</summary>
internal sealed class SettingsUnsetCommand : CliCommand
{
    private static readonly Argument<string> Name1 = new("name") { HelpName = "NAME", Description = "the setting" };

    public SettingsUnsetCommand() : base("unset", "go back to the default of one")
    {
        Examples = [("closemown settings unset gap", "back to µm")];
        Arguments.Add(Name1);
    }

    public override int Do(Call call)
    {
        var setting = SettingsCommand.Named(call.Parsed.GetRequiredValue(Name1));
        var file = SettingsFile.Read(call.Around.Variable);
        file.Set(setting.Name, null);
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["name"] = setting.Name, ["value"] = null, ["file"] = file.Path }));
        else call.Screen.Line($"{setting.Name} is not set any more.");
        return ExitCodes.Done;
    }
}
