using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Height;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Advice in the shapes of the contract.</summary>
public sealed class StepJson(Phrasing phrasing)
{
    /// <summary>The step of an advice with its id.</summary>
    public JsonObject Of(StepAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        var step = Of(advice.Step, advice.Id);
        if (advice.ExpectedLoss is { } loss) step["expectedLoss"] = loss;
        return step;
    }

    /// <summary>A sequence: what is expected after the first step.</summary>
    public JsonArray Of(IEnumerable<StepAdvice> sequence) => new([.. sequence.Select(a => (JsonNode)Of(a))]);

    /// <summary>The reasons behind an advice.</summary>
    public JsonObject Why(StepAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return new JsonObject
        {
            ["advice"] = advice.Id,
            ["step"] = Of(advice),
            ["entries"] = new JsonArray([.. advice.Entries.Select(id => (JsonNode)id.ToString("D"))]),
            ["reasons"] = Texts([.. advice.Step.Why, .. advice.Figures]),
            ["rules"] = new JsonArray([.. advice.Rules.Select(r => (JsonNode)new JsonObject { ["id"] = r.Id, ["rule"] = phrasing.Say(r.Text), ["source"] = r.Source })]),
            ["alternatives"] = new JsonArray([.. advice.Alternatives.Select(Alternative)]),
            ["wouldChange"] = new JsonArray([.. advice.WouldChange.Select(w => (JsonNode)new JsonObject { ["reading"] = phrasing.Say(w.Reading), ["probability"] = w.Probability, ["to"] = phrasing.Say(w.To) })]),
        };
    }

    /// <summary>An estimate.</summary>
    public static JsonObject Q(Estimate e) => new() { ["mean"] = e.Mean, ["sd"] = e.Sd, ["p05"] = e.P05, ["p50"] = e.P50, ["p95"] = e.P95 };

    /// <summary>An estimate of a height.</summary>
    public static JsonObject Q(HeightEstimate e) => new() { ["mean"] = e.Mean, ["sd"] = e.Sd, ["p05"] = e.P05, ["p50"] = e.P50, ["p95"] = e.P95 };

    /// <summary>Three estimates by station.</summary>
    public static JsonObject AtStations(Func<int, Estimate> at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return new(Stations.All.Select((name, s) => KeyValuePair.Create<string, JsonNode?>(name, Q(at(s)))));
    }

    /// <summary>Two estimates by side.</summary>
    public static JsonObject BySide(Func<int, Estimate> of)
    {
        ArgumentNullException.ThrowIfNull(of);
        return new() { [Stations.Left] = Q(of(0)), [Stations.Right] = Q(of(1)) };
    }

    private JsonObject Of(AdviceStep s, string? id)
    {
        var step = new JsonObject { ["do"] = s.Do };
        if (s.Stations.Count > 0) step["stations"] = new JsonArray([.. s.Stations.Select(i => (JsonNode)Stations.All[i])]);
        if (s.Left is { } l) step["left"] = l;
        if (s.Right is { } r) step["right"] = r;
        if (s.LeftTurns is { } lt) step["leftTurns"] = lt;
        if (s.RightTurns is { } rt) step["rightTurns"] = rt;
        if (s.LapMinutes is { } m) step["minutes"] = m;
        if (s.Grit is { } g) step["grit"] = g;
        if (s.What is { } w) step["what"] = w;
        if (s.Blade is { } blade) step["blade"] = blade;
        step["say"] = phrasing.Say(s.Say);
        if (s.Asks is { } asks) step["asks"] = phrasing.Say(asks);
        step["takesMinutes"] = Math.Round(s.TakesMinutes, 2);
        step["expect"] = Expect(s);
        if (s.Within is { } within) step["within"] = within;
        step["why"] = Texts(s.Why);
        step["cautions"] = Texts(s.Cautions);
        if (id is not null) step["advice"] = id;
        step["then"] = new JsonArray([.. s.Then.Select(t => (JsonNode)Of(t, null))]);
        return step;
    }

    private static JsonObject Expect(AdviceStep s)
    {
        var expect = new JsonObject();
        foreach (var (station, words, p) in s.ExpectRead)
            expect[Stations.All[station]] = new JsonObject(words.Select((w, i) => KeyValuePair.Create<string, JsonNode?>(w, p[i])));
        if (s.Expect is { } nip)
        {
            Put(expect, nip);
            expect["after"] = s.Do == "mow" ? "now" : s.Then.Count > 0 ? "plan" : "step";
            if (s.ExpectStep is { } alone) expect["afterStep"] = Put([], alone);
            expect["afterPlan"] = Put([], nip);
        }
        if (s.ExpectHeight is { } height)
        {
            expect["benchMm"] = new JsonObject { [Stations.Left] = Q(height.Left), [Stations.Right] = Q(height.Right) };
            expect["within"] = height.Within;
        }
        if (s.BenchInMowings is { } k) expect["benchInMowings"] = k;
        if (s.BenchInDays is { } d) expect["benchInDays"] = d;
        return expect;
    }

    private static JsonObject Put(JsonObject to, ExpectedNip nip)
    {
        to["clearanceUm"] = AtStations(i => nip.ClearanceUm[i]);
        to["inTolerance"] = nip.InTolerance;
        to["cleanShare"] = nip.CleanShare;
        return to;
    }

    private JsonObject Alternative(Alternative a)
    {
        var step = new JsonObject { ["do"] = a.Step.Do, ["say"] = phrasing.Say(a.Say), ["takesMinutes"] = Math.Round(a.Step.TakesMinutes, 2) };
        if (a.Step.Stations.Count > 0) step["stations"] = new JsonArray([.. a.Step.Stations.Select(i => (JsonNode)Stations.All[i])]);
        if (a.Step.Left is { } l) step["left"] = l;
        if (a.Step.Right is { } r) step["right"] = r;
        if (a.Step.LapMinutes is { } m) step["minutes"] = m;
        if (a.ExpectedLoss is { } loss) step["expectedLoss"] = loss;
        if (a.Saves is { } saves) step["saves"] = saves;
        return step;
    }

    private JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)phrasing.Say(t))]);
}
