using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What was believed of a unit after an entry.</summary>
internal sealed record SteelMoment(Entry Entry, IReadOnlyList<Estimate> ClearanceUm, IReadOnlyList<Estimate> EdgeUm);

/// <summary>How a unit's gap and bluntness were believed to stand after each of its last entries, with what was read and done.</summary>
public static class SteelHistory
{
    /// <summary>The most entries told.</summary>
    public const int Most = 120;

    private static readonly string[] Told = ["paper-cut", "paper-drag", "contact", "torch", "swath", "feeler", "clicks", "square-up", "lap", "stone", "grind", "rebuild", "strike", "mow"];

    /// <summary>The history, oldest first.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="last">How many entries at most, 1 to <see cref="Most"/>.</param>
    public static JsonArray Of(Desk desk, string unit, int last)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentOutOfRangeException.ThrowIfLessThan(last, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(last, Most);
        return new([.. desk.Went(unit, last, () => Walk(desk, unit, last)).Select(Json)]);
    }

    private static List<SteelMoment> Walk(Desk desk, string unit, int last)
    {
        var standing = desk.Standing;
        var told = standing.Where(e => e.Unit == unit && Told.Contains(e.Kind.Name)).TakeLast(last).Select(e => e.Id).ToHashSet();
        var track = new UnitTrack(UnitDescription.Of(unit, standing.Where(e => e.Unit == unit && UnitDescription.Describes(e))));
        var walked = new List<SteelMoment>(told.Count);
        foreach (var e in standing)
        {
            track.Add(e);
            if (told.Contains(e.Id))
                walked.Add(new(e, [.. Enumerable.Range(0, Stations.All.Count).Select(s => Clearance(track, s))], [.. Enumerable.Range(0, Stations.All.Count).Select(s => Predicted(track, Term.State(0, Layout.Edge + s, 1)))]));
        }
        return walked;
    }

    private static JsonObject Json(SteelMoment m)
    {
        var e = m.Entry;
        var point = new JsonObject { ["id"] = e.Id.ToString("D"), ["at"] = EntryTime.Write(e.At), ["kind"] = e.Kind.Name };
        foreach (var station in StationFields.Words)
        {
            if (e[station] is { } word) point[station.Name] = word;
        }
        foreach (var station in StationFields.Numbers)
        {
            if (e[station] is { } number) point[station.Name] = number;
        }
        if (e[LapEntry.Minutes] is { } minutes) point["minutes"] = minutes;
        if (e[StrikeEntry.Where] is { } where) point["where"] = where;
        if (e[StoneEntry.What] is { } what) point["what"] = what;
        point["clearanceUm"] = StepJson.AtStations(s => m.ClearanceUm[s]);
        point["edgeUm"] = StepJson.AtStations(s => m.EdgeUm[s]);
        return point;
    }

    private static Estimate Clearance(UnitTrack track, int station)
    {
        var (mean, variance) = Stations3.Clearance(track.Running, track.Unit, station);
        return Estimate.Normal(mean, variance);
    }

    private static Estimate Predicted(UnitTrack track, Term term)
    {
        var (mean, variance) = track.Running.Predict([term]);
        return Estimate.Normal(mean, variance);
    }
}
