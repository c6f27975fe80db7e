using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>What is known of a unit's height and of what it cuts, in the shape of the contract.</summary>
public static class HeightAnswer
{
    /// <summary>The answer.</summary>
    /// <param name="belief">What is known.</param>
    /// <param name="area">The area; null for the one last mown.</param>
    /// <param name="benchMm">What the gauge would read instead of what it does; null for as it stands.</param>
    /// <param name="cutMm">A wished cut; null for none.</param>
    /// <param name="wet">Whether it is wet.</param>
    /// <param name="phrasing">The person's words.</param>
    public static JsonObject Of(HeightBelief belief, string? area, double? benchMm, double? cutMm, bool wet, Phrasing phrasing)
    {
        ArgumentNullException.ThrowIfNull(belief);
        ArgumentNullException.ThrowIfNull(phrasing);
        var (track, tilt) = (belief.Track, belief.TiltMm);
        var step = SideStep.Mm(tilt.Mean, track.Unit.ReadApartMm, track.Unit.WidthMm);
        var (mowings, spots) = track.CanopyRead(area);
        var answer = new JsonObject { ["unit"] = track.Unit.Name };
        if ((area ?? track.LastArea) is { Length: > 0 } on) answer["area"] = on;
        answer["benchMm"] = Sides(belief.BenchMm);
        answer["tiltMm"] = StepJson.Q(tilt);
        answer["sinkMm"] = StepJson.Q(belief.SinkMm(area, wet));
        answer["cutMm"] = StepJson.Q(benchMm is { } b ? belief.CutAtMm(b, area, wet) : belief.CutMm(area, wet));
        if (benchMm is null)
        {
            answer["cutSidesMm"] = Sides(side => belief.CutSideMm(side, area, wet));
            answer["stepMm"] = step;
            answer["seen"] = SideStep.Seen(step);
        }
        if (cutMm is { } cut)
        {
            var set = belief.SetBenchMm(cut, area, wet);
            answer["setBenchMm"] = StepJson.Q(set);
            answer["cutAtSetMm"] = StepJson.Q(belief.CutAtMm(set.Mean, area, wet));
            if (AttitudeChange(belief, set.Mean) is { } degrees) answer["attitudeChangeDeg"] = degrees;
        }
        answer["screwMmPerTurn"] = Sides(belief.ScrewMmPerTurn);
        answer["lostTurns"] = Sides(belief.LostTurns);
        answer["coupling"] = Sides(belief.PullShare);
        answer["gaugeSdMm"] = StepJson.Q(belief.GaugeSdMm);
        if (belief.LockShiftMm(0) is { } shift) answer["lockShiftMm"] = new JsonObject { ["left"] = StepJson.Q(shift), ["right"] = StepJson.Q(belief.LockShiftMm(1)!.Value) };
        if (belief.KnifeClearMm(area, wet) is { } room)
        {
            answer["knifeClearMm"] = StepJson.Q(benchMm is { } at ? room with { Mean = room.Mean + at - Math.Min(belief.BenchMm(0).Mean, belief.BenchMm(1).Mean) } : room);
            answer["lowestBenchMm"] = StepJson.Q(belief.LowestBenchMm(area, wet)!.Value);
        }
        answer["drivers"] = new JsonArray([.. belief.CutDrivers(area, wet).Select(d => (JsonNode)new JsonObject { ["what"] = d.What, ["say"] = HeightSpeech.Driver(d.What), ["mm"] = d.Mm, ["share"] = d.Share })]);
        answer["readings"] = new JsonObject { ["gauge"] = track.Readings, ["mowings"] = mowings, ["canopy"] = spots };
        answer["teaches"] = new JsonArray([.. CutReading.Of(belief, area, wet).Select(r => (JsonNode)new JsonObject { ["say"] = phrasing.Say(Say(r, belief.SinkMm(area, wet).Sd)), ["reading"] = r.What, ["spots"] = r.Spots, ["mowings"] = r.Mowings, ["sdAfterMm"] = r.SdAfterMm })]);
        if (track.Loose) answer["loose"] = true;
        if (track.Lagging.Count > 0) answer["notFollowing"] = Lagging(track, phrasing);
        return answer;
    }

    /// <summary>A reading and what it would be worth, as a sentence.</summary>
    /// <param name="r">The reading.</param>
    /// <param name="nowSdMm">How well what to set is known now, mm.</param>
    public static string Say(CutReading r, double nowSdMm)
    {
        ArgumentNullException.ThrowIfNull(r);
        var after = r.Mowings == 1 ? "the next mowing" : $"each of the next {r.Mowings.ToString(CultureInfo.InvariantCulture)} mowings";
        var gauge = r.What.StartsWith("gauge", StringComparison.Ordinal) ? "The gauge once more before mowing, and " : "";
        var spots = $"{(r.Spots == 5 ? "five" : "ten")} spots by ruler or prism right after {after}";
        var said = gauge.Length > 0 ? gauge + spots : char.ToUpperInvariant(spots[0]) + spots[1..];
        return $"{said}: what to set is then known to {HeightSpeech.Mm(r.SdAfterMm)}, now {HeightSpeech.Mm(nowSdMm)}.";
    }

    /// <summary>How much the bedknife's angle to the ground would change from here to a bench height, degrees, + is nose up; null where the rollers were not told or cannot stand so.</summary>
    private static double? AttitudeChange(HeightBelief belief, double toMm)
    {
        var now = (belief.BenchMm(0).Mean + belief.BenchMm(1).Mean) / 2;
        if (belief.Track.Unit.Geometry is not { } geometry || belief.Track.Readings == 0) return null;
        try
        {
            return Tilt.AttitudeChangeDeg(geometry, now, toMm);
        }
        catch (ArgumentException)
        {
            return null;                                  // rollers told that cannot stand at such heights: the heights themselves do not hang on them
        }
    }

    private static JsonObject Sides(Func<int, HeightEstimate> of) => new() { ["left"] = StepJson.Q(of(0)), ["right"] = StepJson.Q(of(1)) };

    /// <summary>The first mowing at a height asked for, with the question that tells the way down.</summary>
    internal static JsonObject First(FirstMowing mowing) => new()
    {
        ["area"] = mowing.Area,
        ["canopyMm"] = Math.Round(mowing.StandsMm, 4),
        ["cutMm"] = Math.Round(mowing.CutMm, 4),
        ["shareRemoved"] = Math.Round(mowing.Share, 5),
        ["stepDown"] = new JsonObject { ["ask"] = "step-down", ["area"] = mowing.Area, ["cutMm"] = Math.Round(mowing.CutMm, 4) },
    };

    /// <summary>The sides that did not follow their screws.</summary>
    private static JsonArray Lagging(HeightTrack track, Phrasing phrasing) => new([.. track.Lagging.Select(l => (JsonNode)new JsonObject
    {
        ["side"] = LaggingSide.Name(l),
        ["moves"] = new JsonArray([.. l.Moves.Select(m => (JsonNode)new JsonObject { ["turnedMm"] = m.TurnedMm, ["madeMm"] = m.MadeMm })]),
        ["look"] = new JsonArray([.. LaggingSide.Look.Select(w => (JsonNode)w)]),
        ["say"] = phrasing.Say(LaggingSide.Say(l, track.Unit)),
    })]);
}
