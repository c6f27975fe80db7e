using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>The mowings that bring an area down to a wished cut, in the shape of the contract: plain numbers, as they are decisions.</summary>
public static class StepDownAnswer
{
    /// <summary>The mowings in order, or null with why there are none.</summary>
    /// <param name="belief">The unit that mows it.</param>
    /// <param name="area">The area; null for the one last mown.</param>
    /// <param name="canopyMm">What the turf stands at, mm.</param>
    /// <param name="cutMm">The wished cut, mm.</param>
    /// <param name="share">The most of the standing height to take at once.</param>
    /// <param name="growthMm">What it grows from one mowing to the next, mm.</param>
    /// <param name="fault">Why there are none.</param>
    public static JsonArray? Of(HeightBelief belief, string? area, double canopyMm, double cutMm, double share, double growthMm, out EntryFault? fault)
    {
        ArgumentNullException.ThrowIfNull(belief);
        fault = null;
        if (StepDown.Of(canopyMm, cutMm, share, growthMm) is not { } rows)
        {
            fault = new(FaultCodes.Conflict, "growthMm", "Between two mowings it grows more than such a share takes off: that cut is never reached.", "Mow more often (a smaller growthMm), or wish for a higher cut.");
            return null;
        }
        return new([.. rows.Select(r => (JsonNode)new JsonObject
        {
            ["canopyMm"] = Round(r.CanopyMm),
            ["cutMm"] = Round(r.CutMm),
            ["benchMm"] = Round(belief.SetBenchMm(r.CutMm, area).Mean),
            ["shareRemoved"] = Math.Round(r.ShareRemoved, 5),
        })]);
    }

    /// <summary>Cuts as near count as the same, mm.</summary>
    internal const double SameMm = 0.05;

    /// <summary>The mowings of a plan until the wished cut is reached, each with its date.</summary>
    /// <param name="belief">The unit that mows it.</param>
    /// <param name="plan">The plan.</param>
    internal static JsonArray Of(HeightBelief belief, AreaPlan plan)
    {
        var rows = new JsonArray();
        foreach (var d in plan.Whole.Where(d => d.Mow))
        {
            rows.Add(new JsonObject
            {
                ["date"] = TurfAnswer.Date(d.Date),
                ["canopyMm"] = Round(d.CanopyMm.Mean),
                ["cutMm"] = Round(d.CutMm),
                ["benchMm"] = Round(belief.SetBenchMm(d.CutMm, plan.Today.AreaName).Mean),
                ["shareRemoved"] = Math.Round(d.Share.Mean, 5),
            });
            if (d.CutMm <= plan.WishMm + SameMm) break;
        }
        return rows;
    }

    private static double Round(double mm) => Math.Round(mm, 4);
}
