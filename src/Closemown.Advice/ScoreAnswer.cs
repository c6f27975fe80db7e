using System.Text.Json.Nodes;
using Closemown.Height;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>How often what was said of the next reading came true, in the shape of the contract.</summary>
public static class ScoreAnswer
{
    /// <summary>All units together, then each.</summary>
    /// <param name="tracks">The units' steel.</param>
    /// <param name="heights">The units' heights.</param>
    public static JsonObject Of(IEnumerable<UnitTrack> tracks, IEnumerable<HeightTrack> heights)
    {
        var all = tracks.ToList();
        var answer = new JsonObject
        {
            ["what"] = "Before each reading its most probable outcome is said with a probability. This counts, by about how probable it was said to be, how often it came true.",
            ["said"] = Rows(all.Select(t => t.Score)),
        };
        answer["units"] = new JsonArray([.. all.Select(t => (JsonNode)new JsonObject { ["unit"] = t.Unit.Name, ["said"] = Rows([t.Score]) })]);
        answer["whatHeight"] = "Before each reading of the gauge a range is said that it lies in 50, 75 or 90 times in 100. This counts how often it did.";
        answer["height"] = new JsonArray([.. heights.SelectMany(h => h.Score.Rows).GroupBy(r => r.InHundred).OrderBy(g => g.Key).Select(Row)]);
        return answer;

        static JsonNode Row(IGrouping<int, (int InHundred, int Said, int CameTrue)> g)
        {
            var row = new JsonObject { ["inHundred"] = g.Key, ["readings"] = g.Sum(r => r.Said), ["cameTrue"] = g.Sum(r => r.CameTrue) };
            if (g.Sum(r => r.Said) is var said and > 0) row["share"] = Math.Round((double)g.Sum(r => r.CameTrue) / said, 4);
            return row;
        }
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
