using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>The seasons of all who mowed, side by side: a table for each group, then the best of each kind of rule against ours.</summary>
internal static class GreenTable
{
    private static readonly (GreenGroup Group, string Title)[] Groups =
    [
        (GreenGroup.Bound, "bound by the third"), (GreenGroup.NotBound, "not bound"), (GreenGroup.Nearly, "nearly bound by the third"),
        (GreenGroup.Ours, "planned"),
    ];

    private static readonly (string Head, Func<GreenSeason, double> Of, string Form)[] Columns =
    [
        ("cost", s => s.Cost, "0.0"), ("of it share", s => s.ShareCost, "0.0"), ("band", s => s.BandCost, "0.0"),
        ("stress", s => s.StressCost, "0.0"), ("days near, %", s => 100.0 * s.DaysNear / s.Days, "0"), ("mowings", s => s.Mowings, "0.0"),
        ("over a third", s => s.OverThird, "0.00"), ("over half", s => s.OverHalf, "0.00"), ("scalps", s => s.Scalps, "0.00"),
        ("changes", s => s.Changes, "0.0"), ("minutes", s => s.Minutes, "0"),
        ("limits broken", s => s.BrokenLimits, "0.00"), ("no scalp, %", s => s.Scalps == 0 ? 100 : 0, "0"),
    ];

    public static void Print(IReadOnlyList<(GreenContender Who, GreenSeason[] Seasons)> all)
    {
        foreach (var (group, title) in Groups)
        {
            var rows = all.Where(a => a.Who.Group == group).ToList();
            if (rows.Count == 0) continue;
            var lines = new List<string[]> { ([.. Columns.Select(c => c.Head).Prepend($"a season, {title}"), "late, days"]) };
            lines.AddRange(rows.Select(r => Row(r.Who.Title, r.Seasons)));
            Table.Write(lines);
        }
        Ratios(all);
        foreach (var (who, seasons) in all) GreenSaid.Print(who.Title, seasons);
    }

    private static string[] Row(string title, GreenSeason[] s)
    {
        double[] late = [.. s.Where(x => x.Late is not null).Select(x => (double)x.Late!.Value)];
        var cost = OverUnits.Mean([.. s.Select(x => x.Cost)]).Text("0.0");
        var cells = Columns.Skip(1).Select(c => Table.Number(s.Average(c.Of), c.Form));
        return [title, cost, .. cells, late.Length == 0 ? "–" : Table.Number(late.Average(), "0")];
    }

    /// <summary>Ours against the best of each kind, which is taken on these same seasons: in the rules' favour.</summary>
    private static void Ratios(IReadOnlyList<(GreenContender Who, GreenSeason[] Seasons)> all)
    {
        var ours = all.Where(a => a.Who.Group == GreenGroup.Ours).ToList();
        if (ours.Count == 0) return;
        var lines = new List<string[]> { (string[])["cost against the best (paired)", "its cost", .. ours.Select(o => o.Who.Title)] };
        foreach (var kind in all.GroupBy(a => (a.Who.Group, a.Who.Kind)))
        {
            var best = kind.MinBy(a => a.Seasons.Average(s => s.Cost));
            var its = Cost(best.Seasons);
            var ratios = ours.Select(o => OverUnits.Ratio(Cost(o.Seasons), its).Text("0.000"));
            lines.Add([best.Who.Title, OverUnits.Mean(its).Text("0.0"), .. ratios]);
        }
        Table.Write(lines);
        static double[] Cost(GreenSeason[] seasons) => [.. seasons.Select(s => s.Cost)];
    }
}
