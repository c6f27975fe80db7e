using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights.Strategies;

/// <summary>A person who writes down what is read and turned and does what Closemown says, through the pipe's own path.</summary>
/// <param name="unit">The unit: looked at only to hold what is said against it.</param>
/// <param name="probability">How sure it is asked to be.</param>
internal sealed class Guided(BenchUnit unit, double probability) : IHeightStrategy
{
    private const int MostSteps = 120;
    private readonly Talk talk = new(AdviceSettings.Default);
    private DateTimeOffset now = new(2000, 4, 1, 9, 0, 0, TimeSpan.Zero);
    private int setting;

    /// <summary>All that was said of the bench heights: after every pair of readings, and when a setting was done.</summary>
    public List<HeightSaid> Said { get; } = [];

    /// <summary>How sure it was when it left a setting, and whether both sides were within.</summary>
    public List<(double Sure, bool Within)> Left { get; } = [];

    public void Set(HeightWork bench, double wantedMm)
    {
        if (setting++ == 0) Write("unit", []);
        for (var i = 0; i < MostSteps; i++)
        {
            var step = talk.Ask(string.Create(CultureInfo.InvariantCulture,
                $$$"""{"ask":"next","unit":"unit","aim":{"benchMm":{{{wantedMm}}},"tolMm":{{{Setting.TolMm}}},"probability":{{{probability}}}}}"""))["next"]!;
            if (Do(bench, step)) continue;
            Left.Add(((double)step["within"]!, unit.WorstOffMm(wantedMm) <= Setting.TolMm));
            Look("when done");
            return;
        }
        throw new InvalidOperationException("Bug in the advice: a setting does not end.");
    }

    public void Mown()
    {
        now += TimeSpan.FromDays(2);
        Write("mow", new() { ["hours"] = 0.5 });
        now += TimeSpan.FromDays(2);
    }

    private bool Do(HeightWork bench, JsonNode step)
    {
        switch ((string)step["do"]!)
        {
            case "gauge":
                var (left, right) = bench.Read();
                Write("gauge", new() { ["leftMm"] = left, ["rightMm"] = right });
                Look("at a reading");
                return true;
            case "screw":
                var (l, r) = ((double?)step["leftTurns"] ?? 0, (double?)step["rightTurns"] ?? 0);
                bench.Turn(l, r);
                Write("screw", new() { ["leftTurns"] = l, ["rightTurns"] = r });
                return true;
            case "lock":
                bench.Tighten();
                Write("locked", []);
                return true;
            case "mow":
                return false;
            default:
                throw new InvalidOperationException($"{step["do"]} is no step of a height setting.");
        }
    }

    private void Look(string when)
    {
        var bench = talk.Ask("""{"ask":"height","unit":"unit"}""")["height"]!["benchMm"]!;
        Said.Add(HeightSaid.Of(when, setting, unit.TrueMm(0), bench["left"]!));
        Said.Add(HeightSaid.Of(when, setting, unit.TrueMm(1), bench["right"]!));
    }

    private void Write(string kind, JsonObject entry)
    {
        now += TimeSpan.FromMinutes(1);
        (entry["kind"], entry["unit"], entry["at"]) = (kind, "unit", now.ToString("o", CultureInfo.InvariantCulture));
        talk.Write(entry.ToJsonString());
    }
}
