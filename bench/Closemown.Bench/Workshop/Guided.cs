using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Bench.Workshop;

/// <summary>A person who does what Closemown says, through the pipe's own path.</summary>
internal sealed class Guided
{
    private const int MostSteps = 30;
    private const string Unit = "unit";
    private readonly Conversation talk;

    public Guided(AdviceSettings settings)
    {
        talk = new Conversation(new MemoryBook(), settings, Phrasing.Plain, new SequentialIds().Next);
        Say("""{"kind":"unit","unit":"unit","blades":10}""");
        Say("""{"kind":"strip","unit":"unit","um":80,"sdUm":4}""");
    }

    public double Work(CuttingUnit unit)
    {
        var minutes = 0.0;
        for (var i = 0; i < MostSteps; i++)
        {
            var step = Say("""{"ask":"next","unit":"unit","atBench":true}""")["next"]!;
            if ((string)step["do"]! == "mow") break;
            minutes += (double)step["takesMinutes"]!;
            Do(unit, step);
        }
        return minutes;
    }

    public void Mown(CuttingUnit unit)
    {
        Say(new JsonObject { ["kind"] = "mow", ["unit"] = Unit, ["hours"] = unit.Hours }.ToJsonString());
        Say(Reading(unit, "swath", [0, 1, 2]).ToJsonString());
    }

    private void Do(CuttingUnit unit, JsonNode step)
    {
        var act = (string)step["do"]!;
        var entry = new JsonObject { ["kind"] = act, ["unit"] = Unit };
        switch (act)
        {
            case "fit":
                (entry["playLeft"], entry["playRight"], entry["knifeScrews"]) = ("none", "none", "tight");
                break;
            case "clicks":
                (entry["left"], entry["right"]) = ((int)step["left"]!, (int)step["right"]!);
                unit.Turn(0, (int)step["left"]!);
                unit.Turn(1, (int)step["right"]!);
                break;
            case "lap":
                entry["minutes"] = (double)step["minutes"]!;
                unit.Lap((double)step["minutes"]!);
                break;
            case "square-up":
                entry["stripUm"] = 80;
                unit.SquareUp();
                break;
            case "stone":
                entry["what"] = "face";
                unit.File();
                break;
            case "grind" or "repair":
                entry = new JsonObject { ["kind"] = "grind", ["unit"] = Unit, ["what"] = "both" };
                unit.Grind();
                break;
            default:
                entry = Reading(unit, act, [.. step["stations"]!.AsArray().Select(s => Stations.IndexOf((string?)s))]);
                break;
        }
        Say(entry.ToJsonString());
    }

    private static JsonObject Reading(CuttingUnit unit, string check, int[] at)
    {
        var entry = new JsonObject { ["kind"] = check, ["unit"] = Unit };
        foreach (var s in at) entry[Stations.All[s]] = unit.Read(check, s);
        return entry;
    }

    private JsonNode Say(string line)
    {
        var answer = JsonNode.Parse(talk.Say(line))!;
        return (bool)answer["ok"]! ? answer : throw new InvalidOperationException($"{line}\n{answer}");
    }
}
