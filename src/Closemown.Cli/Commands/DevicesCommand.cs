using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Serving;

namespace Closemown.Cli;

/// <summary>Lists the devices that were paired with a server on this machine.</summary>
internal sealed class DevicesCommand : CliCommand
{
    public DevicesCommand() : base("devices", "the devices paired with closemown serve --lan: list, revoke, a code for a new one")
    {
        Examples =
        [
            ("closemown devices", "list them"),
            ("closemown devices code", "a code to pair one more, good for ten minutes"),
            ("closemown devices revoke phone", "one is lost: it is out at once"),
            ("closemown devices revoke all", "all out"),
        ];
        Subcommands.Add(new DevicesCodeCommand());
        Subcommands.Add(new DevicesRevokeCommand());
    }

    public override int Do(Call call)
    {
        var devices = List(call).All();
        if (call.Json)
        {
            call.Screen.Line(Conversation.Text(new JsonObject
            {
                ["ok"] = true,
                ["devices"] = new JsonArray([.. devices.Select(d => (JsonNode)new JsonObject { ["name"] = d.Name, ["pairedAt"] = d.PairedAt.ToString("O", CultureInfo.InvariantCulture), ["seenAt"] = d.SeenAt.ToString("O", CultureInfo.InvariantCulture) })]),
            }));
            return ExitCodes.Done;
        }
        if (devices.Count == 0) call.Screen.Line($"No device is paired. {call.Around.Called} serve --lan says how one is.");
        foreach (var d in devices) call.Screen.Line($"{d.Name.PadRight(Math.Min(24, devices.Max(o => o.Name.Length)))}  paired {Time(call, d.PairedAt)}, last seen {Time(call, d.SeenAt)}");
        return ExitCodes.Done;
    }

    public static DeviceList List(Call call) => new(Folder(call), call.Around.Time);

    public static string Folder(Call call) => ServeOrder.Folder(call) ?? throw CliFault.Refused("This machine names no folder for settings, where devices are kept.", "Set CLOSEMOWN_SETTINGS to the path of a file.");

    private static string Time(Call call, DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, call.Around.Time.LocalTimeZone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}

/// <summary>Makes a code for one more device.</summary>
internal sealed class DevicesCodeCommand : CliCommand
{
    public DevicesCodeCommand() : base("code", "a code to pair one more device: ten minutes, one use; the one before no longer holds") => Examples = [("closemown devices code", "then enter it on the device, at /pair")];

    public override int Do(Call call)
    {
        var code = new PairingCode(DevicesCommand.Folder(call), call.Around.Time).Make();
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["code"] = code }));
        else call.Screen.Line($"Code to pair one device, good for ten minutes: {code[..4]} {code[4..]}");
        return ExitCodes.Done;
    }
}

/// <summary>Takes a device out.</summary>
internal sealed class DevicesRevokeCommand : CliCommand
{
    private static readonly Argument<string> Name1 = new("name") { HelpName = "NAME", Description = "the device, as listed; or all" };

    public DevicesRevokeCommand() : base("revoke", "take a device out, or all; a server that runs refuses it from then on")
    {
        Examples = [("closemown devices revoke phone", "one"), ("closemown devices revoke all", "all of them")];
        Arguments.Add(Name1);
    }

    public override int Do(Call call)
    {
        var (list, name) = (DevicesCommand.List(call), call.Parsed.GetRequiredValue(Name1));
        int count;
        if (name.Equals("all", StringComparison.OrdinalIgnoreCase)) count = list.RevokeAll();
        else if (list.Revoke(name)) count = 1;
        else
        {
            var near = Spelling.Nearest(name, list.All().Select(d => d.Name));
            throw CliFault.Refused($"No device \"{Spelling.Clip(name)}\" is paired.", near is null ? $"{call.Around.Called} devices lists them." : $"Did you mean \"{near}\"?");
        }
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["revoked"] = count }));
        else call.Screen.Line(count == 1 ? "One device is out." : $"{count} devices are out.");
        return ExitCodes.Done;
    }
}
