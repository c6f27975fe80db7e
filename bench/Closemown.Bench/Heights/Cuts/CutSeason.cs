using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights.Cuts;

/// <summary>A unit mown with on one turf: before each mowing a pair of gauge readings, after it five spots; what is then expected of the next.</summary>
/// <param name="Said">What Closemown said, by mowings so far: the mean cut at a bench height, and the next cut with that day's grain.</param>
/// <param name="PlainMm">The same mean cut by the plain mean of bench height less spots, over all mowings so far, less the truth.</param>
internal sealed record CutSeason(IReadOnlyList<HeightSaid> Said, IReadOnlyList<(int Mowings, double Mm)> PlainMm)
{
    public const string MeanCut = "mean cut";
    public const string NextCut = "next cut";
    private const int Spots = 5;
    private const double AskedMm = 5;
    private const int ChangesEach = 3;
    private const double ChangeTurns = 0.4;

    /// <summary>What is meant by the truth: the asked bench height, as the gauge reads it, less gauge zero and less the sink at the next mowing, wet or dry as that one is; the grain of a single day is no part of the mean.</summary>
    /// <param name="seed">Unit and turf.</param>
    /// <param name="after">After how many mowings it is asked.</param>
    /// <param name="told">Whether what the gauge reads is only told with the mowing, to 0.05 mm, and neither readings nor turns are written down.</param>
    public static CutSeason Of(int seed, int[] after, bool told)
    {
        var unit = new BenchUnit(ScrewMake.Of(seed));
        var bench = new HeightWork(unit);
        var turf = TurfMake.Of(seed);
        var talk = new Talk(AdviceSettings.Default);
        var now = new DateTimeOffset(2000, 4, 1, 9, 0, 0, TimeSpan.Zero);
        var said = new List<HeightSaid>();
        var plain = new List<(int, double)>();
        var sinks = new List<double>();
        Write("unit", []);
        for (var k = 1; k <= after.Max(); k++)
        {
            bench.NewSitting();
            if (k % ChangesEach == 0)
            {
                var turns = k % (2 * ChangesEach) == 0 ? -ChangeTurns : ChangeTurns;
                bench.Turn(turns, turns);
                bench.Tighten();
                if (!told)
                {
                    Write("screw", new() { ["leftTurns"] = turns, ["rightTurns"] = turns });
                    Write("locked", []);
                }
            }
            var (left, right) = bench.Read();
            if (!told) Write("gauge", new() { ["leftMm"] = left, ["rightMm"] = right });
            Write("look", new() { ["area"] = "green", ["wet"] = turf.Wet(k) });
            var mow = new JsonObject { ["hours"] = 0.5, ["area"] = "green" };
            if (told) mow["benchMm"] = Math.Round(20 * ((left + right) / 2)) / 20;
            Write("mow", mow);
            var cut = ((unit.TrueMm(0) + unit.TrueMm(1)) / 2) - unit.Make.GaugeZeroMm - turf.MeanSinkMm(k) + turf.Grain(k);
            var spots = turf.Spots(k, cut, Spots);
            var read = new JsonObject { ["area"] = "green", ["mm"] = new JsonArray([.. spots.Select(s => (JsonNode)s)]), ["stepMm"] = turf.StepMm, ["when"] = "after", ["how"] = turf.StepMm < 0.3 ? "prism" : "ruler" };
            read["confirmed"] = new JsonArray("mm");      // some turfs are cut below 2 mm
            Write("canopy", read);
            sinks.Add(((left + right) / 2) - spots.Average());
            unit.DaysLater();
            now += TimeSpan.FromDays(3);
            if (!after.Contains(k)) continue;

            var truth = AskedMm - unit.Make.GaugeZeroMm - turf.MeanSinkMm(k + 1);
            var height = talk.Ask(string.Create(CultureInfo.InvariantCulture, $$$"""{"ask":"height","unit":"unit","area":"green","benchMm":{{{AskedMm}}},"wet":{{{(turf.Wet(k + 1) ? "true" : "false")}}}}"""))["height"]!;
            var sink = HeightSaid.Of(MeanCut, k, AskedMm - truth, height["sinkMm"]!);
            said.Add(sink with { Truth = truth, Mean = AskedMm - sink.Mean, P05 = AskedMm - sink.P95, P95 = AskedMm - sink.P05 });
            said.Add(HeightSaid.Of(NextCut, k, truth + turf.Grain(k + 1), height["cutMm"]!));
            plain.Add((k, AskedMm - sinks.Average() - truth));
        }
        return new(said, plain);

        void Write(string kind, JsonObject entry)
        {
            now += TimeSpan.FromMinutes(5);
            (entry["kind"], entry["at"]) = (kind, now.ToString("o", CultureInfo.InvariantCulture));
            if (kind is not ("look" or "canopy")) entry["unit"] = "unit";
            talk.Write(entry.ToJsonString());
        }
    }
}
