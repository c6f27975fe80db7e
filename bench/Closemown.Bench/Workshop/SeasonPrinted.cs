using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>One season step by step, so that a person can read what went wrong.</summary>
internal sealed class SeasonPrinted : ISeasonWatch
{
    private CuttingUnit? unit;
    private int mowing = 1;

    /// <summary>Arguments: those of the workshop, and --seed S (1).</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var set = o.Settings;
        var who = Roster.Of(set, o.Word("--strategy") ?? Roster.Closemown)[0];
        Season.Of(o.Whole("--seed", 1), o.Circumstances(), o.Whole("--mowings", 16), who.Make, set, new SeasonPrinted());
        return 0;
    }

    public void Begins(CuttingUnit unit, BenchWork bench, IStrategy strategy)
    {
        this.unit = unit;
        var m = unit.Make;
        Line($"unit {m.Seed}, {(m.Own ? "own after a rebuild" : "second-hand")}; click {m.ClickUm[0]:0.0} {m.ClickUm[1]:0.0}, opens an hour {m.OpeningUmPerHour[0]:0.0} {m.OpeningUmPerHour[1]:0.0}, an outing {m.OpeningUmPerOuting[0]:0.0} {m.OpeningUmPerOuting[1]:0.0}, "
            + $"dead band {m.DeadBandUm[0]:0} {m.DeadBandUm[1]:0}, dulls {m.DullingUmPerHour:0.0}, lap opens {m.LapUmPerMinute:0.0} a minute and halves in {m.HalfLifeMinutes:0.0}, "
            + $"a blade stands out {m.StandsOut.Max(s => s.Max()):0}, strip {m.StripUm:0}, paper shift {m.PaperShiftUm:0}, clean to {m.CleanUm:0} µm");
        Line($"mowing 1   stands {StepText.Truth(unit)}");
        if (strategy is Guided guided) guided.Wrote = Wrote;
        else bench.Did = did => Line($"    {did}");
    }

    public void BeforeMowing(int mowing, double minutes, IReadOnlyList<Said> said)
    {
        this.mowing = mowing + 1;
        var inside = Loss.InTolerance(unit!);
        Line($"  {(inside ? "mows" : "OUT ")}     truth {StepText.Truth(unit!)}, {minutes:0.0} min");
        if (said.Count > 0) Line($"           said  gap {Told(said, "clearance", "0")}, edge {Told(said, "edge", "0.0")}, usable {Told(said, "usable gap", "0")}");
        var missed = said.Where(s => !s.Holds(90)).ToArray();
        if (missed.Length > 0)
            Line($"           MISS  {string.Join(", ", missed.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.What} {s.At}{(s.Holds(99) ? "" : " (99 %)")}: {s.Truth:0.0} not {s.P05:0.0}…{s.P95:0.0}")))}");
    }

    public void AfterMowing(Outing outing)
    {
        Line($"           cut clean {outing.Clean:0.00}");
        if (outing.Strike is { } s) Line($"           HIT {s.Station}, stands off {s.OffUm:0}, ends {s.EndsUm[0]:+0;-0} {s.EndsUm[1]:+0;-0}{(s.Seen ? "" : ", not noticed")}");
        Line($"mowing {mowing,-3} stands {StepText.Truth(unit!)}");
    }

    private static void Wrote(JsonObject entry, JsonNode? step)
    {
        if (step is null)
        {
            Console.WriteLine($"    {StepText.Of(entry)}");
            return;
        }
        var expects = StepText.Expects(step);
        Console.WriteLine($"    {StepText.Of(step)}{(expects.Length > 0 ? $" [{expects}]" : "")}{((string)step["do"]! is "clicks" or "lap" ? "" : $" → {StepText.Of(entry)}")}");
    }

    private static string Told(IReadOnlyList<Said> said, string what, string form) =>
        string.Join(' ', said.Where(s => s.What == what).Select(s => $"{s.Mean.ToString(form, CultureInfo.InvariantCulture)}±{s.Sd.ToString(form, CultureInfo.InvariantCulture)}"));

    private static void Line(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    private static void Line(string line) => Console.WriteLine(line);
}
