using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Published formulas, reckoned.</summary>
internal sealed class ReckonCommand : CliCommand
{
    private static readonly Argument<string?> Which = new("name") { HelpName = "NAME", Description = "the reckoning; left out: all are listed", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Argument<string[]> Given = new("values") { HelpName = "KEY=VALUE", Description = "its inputs, with units as people write them", Arity = ArgumentArity.ZeroOrMore };

    public ReckonCommand() : base("reckon", "reckon a published formula, with its range and source")
    {
        Examples =
        [
            ("closemown reckon", "list the reckonings"),
            ("closemown reckon clip speed=4.8km/h blades=11 rpm=2000", "travel between two blade passes, and cuts per metre"),
            ("closemown reckon click pitch=1mm detents=14 lever=0.25", "what one click moves"),
            ("closemown reckon share canopy=6mm cut=4mm --json", "for a program"),
            ("closemown reckon screws rollerFrontMm=60 rollerRearMm=60 rollerSpanMm=200 edgeAtMm=100,-26 leftMm=5 rightMm=5.2", "turns of the height screws"),
        ];
        Arguments.Add(Which);
        Arguments.Add(Given);
    }

    public override int Do(Call call)
    {
        if (call.Parsed.GetValue(Which) is not { } name) return List(call);
        var reckoning = Reckoning.All.FirstOrDefault(r => r.Name == name) ?? throw Unknown(name);
        var given = Typed(call, reckoning);
        (double Left, double Right)? sides = reckoning.BySide is { } bySide ? Possible(reckoning, () => bySide(given, call.Style)) : null;
        var (named, outside) = reckoning.ByName is { } byName ? Possible(reckoning, () => byName(given, call.Style)) : (double.NaN, null);
        var value = sides is var (l, r) ? (l + r) / 2 : reckoning.ByName is not null ? named : Value(call, reckoning, given);
        var unit = reckoning.UnitOf?.Invoke(given, call.Style) ?? reckoning.Unit;
        if (call.Json)
        {
            var json = new JsonObject { ["name"] = reckoning.Name, ["value"] = value, ["unit"] = unit, ["source"] = reckoning.Source };
            if (sides is var (jl, jr)) (json["left"], json["right"]) = (jl, jr);
            if (outside is not null) json["outside"] = outside;
            call.Screen.Line(Conversation.Text(json));
            return ExitCodes.Done;
        }
        string Shown(double v) => v.ToString(Math.Abs(v) < 1 ? "0.####" : "0.###", CultureInfo.InvariantCulture).Replace('.', call.Style.DecimalSign);
        var shown = sides is var (left, right) ? $"left {Shown(left)}, right {Shown(right)}" : Shown(value);
        call.Screen.Line(call.Screen.Ink(Tone.Strong, $"{shown}{(unit.Length > 0 ? " " + unit : "")}{(reckoning.Also(value, call.Style) is { } also ? $", {also}" : "")}"));
        if (outside is not null)
        {
            foreach (var line in Wrap.Text($"Outside the published range: {outside}.", call.Screen.Width)) call.Screen.Line(call.Screen.Ink(Tone.Danger, line));
        }
        foreach (var line in About(reckoning, call.Screen.Width)) call.Screen.Line(line);
        return ExitCodes.Done;
    }

    private static T Possible<T>(Reckoning reckoning, Func<T> reckon)
    {
        try
        {
            return reckon();
        }
        catch (ArgumentException e)
        {
            throw CliFault.Refused(e.Message.Split(" (Parameter", 2)[0].Split('\n', 2)[0], $"{reckoning.Name} cannot be reckoned with these values: measure them again.");
        }
    }

    /// <summary>The inputs as typed, by name; a name may be without the unit at its end.</summary>
    private static Dictionary<string, string> Typed(Call call, Reckoning reckoning)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var token in call.Parsed.GetValue(Given) ?? [])
        {
            var at = token.IndexOf('=', StringComparison.Ordinal);
            var key = at > 0 ? token[..at] : token;
            key = reckoning.Keys.FirstOrDefault(k => k.Name != key && FieldNames.Short(k.Name) == key)?.Name ?? key;
            if (at <= 0 || reckoning.Keys.All(k => k.Name != key))
            {
                var near = Spelling.Nearest(key, reckoning.Keys.Select(k => k.Name));
                throw CliFault.Refused($"{reckoning.Name} has no input \"{Spelling.Clip(token)}\".", near is not null ? $"Did you mean {near}=…?" : $"Write {Example(reckoning)}.");
            }
            given[key] = token[(at + 1)..];
        }
        return given;
    }

    private static double Value(Call call, Reckoning reckoning, Dictionary<string, string> given)
    {
        var inputs = new double[reckoning.Keys.Count];
        for (var i = 0; i < inputs.Length; i++)
        {
            var key = reckoning.Keys[i];
            if (!given.TryGetValue(key.Name, out var text))
            {
                inputs[i] = key.Default ?? throw CliFault.Refused($"{reckoning.Name} needs {key.Name}: {key.Help}.", $"Write {Example(reckoning)}.");
                continue;
            }
            (inputs[i], var fault) = key.Read(text, call.Style);
            if (fault is not null) throw CliFault.Refused($"{key.Name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
        }
        try
        {
            return reckoning.Of(inputs);
        }
        catch (ArgumentOutOfRangeException)
        {
            throw CliFault.Refused($"{reckoning.Name} cannot be reckoned with these values.", string.Join('\n', reckoning.Keys.Select(k => $"{k.Name}: {k.Help}")));
        }
    }

    private static int List(Call call)
    {
        if (call.Json)
        {
            call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["reckonings"] = new JsonArray([.. Reckoning.All.Select(r => (JsonNode)new JsonObject { ["name"] = r.Name, ["gives"] = r.Gives, ["unit"] = r.Unit, ["formula"] = r.Formula, ["source"] = r.Source, ["keys"] = new JsonObject(r.Keys.Select(k => KeyValuePair.Create<string, JsonNode?>(k.Name, k.Help))) })]) }));
            return ExitCodes.Done;
        }
        foreach (var r in Reckoning.All)
        {
            call.Screen.Line(call.Screen.Ink(Tone.Strong, $"{r.Name}: {r.Gives}"));
            foreach (var line in About(r, call.Screen.Width)) call.Screen.Line(line);
        }
        return ExitCodes.Done;
    }

    private static IEnumerable<string> About(Reckoning r, int width)
    {
        var column = Math.Max(12, r.Keys.Max(k => k.Name.Length) + 4);
        foreach (var line in Wrap.Beside("  formula", r.Formula, width, column)) yield return line;
        foreach (var k in r.Keys)
            foreach (var line in Wrap.Beside("  " + k.Name, k.Help + (k.Default is { } d ? $"; {d.ToString(CultureInfo.InvariantCulture)} where left out" : ""), width, column)) yield return line;
        foreach (var line in Wrap.Beside("  source", r.Source, width, column)) yield return line;
    }

    private static string Example(Reckoning r) => $"closemown reckon {r.Name} {string.Join(' ', r.Keys.Select(k => k.Default is null ? $"{k.Name}=…" : $"[{k.Name}=…]"))}";

    private static CliFault Unknown(string name)
    {
        var near = Spelling.Nearest(name, Reckoning.All.Select(r => r.Name));
        return CliFault.Refused($"There is no reckoning \"{Spelling.Clip(name)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"There are {string.Join(", ", Reckoning.All.Select(r => r.Name))}.");
    }
}
