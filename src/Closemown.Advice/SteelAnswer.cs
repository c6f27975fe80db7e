using System.Text.Json.Nodes;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What is known of a unit's steel, in the shape of the contract.</summary>
public static class SteelAnswer
{
    private const double ClickWellKnown = 0.08;

    /// <summary>
    /// That a click's size is hardly learned in ordinary use, and which reading would teach it; null where it is known well enough.
    /// Said rather than promised: what was turned in and what opened are confounded.
    /// </summary>
    public static string? ClickRemark(SteelBelief belief)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var click = belief.ClickUm(0);
        if (click.Sd < ClickWellKnown * click.Mean) return null;
        var check = belief.Track.Unit.Owns.Contains("feeler") ? "a feeler check at one end" : "a paper drag check at one end";
        return $"The size of a click is hardly learned in ordinary use. What would teach it: {check}, then four clicks the same way at that end, then the same check again.";
    }

    public static JsonObject Of(SteelBelief belief)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var answer = new JsonObject
        {
            ["unit"] = belief.Track.Unit.Name,
            ["clearanceUm"] = StepJson.AtStations(belief.ClearanceUm),
            ["edgeUm"] = StepJson.AtStations(belief.EdgeUm),
            ["usableGapUm"] = StepJson.Q(belief.UsableGapUm()),
            ["clickUm"] = StepJson.BySide(belief.ClickUm),
            ["openingUmPerHour"] = StepJson.BySide(belief.OpeningUmPerHour),
            ["openingUmPerOuting"] = StepJson.BySide(belief.OpeningUmPerOuting),
            ["lapUmPerMinute"] = StepJson.Q(belief.LapUmPerMinute),
            ["dullingUmPerHour"] = StepJson.Q(belief.DullingUmPerHour),
            ["bowUm"] = StepJson.Q(belief.BowUm),
            ["lostMotionUm"] = StepJson.BySide(belief.LostMotionUm),
            ["heightShiftUm"] = Math.Round(belief.Track.HeightShiftUm, 3),
            ["cleanUm"] = StepJson.Q(belief.CleanUm),
            ["tiltClicks"] = StepJson.Q(belief.TiltClicks),
            ["scatterUm"] = new JsonObject(SteelDefaults.ScatterUm.Select(p => KeyValuePair.Create<string, JsonNode?>(p.Key, Math.Round(p.Value * belief.ScatterFactor, 3)))),
            ["scatterFactor"] = new JsonArray([.. belief.Track.People.Select(p => (JsonNode)new JsonObject { ["by"] = p.By, ["readings"] = p.Readings, ["mean"] = Math.Round(p.Mean, 4), ["sd"] = Math.Round(p.Sd, 4) })]),
            ["stripUm"] = belief.Track.Strip.Um,
            ["bandUm"] = new JsonArray(belief.Track.Unit.BandUm.Low, belief.Track.Unit.BandUm.High),
            ["readings"] = belief.Track.Readings,
            ["unusual"] = new JsonArray([.. belief.Track.Unusual.Select(u => (JsonNode)new JsonObject
            {
                ["id"] = u.Entry.Id.ToString("D"),
                ["surprise"] = u.Surprise,
                ["explanations"] = ExplanationSpeech.Json(u.Explanations),
            })]),
        };
        if (belief.Track.Memory.Signs.HollowSeen > 0)
            answer["hollow"] = new JsonObject { ["probability"] = Math.Round(HollowMiddle.Probability(belief), 4), ["seen"] = belief.Track.Memory.Signs.HollowSeen };
        if (ClickRemark(belief) is { } hint) answer["clickRemark"] = hint;
        if (belief.Posterior.Remark is { } remark) answer["remark"] = remark;
        return answer;
    }
}
