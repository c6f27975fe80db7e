using System.Text.Json.Nodes;
using Closemown.Height;

namespace Closemown.Cli;

/// <summary>A gauge study for a program.</summary>
internal static class StudyJson
{
    private const string Source = "AIAG, Measurement Systems Analysis, analysis of variance";

    /// <summary>The study: spreads are standard deviations in mm; they are left out while there are too few readings.</summary>
    public static JsonObject Of(string unit, string name, StudyPlan plan, double smallestMoveMm)
    {
        var study = new JsonObject
        {
            ["name"] = name,
            ["unit"] = unit,
            ["readings"] = plan.Rows.Count,
            ["settings"] = List(plan.Settings),
            ["persons"] = List(plan.Persons),
        };
        var counted = plan.Counted();
        if (counted.Count > 0)
        {
            var s = GaugeStudy.Of(counted);
            (study["parts"], study["trials"]) = (s.Parts, s.Trials);
            (study["evMm"], study["avMm"], study["interactionMm"], study["grrMm"], study["pvMm"], study["tvMm"]) = (s.Ev, s.Persons > 1 ? s.Av : null, s.Interaction, s.Grr, s.Pv, s.Tv);
            study["percentGrr"] = s.Tv > 0 ? s.PercentGrr : null;
            study["toleranceMm"] = new JsonArray([.. new[] { 1, 2, 3 }.Select(n => (JsonNode)HonestTolerance.Mm(s.Ev, n, smallestMoveMm: smallestMoveMm))]);
            study["source"] = Source;
        }
        if (plan.Next() is { } next) study["next"] = new JsonObject { ["setting"] = next.Setting, ["by"] = next.Person.Length > 0 ? next.Person : null, ["trial"] = next.Trial, ["turnScrews"] = next.Turned };
        return study;
    }

    private static JsonArray List(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)t)]);
}
