using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What is known of an area's turf, in the shape of the contract.</summary>
public static class TurfAnswer
{
    private const double EtShareSd = 0.15, EtUnreadShareSd = 0.35, DepletionShareSd = 0.2;
    private static readonly string[] Levels = ["none", "slight", "marked", "severe"];

    /// <summary>The answer.</summary>
    public static JsonObject Of(AreaToday t, Phrasing phrasing)
    {
        ArgumentNullException.ThrowIfNull(t);
        ArgumentNullException.ThrowIfNull(phrasing);
        var (track, day, belief) = (t.Ledger.Track, t.Day, t.Ledger.Belief);
        var (usual, says) = (track.Days.Usual.On(t.Date), TurfSpeech.Of(t));
        var answer = new JsonObject
        {
            ["area"] = t.Ledger.Name,
            ["date"] = Date(t.Date),
            ["canopyMm"] = Standing(t),
            ["canopyKnown"] = t.HeightKnown,
            ["growthMmPerDay"] = Within(t.GrowthMm, 0, double.MaxValue),
            ["fullRateMmPerDay"] = StepJson.Q(E(belief.FullRateMm)),
            ["growthPotential"] = day.Potential,
            ["stress"] = Within(t.Stress, 0, StressSources.Severe),
            ["stressLevels"] = new JsonObject(Levels.Select((l, i) => KeyValuePair.Create<string, JsonNode?>(l, t.StressLevels[i]))),
            ["et0Mm"] = StepJson.Q(E((day.Et0Mm, day.Et0Mm * (day.Weather.Known ? EtShareSd : EtUnreadShareSd)))),
            ["depletionMm"] = StepJson.Q(E((day.DepletionMm, Math.Max(0.2, day.DepletionMm * DepletionShareSd)))),
            ["waterStress"] = day.Ks,
            ["wilting"] = t.Wilting,
            ["frost"] = FrostOutlook.Probability(day, 0, usual),
            ["frostNights"] = new JsonArray([.. t.Frosts.Select(f => (JsonNode)new JsonObject { ["date"] = Date(f.Date), ["probability"] = f.Probability })]),
            ["forecastKnown"] = t.ForecastKnown,
            ["keepOff"] = new JsonArray([.. t.Off.Select(o => (JsonNode)o)]),
            ["weather"] = day.Weather.Known ? "recorded" : day.Weather.Read is not null ? "forecast" : "usual",
        };
        if (t.CutMm is { } cut)
        {
            answer["cutMm"] = StepJson.Q(E((cut.Mean, cut.Sd)));
            if (cut.Unit is { } unit) answer["unit"] = unit;
            answer["shareIfMown"] = t.ShareIfMown!.Value.ToJson();
            answer["overThirdIfMown"] = t.ShareIfMown.Value.OverThird;
            answer["scalpIfMown"] = track.Base.Scalps(cut.Mean, cut.Sd);
        }
        if (track.Base.Mm is { } green) answer["greenBaseMm"] = StepJson.Q(E(green));
        if (track.LastMowing is { } mown) answer["mown"] = Date(track.Area.LocalDate(mown.At));
        answer["water"] = Water(t);
        answer["feed"] = new JsonObject { ["asksLowGm2"] = t.Feed.LowGm2, ["asksHighGm2"] = t.Feed.HighGm2, ["given30DaysGm2"] = t.Feed.GivenGm2, ["atWorkGm2"] = t.Feed.AtWorkGm2 };
        if (day.RegulatorCDays is { } sum) answer["regulator"] = new JsonObject { ["sumCDays"] = sum, ["dueCDays"] = Clock(track.Area).ThresholdCDays, ["baseC"] = Clock(track.Area).BaseC };
        if (DiseaseRisk.DollarSpotOf(track.Days, t.Date) is { } spot)
        {
            answer["dollarSpot"] = new JsonObject { ["probability"] = spot.Value, ["outside"] = spot.Outside, ["threshold"] = DollarSpot.Threshold };
        }
        answer["says"] = new JsonArray([.. says.Select(s => (JsonNode)phrasing.Say(s))]);
        answer["causes"] = new JsonArray([.. LookCauses.Of(t).Select(c => (JsonNode)new JsonObject { ["seen"] = c.Seen, ["likely"] = c.Likely, ["why"] = c.Why })]);
        answer["unusual"] = new JsonArray([.. track.Unusual.TakeLast(3).Select(o => (JsonNode)new JsonObject
        {
            ["id"] = o.Entry.Id.ToString("D"),
            ["surprise"] = o.Surprise,
            ["explanations"] = new JsonArray([.. o.Likely.Select(c => (JsonNode)new JsonObject { ["what"] = TurfSpeech.Cause(c, o.Under == true) })]),
        })]);
        answer["readings"] = new JsonObject { ["heights"] = track.HeightReadings, ["mowings"] = track.Mowings, ["weatherDays"] = track.Days.Record.Count };
        answer["assumed"] = new JsonArray([.. Assumed(track).Select(a => (JsonNode)a)]);
        answer["why"] = new JsonArray([.. TurfSpeech.Rules(t).Select(r => (JsonNode)new JsonObject { ["id"] = r.Id, ["rule"] = phrasing.Say(r.Text), ["source"] = r.Source })]);
        return answer;
    }

    /// <summary>A civil day in the contract's form.</summary>
    public static string Date(DateOnly d) => d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    internal static GrowthRegulator Clock(TurfArea area) => area.Grass == TurfGrass.Warm ? GrowthRegulator.UltradwarfBermudagrass : GrowthRegulator.CreepingBentgrass;

    private static JsonObject Water(AreaToday t)
    {
        var w = t.Water;
        var water = new JsonObject { ["on"] = w.On is { } on ? Date(on) : null, ["mm"] = w.Mm, ["readyMm"] = w.ReadyMm, ["rainUntilMm"] = w.RainMm };
        if (t.WateringEvenness is { } even) (water["evenness"], water["giveMm"]) = (even, w.GrossMm(even));
        return water;
    }

    /// <summary>What was not told and so stands at a default.</summary>
    private static IEnumerable<string> Assumed(AreaTrack track)
    {
        if (track.Area.LatitudeDeg is null) yield return "latitude 50° north";
        if (track.Area.Zone is { } zone && !CivilDay.Knows(zone)) yield return $"time zone: \"{Entries.Spelling.Clip(zone)}\" is not known, so each entry's own offset counts";
        if (track.Area.Species is null) yield return "species: a usual rate of growth";
        if (!track.Area.RootsTold) yield return "root zone: 100 mm of sandy soil";
        if (track.Days.Record.Count == 0) yield return "weather: a usual temperate year";
    }

    /// <summary>A number that cannot lie outside its range: its points are cut at the ends.</summary>
    internal static JsonObject Within(Height.HeightEstimate e, double low, double high) => new()
    {
        ["mean"] = Math.Clamp(e.Mean, low, high),
        ["sd"] = e.Sd,
        ["p05"] = Math.Clamp(e.P05, low, high),
        ["p50"] = Math.Clamp(e.P50, low, high),
        ["p95"] = Math.Clamp(e.P95, low, high),
    };

    /// <summary>The standing height, which lies between nothing and an unmown sward, or what was read above that.</summary>
    internal static JsonObject Standing(AreaToday t) => Within(t.CanopyMm, 0, Math.Max(t.CanopyMm.Mean, t.Ledger.Track.Area.CeilingMm));

    private static Height.HeightEstimate E((double Mean, double Sd) e) => new(e.Mean, e.Sd);
}
