using System.Text.Json;
using Closemown.Entries;
using Closemown.Height;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Bench heights from the height screws and back, by the rollers' geometry: the fields of a unit, as they are entered.</summary>
internal static class RollerReckoning
{
    private const string Source = "plane geometry: external common tangent of two circles; docs/model-height.md";

    private static readonly string[] Needed = ["rollerFrontMm", "rollerRearMm", "rollerSpanMm", "edgeAtMm"];

    private static readonly ReckoningKey[] Geometry =
    [
        Key("rollerFrontMm", "diameter of the front roller, which the screws move, like 60mm"),
        Key("rollerRearMm", "diameter of the rear roller"),
        Key("rollerSpanMm", "distance between the roller axes"),
        Key("edgeAtMm", "bedknife edge from the front axis, rearward and upward, with both axes level at zero turns: 100,-26"),
        Key("screwMmPerTurn", "pitch of the thread, mm; 1.25 where left out"),
        Key("screwLever", "travel of the bracket over travel of the screw; 1 where left out"),
        Key("adjusterAtMm", "brackets left and right from the middle; -280,280 where left out"),
        Key("stationAtMm", "where the height is read: left, centre, right; -230,0,230 where left out"),
    ];

    /// <summary>Heights from screws.</summary>
    public static Reckoning Bench { get; } = new("bench", "bench height left and right from the turns of the height screws", "mm",
        "the edge over the common tangent of both rollers, each bracket lowered by turns × pitch × lever", Source,
        [.. Geometry, Key("leftTurns", "turns of the left screw from level axes, + raises the edge; 0 where left out"), Key("rightTurns", "turns of the right screw")], _ => double.NaN)
    {
        BySide = (given, style) =>
        {
            var geometry = Of(given, style);
            var heights = BenchFromScrews.Heights(geometry, new(Number(given, "leftTurns", style) ?? 0, Number(given, "rightTurns", style) ?? 0));
            return (heights.LeftMm, heights.RightMm);
        },
    };

    /// <summary>Screws from heights.</summary>
    public static Reckoning Screws { get; } = new("screws", "turns of both height screws that give a bench height left and right", "turns",
        "the reverse of bench: two coupled equations solved together; + raises the edge", Source,
        [.. Geometry, Key("leftMm", "bench height wanted at the left; above 0"), Key("rightMm", "at the right; as at the left where left out"), Key("fromLeftMm", "bench height now at the left; level axes where left out"), Key("fromRightMm", "now at the right")], _ => double.NaN)
    {
        BySide = (given, style) =>
        {
            var geometry = Of(given, style);
            var left = Number(given, "leftMm", style) ?? throw CliFault.Refused("screws needs leftMm: the bench height wanted at the left.", "Write leftMm=5 and rightMm=5.");
            var wanted = new BenchPair(left, Number(given, "rightMm", style) ?? left);
            try
            {
                var turns = Number(given, "fromLeftMm", style) is { } now
                    ? BenchFromScrews.TurnsBetween(geometry, new(now, Number(given, "fromRightMm", style) ?? now), wanted)
                    : BenchFromScrews.Turns(geometry, wanted);
                return (turns.Left, turns.Right);
            }
            catch (ArgumentException e)
            {
                throw CliFault.Refused($"These rollers cannot give {wanted.LeftMm:0.###} mm left and {wanted.RightMm:0.###} mm right. {e.Message.Split(" (Parameter", 2)[0]}",
                    $"At level axes they stand at {BenchFromScrews.Heights(geometry, default).LeftMm:0.###} mm: ask for a height nearer to that, or measure the rollers again.");
            }
        },
    };

    private static ReckoningKey Key(string name, string help) => new(name, help, (_, _) => (double.NaN, null));

    private static double? Number(IReadOnlyDictionary<string, string> given, string name, WritingStyle style)
    {
        if (!given.TryGetValue(name, out var text)) return null;
        return NumberText.TryRead(new Field<double>(name, FieldForm.Number, ""), text, style, out var n, out var fault) ? n.Value
            : throw CliFault.Refused($"{name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
    }

    private static RollerGeometry Of(IReadOnlyDictionary<string, string> given, WritingStyle style)
    {
        var kind = UnitEntry.Kind;
        var typed = new TypedEntry(kind, style);
        foreach (var (name, text) in given)
        {
            if (kind.IndexOf(name) < 0) continue;
            typed.Set(kind.Fields[kind.IndexOf(name)], text);
            typed.Confirm(name);
        }
        if (Needed.FirstOrDefault(n => !typed.Has(n)) is { } missing)
            throw CliFault.Refused($"It needs {missing}: {Geometry.First(k => k.Name == missing).Help}.", "Write rollerFrontMm=60 rollerRearMm=60 rollerSpanMm=200 edgeAtMm=100,-26.");
        var json = typed.Json();
        json["unit"] = "reckoned";
        using var document = JsonDocument.Parse(json.ToJsonString());
        var faults = EntryReader.Read(document.RootElement, new EntryContext { Now = () => DateTimeOffset.UnixEpoch, NewId = t => EntryIds.Make(t, 0, 0) }, out var entry);
        if (entry is null) throw CliFault.Refused($"{faults[0].Field}: {faults[0].Message}", faults[0].Remedy);
        return RollerGeometry.Of([entry])!;
    }
}
