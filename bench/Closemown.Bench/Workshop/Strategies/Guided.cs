using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Entries;

namespace Closemown.Bench.Workshop.Strategies;

/// <summary>A person who writes down what is seen and does what Closemown says, through the pipe's own path.</summary>
internal sealed class Guided : IStrategy
{
    private const int MostSteps = 40;
    private const double WorkshopAsRepairedMinutes = 75;      // a repair that takes longer is the grinder's
    private const int AskedFrom = 3;                          // clicks at once at a side that nobody is asked about
    private const int ThinStripUm = 50;
    private const string Unit = "unit";
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private readonly Talk talk;
    private readonly GuidedManner manner;
    private int mowings;
    private int stripUm = 80;
    private DateTimeOffset now = new(2000, 4, 1, 9, 0, 0, TimeSpan.Zero);

    public Guided(AdviceSettings settings, bool own, GuidedManner? manner = null)
    {
        this.manner = manner ?? new();
        talk = new Talk(settings, () => now);
        var unit = Entry("unit");
        unit["blades"] = UnitMake.Blades;
        if (this.manner.Priors.Count > 0) unit["priors"] = new JsonObject(this.manner.Priors.Select(p => KeyValuePair.Create<string, JsonNode?>(p.Name, new JsonArray(p.Mean, p.Sd))));
        Write(unit);
        var strip = Entry("strip");
        (strip["um"], strip["sdUm"]) = (stripUm, 4);
        Write(strip);
        if (!own) return;
        var grind = Entry("grind");
        grind["what"] = "both";
        Write(grind);
        var rebuild = Entry("rebuild");
        rebuild["groundOnBar"] = true;
        Write(rebuild);
    }

    /// <summary>Told of every step that is asked for, before it is done.</summary>
    public Action<JsonNode>? Heard { get; set; }

    /// <summary>Told of every entry, with the step that it answers; null where it answers none.</summary>
    public Action<JsonObject, JsonNode?>? Wrote { get; set; }

    public void Work(BenchWork bench)
    {
        if (manner.FixedChecks)
        {
            WriteReading(bench, "contact", [0, 2], null);
            WriteReading(bench, "paper-cut", [0, 1, 2], null);
        }
        HeavyTouch? heavy = null;
        for (var i = 0; i < MostSteps; i++)
        {
            var step = talk.Next(manner.AtBench || bench.Opened);
            Heard?.Invoke(step);
            if (heavy is not null) bench.Count.FeltHeavy(heavy.BackedOffBy(step));
            if ((string)step["do"]! == "mow")
            {
                bench.SaysMow();
                return;
            }
            bench.Count.NewStep();
            heavy = HeavyTouch.In(Do(bench, step));
        }
    }

    /// <summary>Tells how the last mowing left the swath.</summary>
    public void SeesSwath(BenchWork bench) => WriteReading(bench, "swath", [0, 1, 2], null);

    public void Mown(BenchWork bench, Strike? heard)
    {
        var mow = Entry("mow");
        mow["hours"] = bench.Hours;
        now += TimeSpan.FromHours(bench.Hours);
        Write(mow);
        SeesSwath(bench);
        if (heard is not null)
        {
            var strike = Entry("strike");
            if (heard.PlaceSeen) strike["where"] = Stations.All[heard.Station];
            Write(strike);
        }
        now += TimeSpan.FromDays(3 + (mowings++ % 2));
    }

    /// <summary>The book, to be read.</summary>
    public Talk Book => talk;

    /// <summary>Does a step and writes it down; null where there is nothing to write.</summary>
    private JsonObject? Do(BenchWork bench, JsonNode step)
    {
        var act = (string)step["do"]!;
        var entry = Entry(act);
        switch (act)
        {
            case "fit":
                (entry["playLeft"], entry["playRight"], entry["knifeScrews"]) = ("none", "none", "tight");
                bench.LookAtFit();
                break;
            case "clicks":
                var (left, right) = ((int?)step["left"] ?? 0, (int?)step["right"] ?? 0);
                (entry["left"], entry["right"]) = (left, right);
                // So many at once the book asks about; the person did what was said.
                if (Math.Max(Math.Abs(left), Math.Abs(right)) > AskedFrom) entry["confirmed"] = new JsonArray("left", "right");
                bench.Turn(left, right);
                break;
            case "lap":
                entry["minutes"] = (double)step["minutes"]!;
                bench.Lap((double)step["minutes"]!);
                break;
            case "square-up":
                entry["stripUm"] = stripUm;
                bench.SquareUp();
                break;
            case "stone":
                entry["what"] = "face";
                bench.File();
                break;
            case "repair" when (double)step["takesMinutes"]! < WorkshopAsRepairedMinutes:
                entry = Entry("rebuild");
                bench.Reassemble();
                break;
            case "grind" or "repair":
                entry = Entry("grind");
                entry["what"] = "both";
                bench.SendToGrind();
                break;
            case "wait":
                now += TimeSpan.FromMinutes((double)step["minutes"]!);
                return null;
            case "straightedge":
                entry = Entry("measure");
                (entry["what"], entry["centre"]) = (act, bench.Hollow((double)step["takesMinutes"]!));
                break;
            case "knife-screws":
                entry = Entry("service");
                entry["what"] = act;
                bench.SetKnifeScrews((double)step["takesMinutes"]!);
                break;
            case "strip":
                entry["um"] = stripUm = ThinStripUm;
                bench.TakeStrip(ThinStripUm);
                break;
            default:
                return WriteReading(bench, act, [.. step["stations"]!.AsArray().Select(s => Stations.IndexOf((string?)s))], step);
        }
        Write(entry, step);
        return entry;
    }

    private JsonObject WriteReading(BenchWork bench, string check, int[] at, JsonNode? step)
    {
        var entry = Entry(check);
        foreach (var s in at) entry[Stations.All[s]] = bench.Read(check, s);
        Write(entry, step);
        return entry;
    }

    private static JsonObject Entry(string kind) => new() { ["kind"] = kind, ["unit"] = Unit };

    private void Write(JsonObject entry, JsonNode? step = null)
    {
        now += Minute;
        entry["at"] = now.ToString("o", CultureInfo.InvariantCulture);
        talk.Write(entry.ToJsonString());
        Wrote?.Invoke(entry, step);
    }
}
