using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>An area's canopy day by day, past and coming, as a picture of it needs.</summary>
public static class CanopyAnswer
{
    /// <summary>Days back where none are asked for.</summary>
    public const int UsualBack = 28;

    /// <summary>Days ahead where none are asked for, today included.</summary>
    public const int UsualAhead = 14;

    /// <summary>Most days back.</summary>
    public const int MostBack = 366;

    /// <summary>The answer.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="plan">The plan, made from today on.</param>
    /// <param name="back">Days back, 0 to <see cref="MostBack"/>.</param>
    /// <param name="ahead">Days ahead, today included; no more than the plan has.</param>
    public static JsonObject Of(Desk desk, AreaPlan plan, int back, int ahead)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (ledger, today) = (plan.Today.Ledger, plan.Today.Date);
        var read = ledger.Heard.Where(e => e.Is(CanopyEntry.Kind)).Select(e => (Entry: e, Date: ledger.Track.Area.LocalDate(e.At))).Where(r => r.Date >= today.AddDays(-back)).ToList();
        var answer = new JsonObject
        {
            ["area"] = ledger.Name,
            ["today"] = TurfAnswer.Date(today),
            ["days"] = new JsonArray([.. CanopySeries.Of(desk, plan, back, ahead).Select(d => (JsonNode)new JsonObject
            {
                ["date"] = TurfAnswer.Date(d.Date),
                ["canopyMm"] = TurfAnswer.Within(new(d.MeanMm, d.SdMm), 0, Math.Max(d.MeanMm, ledger.Track.Area.CeilingMm)),
                ["mown"] = d.Mown,
                ["frost"] = d.Frost,
                ["frostNamed"] = d.Frost >= FrostOutlook.NamedFrom,
                ["et0Mm"] = d.Et0Mm,
                ["rainMm"] = d.RainMm,
                ["ahead"] = d.Ahead,
            })]),
            ["readings"] = new JsonArray([.. read.Select(r => (Json: Reading(r.Entry), r.Date)).Where(r => r.Json is not null).Select(r =>
            {
                r.Json!["date"] = TurfAnswer.Date(r.Date);
                return (JsonNode)r.Json;
            })]),
        };
        if (plan.WishMm is { } wish) answer["wishMm"] = wish;
        return answer;
    }

    /// <summary>The middle of what was read at its spots; null where only a side of it was seen.</summary>
    private static JsonObject? Reading(Entry e)
    {
        double? mm = e[CanopyEntry.Mm] is { Count: > 0 } spots ? spots.Average() : (e[CanopyEntry.LowMm] + e[CanopyEntry.HighMm]) / 2;
        return mm is null ? null : new JsonObject { ["mm"] = mm, ["spots"] = e[CanopyEntry.Mm]?.Count ?? 1, ["when"] = e[CanopyEntry.When] };
    }
}
