using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>One wish, one date: whoever asks, in whatever way, is told the same. Common practice, no source.</summary>
public sealed class OneTruthTests
{
    private static readonly int Books = int.TryParse(Environment.GetEnvironmentVariable("CLOSEMOWN_BOOKS"), CultureInfo.InvariantCulture, out var n) ? n : 60;

    private static IEnumerable<string> Book(int seed)
    {
        var r = new Random(seed);
        var first = new DateOnly(2026, 1 + r.Next(12), 1 + r.Next(28));
        string At(int day, int hour) => $"{first.AddDays(day):yyyy-MM-dd}T{hour:00}:00:00Z";
        string N(double x) => Math.Round(x, 2).ToString(CultureInfo.InvariantCulture);
        var (cut, wish) = (4 + (3 * r.NextDouble()), 3.5 + (3 * r.NextDouble()));
        yield return $$"""{"kind":"area","area":"green","grass":"cool","lat":{{N(45 + (12 * r.NextDouble()))}},"at":"{{At(0, 8)}}"}""";
        var by = r.Next(2) == 0 ? $",\"byDate\":\"{first.AddDays(20 + r.Next(120)):yyyy-MM-dd}\"" : "";
        var days = r.Next(2) == 0 ? ",\"weekdays\":[\"tue\",\"thu\",\"sat\"]" : "";
        yield return $$"""{"kind":"wish","area":"green","cutMm":{{N(wish)}}{{by}}{{days}},"at":"{{At(0, 9)}}"}""";
        for (var d = 1; d < 16; d += 3) yield return $$"""{"kind":"mow","unit":"mower","area":"green","hours":0.4,"cutMm":{{N(cut)}},"at":"{{At(d, 10)}}"}""";
        if (r.Next(3) > 0) yield return $$"""{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[{{N(cut * (1.1 + r.NextDouble()))}},{{N(cut * 1.5)}}],"at":"{{At(20, 8)}}"}""";
        else yield return $$"""{"kind":"look","area":"green","colour":"green","at":"{{At(18 + r.Next(30), 8)}}"}""";
    }

    [Fact]
    public void P40_today_turf_plan_and_step_down_name_the_same_date_next_mowing_and_standing_height()
    {
        var (mown, reached) = (0, 0);
        for (var seed = 0; seed < Books; seed++)
        {
            var pipe = new Piped();
            pipe.Say([.. Book(seed)]);
            var plan = pipe.Say("""{"ask":"plan","area":"green"}""");
            var longer = pipe.Say("""{"ask":"plan","area":"green","days":60}""");
            var week = pipe.Say("""{"ask":"plan","area":"green","days":7}""");
            var today = pipe.Say("""{"ask":"today"}""")["today"]!;
            var turf = pipe.Say("""{"ask":"turf","area":"green"}""")["turf"]!;
            var canopy = pipe.Say("""{"ask":"canopy","area":"green","back":0,"ahead":14}""")["canopy"]!;
            var shown = today["turf"]![0]!;
            foreach (var other in (JsonNode[])[longer, week]) Assert.Equal(plan["wish"]!.ToJsonString(), other["wish"]!.ToJsonString());
            Assert.Equal(Days(plan)[..Math.Min(7, Days(plan).Count)], Days(week));
            Assert.Equal(Days(plan), Days(longer)[..Days(plan).Count]);
            Assert.Equal(turf["canopyMm"]!.ToJsonString(), shown["canopyMm"]!.ToJsonString());
            Assert.Equal((bool)turf["canopyKnown"]!, (bool)shown["canopyKnown"]!);
            if (!(bool)turf["canopyKnown"]!)
            {
                Assert.Empty(Days(plan));
                Assert.Null(shown["nextMow"]);
                Assert.Null(plan["wish"]!["reached"]);
                continue;
            }
            Assert.Equal((double)turf["canopyMm"]!["mean"]!, (double)plan["plan"]![0]!["canopyMm"]!["mean"]!, 0.1);
            Assert.Equal((double)plan["plan"]![0]!["canopyMm"]!["mean"]!, (double)canopy["days"]![0]!["canopyMm"]!["mean"]!, 1e-9);
            var next = plan["plan"]!.AsArray().FirstOrDefault(d => (bool)d!["mow"]!);
            Assert.Equal((string?)next?["date"], (string?)shown["nextMow"]?["date"]);
            var step = pipe.SayAll("""{"ask":"step-down","area":"green"}""")[0];
            if (next is not null)
            {
                mown++;
                Assert.True((bool)step["ok"]!, $"{seed}: {step.ToJsonString()}");
                Assert.Equal((double)next["cutMm"]!, (double)shown["nextMow"]!["cutMm"]!, 1e-9);
                Assert.Equal((string)next["date"]!, (string)step["step-down"]![0]!["date"]!);
                Assert.Equal((double)next["cutMm"]!, (double)step["step-down"]![0]!["cutMm"]!, 0.001);
            }
            // What is said of the wish in words is said of the same day.
            if ((string?)plan["wish"]!["reached"] is not { } on || plan["says"]!.AsArray().Select(s => (string)s!).FirstOrDefault(s => s.StartsWith("The wished", StringComparison.Ordinal)) is not { } said) continue;
            reached++;
            Assert.Contains(DateOnly.Parse(on, CultureInfo.InvariantCulture).ToString("ddd d MMM", CultureInfo.InvariantCulture), said, StringComparison.Ordinal);
        }
        // A test that never came to the point would say nothing.
        Assert.True(mown > Books / 4 && reached > Books / 10, $"{mown} with a mowing, {reached} with a wish to reach");
    }

    private static List<string> Days(JsonNode plan) => [.. plan["plan"]!.AsArray().Select(d => d!.ToJsonString())];
}
