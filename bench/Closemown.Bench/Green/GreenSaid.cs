using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>What a strategy said, held to what came, in lines under the table.</summary>
internal static class GreenSaid
{
    public static void Print(string title, GreenSeason[] seasons)
    {
        SaidCount Of(Func<GreenHeard, SaidCount> of) => SaidCount.Of(seasons.Select(s => of(s.Heard)));
        var (early, later) = (Of(h => h.EarlyHeight), Of(h => h.LaterHeight));
        if (early.Count + later.Count == 0) return;
        Console.WriteLine(title);
        Line("standing height", SaidCount.Of([early, later]));
        Line($"  of the first {GreenHeard.EarlyDays} days", early);
        Line("  of the rest", later);
        Line("growth of the coming week", Of(h => h.WeekGrowth));
        Line("standing height in a week, unmown", Of(h => h.InAWeek));
        Console.WriteLine($"  growth rate off after 4 and 10 weeks: {Rate(seasons, h => h.RateOff4)}, {Rate(seasons, h => h.RateOff10)}");
        Promises(seasons);
        Console.WriteLine();
    }

    private static void Line(string what, SaidCount said)
    {
        if (said.Count == 0) return;
        var share = Table.Number(said.Within / (double)said.Count, "0.000");
        Console.WriteLine($"  {what}: within what was said with 90 in 100 {share} of {said.Count}; "
            + $"off by {Table.Number(said.Bias, "0.00")} mm on average, {Table.Number(said.RootMeanSquare, "0.00")} root mean square");
    }

    /// <summary>A season in which nothing was said of the rate counts as all off.</summary>
    private static string Rate(GreenSeason[] seasons, Func<GreenHeard, double?> of) =>
        Table.Number(seasons.Average(s => of(s.Heard) ?? 1), "0.00");

    private static void Promises(GreenSeason[] seasons)
    {
        var lower = seasons.Where(s => s.Lowers).ToList();
        var promised = lower.Where(s => s.Heard.Promise is not null).ToList();
        if (promised.Count == 0) return;
        Kept("  wish reached", promised);
        var planned = promised.Where(s => !s.Heard.Promise!.Value.ReckonedOn).ToList();
        Console.WriteLine($"    in {promised.Count - planned.Count} of {promised.Count} the day lay past those planned: "
            + "reckoned on from the plan's pace, with no probability behind it");
        Kept("    in the others", planned);
        if (lower.Count > promised.Count) Console.WriteLine($"    no day was promised in {lower.Count - promised.Count} of {lower.Count}");
    }

    private static void Kept(string what, List<GreenSeason> seasons)
    {
        // A day past the season's end can be kept there, but not broken.
        var held = seasons.Where(s => !s.PromisedPastEnd || s.AfterPromise is not null).ToList();
        if (held.Count == 0) return;
        var after = held.Where(s => s.AfterPromise is not null).Select(s => s.AfterPromise!.Value).Order().ToList();
        var kept = after.Count(a => a <= 0);
        var share = Table.Number(100.0 * kept / held.Count, "0");
        var mean = after.Count == 0 ? "–" : Table.Number(after.Average(), "0.0");
        Console.WriteLine($"{what}: by the day promised with 80 in 100 in {kept} of {held.Count} ({share} %); "
            + $"{mean} days after it on average, {(after.Count == 0 ? "–" : after[after.Count / 2])} in the middle; "
            + $"never in {held.Count - after.Count}");
    }
}
