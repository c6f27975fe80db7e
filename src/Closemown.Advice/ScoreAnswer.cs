using System.Text.Json.Nodes;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>How often what was said of the next reading came true, in the shape of the contract.</summary>
public static class ScoreAnswer
{
    /// <summary>All units together, then each.</summary>
    public static JsonObject Of(IEnumerable<UnitTrack> tracks)
    {
        var all = tracks.ToList();
        var answer = new JsonObject
        {
            ["what"] = "Before each reading its most probable outcome is said with a probability. This counts, by about how probable it was said to be, how often it came true.",
            ["said"] = Rows(all.Select(t => t.Score)),
        };
        answer["units"] = new JsonArray([.. all.Select(t => (JsonNode)new JsonObject { ["unit"] = t.Unit.Name, ["said"] = Rows([t.Score]) })]);
        return answer;
    }

    private static JsonArray Rows(IEnumerable<SaidScore> scores) => new([.. scores.SelectMany(s => s.Rows).GroupBy(r => r.InHundred).OrderBy(g => g.Key).Select(g =>
    {
        var said = g.Sum(r => r.Said);
        var row = new JsonObject { ["inHundred"] = g.Key, ["readings"] = said, ["cameTrue"] = g.Sum(r => r.CameTrue) };
        if (said > 0)
        {
            row["saidOnAverage"] = Math.Round(g.Where(r => r.Said > 0).Sum(r => r.MeanSaid * r.Said) / said, 4);
            row["share"] = Math.Round((double)g.Sum(r => r.CameTrue) / said, 4);
        }
        return (JsonNode)row;
    })]);
}
