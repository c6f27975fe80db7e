using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>Facts of the trade about the turf as stories told to the pipe. All are common practice, no source.</summary>
public sealed class TurfStoriesTests
{
    private const string Area = """{"kind":"area","area":"green","grass":"cool","lat":51,"at":"2026-02-01T08:00:00Z"}""";

    private static Piped Begun(params string[] lines)
    {
        var pipe = new Piped();
        pipe.Say([Area, .. lines]);
        return pipe;
    }

    private static IEnumerable<string> Weather(string from, int days, double tMin, double tMax, double rain = 1) => Enumerable.Range(0, days).Select(d => string.Create(CultureInfo.InvariantCulture,
        $$"""{"kind":"weather","area":"green","date":"{{DateOnly.Parse(from, CultureInfo.InvariantCulture).AddDays(d):yyyy-MM-dd}}","tMinC":{{tMin}},"tMaxC":{{tMax}},"rainMm":{{rain}}}"""));

    private static JsonArray Plan(Piped pipe, string from, int days) => pipe.Say($$"""{"ask":"plan","area":"green","from":"{{from}}","days":{{days}}}""")["plan"]!.AsArray();

    /// <summary>Bench at 6 to cut at about 5; the turf stands at about 5, purple with dead tips after nights below freezing; 5/32 in is wished for.</summary>
    private static Piped ColdStory(double benchMm) => Begun(
    [
        """{"kind":"wish","area":"green","cutMm":3.97,"at":"2026-02-01T08:10:00Z"}""",
        $$"""{"kind":"gauge","unit":"mower","leftMm":{{benchMm.ToString(CultureInfo.InvariantCulture)}},"rightMm":{{benchMm.ToString(CultureInfo.InvariantCulture)}},"at":"2026-02-20T09:00:00Z"}""",
        """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"benchMm":6,"at":"2026-02-20T10:00:00Z"}""",
        """{"kind":"canopy","area":"green","when":"after","how":"prism","mm":[5.0,4.9,5.1,5.2,4.9],"at":"2026-02-20T10:30:00Z"}""",
        .. Weather("2026-02-21", 8, -4, 4, 0),
        .. Weather("2026-03-01", 12, 4, 11),
        """{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[5.0,5.3,5.1,5.2,5.4],"at":"2026-03-02T09:00:00Z"}""",
        """{"kind":"look","area":"green","colour":"purple","tips":"white","at":"2026-03-02T09:05:00Z"}""",
    ]);

    [Fact]
    public void P11_stressed_by_cold_the_turf_is_not_lowered_and_the_plan_says_why()
    {
        var day = Plan(ColdStory(6), "2026-03-02", 10)[0]!;
        Assert.True((double)day["cutMm"]! > 4.6, day.ToJsonString());
        Assert.True((double)day["shareRemoved"]!["mean"]! < 0.15, day.ToJsonString());
        Assert.Contains("Not lowered: none under stress", (string)day["why"]!, StringComparison.Ordinal);
    }

    /// <summary>Kept at 5, not mown since, and the grass stands knee-deep to a green.</summary>
    private static JsonNode Overgrown(params string[] more)
    {
        string[] told = [.. Weather("2026-06-01", 40, 10, 20, 4)];
        return Begun(["""{"kind":"wish","area":"green","cutMm":5,"at":"2026-02-01T08:10:00Z"}""", """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-06-01T10:00:00Z"}""", .. told, .. more])
            .Say("""{"ask":"today"}""")["today"]!;
    }

    [Fact]
    public void Turf_too_tall_for_one_mowing_is_brought_down_by_thirds_and_not_mown_at_once()
    {
        var today = Overgrown("""{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[30,31,30,29,30],"at":"2026-07-08T10:00:00Z"}""");
        JsonNode[] things = [today["now"]!, .. today["next"]!.AsArray().Select(n => n!)];
        var thing = Assert.Single(things, t => (string?)t["area"] == "green" && (string)t["do"]! != "water");
        Assert.Equal("step-down", (string)thing["do"]!);
        Assert.Contains("come down by thirds", (string)thing["say"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Turf_unread_for_weeks_is_read_before_anyone_mows_it()
    {
        var today = Overgrown("""{"kind":"look","area":"green","colour":"green","at":"2026-07-08T10:00:00Z"}""");
        JsonNode[] things = [today["now"]!, .. today["next"]!.AsArray().Select(n => n!)];
        var thing = Assert.Single(things, t => (string?)t["area"] == "green" && (string)t["do"]! != "water");
        Assert.Equal("canopy", (string)thing["do"]!);
        Assert.Contains("Read it at five spots", (string)thing["say"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Cans_that_caught_unevenly_ask_for_more_water_than_the_root_zone_lacks()
    {
        string[] dry = [.. Weather("2026-06-01", 14, 12, 26, 0)];
        JsonNode Water(params string[] more) => Begun([.. dry, .. more]).Say("""{"ask":"turf","area":"green","date":"2026-06-14"}""")["turf"]!["water"]!;
        var plain = Water("""{"kind":"water","area":"green","mm":4,"at":"2026-06-03T19:00:00Z"}""");
        var cans = Water("""{"kind":"water","area":"green","mm":4,"cansMm":[4,5,3,4,2,6,4,4],"at":"2026-06-03T19:00:00Z"}""");
        Assert.Null(plain["giveMm"]);
        // Lowest two of eight: (2 + 3)/2 over the mean of 4.
        Assert.Equal(0.625, (double)cans["evenness"]!, 1e-9);
        Assert.True((double)cans["mm"]! > 0, cans.ToJsonString());
        Assert.Equal((double)cans["mm"]! / 0.625, (double)cans["giveMm"]!, 1e-6);
    }

    [Fact]
    public void A_frost_of_the_night_that_is_over_is_not_named_at_noon()
    {
        var turf = Begun([.. Weather("2026-02-20", 1, -6, 9, 0), .. Weather("2026-02-21", 10, 9, 14, 0)]).Say("""{"ask":"turf","area":"green","date":"2026-02-20"}""")["turf"]!;
        Assert.True((double)turf["frost"]! > 0.9, turf.ToJsonString());
        Assert.DoesNotContain("2026-02-20", turf["frostNights"]!.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void P11_set_too_low_the_cut_is_raised_to_a_light_trim()
    {
        // The gauge reads 5: it would cut about 4, a fifth of the leaf of stressed turf and a millimetre at once.
        var plan = Plan(ColdStory(5), "2026-03-02", 10);
        foreach (var day in plan.Where(d => (bool)d!["mow"]!).Append(plan[0]).Take(2))
        {
            Assert.True((double)day!["cutMm"]! > 4.3, day.ToJsonString());
            Assert.True((double)day["shareRemoved"]!["mean"]! < 0.2, day.ToJsonString());
        }
    }

    [Fact]
    public void P11_purple_after_cold_nights_is_mostly_cold_and_rarely_phosphorus()
    {
        var turf = ColdStory(6).Say("""{"ask":"turf","area":"green","date":"2026-03-02"}""")["turf"]!;
        Assert.True((double)turf["stress"]!["mean"]! >= 1, turf["stress"]!.ToJsonString());
        Assert.Equal(["cold", "phosphorus (rarely)"], turf["causes"]!.AsArray().Where(c => (string)c!["seen"]! == "purple").Select(c => (string)c!["likely"]!));
    }

    [Fact]
    public void Blue_grey_with_footprints_in_warm_weather_is_drought_today_and_is_never_lowered()
    {
        var pipe = Begun(
        [
            """{"kind":"wish","area":"green","cutMm":4,"at":"2026-06-01T08:00:00Z"}""",
            """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-06-20T10:00:00Z"}""",
            .. Weather("2026-05-20", 36, 14, 27, 0),
            """{"kind":"look","area":"green","colour":"blue-grey","footprints":true,"at":"2026-06-24T13:00:00Z"}""",
        ]);
        var turf = pipe.Say("""{"ask":"turf","area":"green","date":"2026-06-24"}""")["turf"]!;
        Assert.True((bool)turf["wilting"]!);
        Assert.Equal("drought today", (string)turf["causes"]![0]!["likely"]!);
        var day = Plan(pipe, "2026-06-24", 7)[0]!;
        Assert.True((double)day["cutMm"]! >= 4.9, day.ToJsonString());
    }

    [Fact]
    public void Frost_on_the_forecast_keeps_off_and_frost_seen_beats_a_mild_forecast()
    {
        string[] mown = ["""{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-03-20T10:00:00Z"}""", """{"kind":"canopy","area":"green","when":"before","mm":7.5,"at":"2026-04-01T07:00:00Z"}"""];
        var cold = Plan(Begun([.. mown, .. Weather("2026-03-20", 12, 5, 14), .. Weather("2026-04-01", 7, -3, 6)]), "2026-04-01", 5);
        Assert.All(cold, d => Assert.False((bool)d!["mow"]!, d!.ToJsonString()));
        Assert.Equal("keep-off", (string)cold[0]!["reason"]!);
        var mild = Plan(Begun([.. mown, .. Weather("2026-03-20", 20, 5, 14)]), "2026-04-01", 5);
        Assert.Contains(mild, d => (bool)d!["mow"]!);
        var seen = Plan(Begun([.. mown, .. Weather("2026-03-20", 20, 5, 14), """{"kind":"look","area":"green","frost":true,"at":"2026-04-01T08:00:00Z"}"""]), "2026-04-01", 5);
        Assert.False((bool)seen[0]!["mow"]!);
    }

    [Fact]
    public void After_a_missed_week_the_cut_is_raised_rather_than_half_taken_at_once()
    {
        var pipe = Begun(
        [
            """{"kind":"wish","area":"green","cutMm":5,"at":"2026-05-01T08:00:00Z"}""",
            """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-05-10T10:00:00Z"}""",
            .. Weather("2026-04-01", 60, 10, 20, 3),
            """{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[10.0,10.3,9.8,10.1,9.9],"at":"2026-05-20T09:00:00Z"}""",
        ]);
        var day = Plan(pipe, "2026-05-20", 14).First(d => (bool)d!["mow"]!)!;
        Assert.True((double)day["cutMm"]! >= 5.5, day.ToJsonString());
        Assert.True((double)day["shareRemoved"]!["mean"]! < 0.47, day.ToJsonString());
        // What is still over a third is only done after asking.
        Assert.Equal((double)day["shareRemoved"]!["mean"]! > 1 / 3.0, (bool)day["askFirst"]!);
        if ((bool)day["askFirst"]!) Assert.Contains("only if you say so", (string)day["why"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Sand_lies_before_the_lap_and_a_match_counts_back()
    {
        var pipe = Begun(
        [
            """{"kind":"wish","area":"green","cutMm":5,"fixtures":["2026-05-30"],"at":"2026-05-01T08:00:00Z"}""",
            """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-05-10T10:00:00Z"}""",
            """{"kind":"work","area":"green","what":"topdress","kgM2":1,"at":"2026-05-12T10:00:00Z"}""",
            .. Weather("2026-04-01", 60, 10, 20, 3),
        ]);
        var answer = pipe.Say("""{"ask":"plan","area":"green","from":"2026-05-14","days":20}""");
        var notes = string.Join('\n', answer["notes"]!.AsArray().Select(n => (string)n!["say"]!));
        Assert.Contains("after it has gone, not before", notes, StringComparison.Ordinal);
        Assert.Contains("no sand after Wed 20 May", notes, StringComparison.Ordinal);
        Assert.Contains("no change of height from Wed 27 May", notes, StringComparison.Ordinal);
        var days = answer["plan"]!.AsArray();
        Assert.Single(days.Where(d => (string)d!["date"]! is "2026-05-27" or "2026-05-28" or "2026-05-29" or "2026-05-30").Where(d => (bool)d!["mow"]!).Select(d => (double)d!["cutMm"]!).Append((double)days[^1]!["cutMm"]!).Take(1));
        Assert.Contains("Stand on it", (string)answer["before"]![0]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Today_tells_to_wait_where_nothing_is_due_and_when_to_come_back()
    {
        var pipe = Begun(
        [
            """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-05-10T10:00:00Z"}""",
            .. Weather("2026-04-01", 60, 10, 20, 3),
        ]);
        var today = pipe.Say("""{"ask":"today"}""")["today"]!;
        Assert.Equal("green", (string)today["turf"]![0]!["area"]!);
        Assert.InRange((double)today["turf"]![0]!["canopyMm"]!["mean"]!, 4.5, 6);
        Assert.NotNull(today["turf"]![0]!["nextMow"]!["date"]);
    }

    [Fact]
    public void On_a_day_off_nothing_is_planned_and_the_reason_is_told()
    {
        var pipe = Begun(
        [
            """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-05-10T10:00:00Z"}""",
            .. Weather("2026-04-01", 60, 10, 20, 3),
        ]);
        var planned = Plan(pipe, "2026-05-14", 20).First(d => (bool)d!["mow"]!)!;
        var off = (string)planned["date"]!;
        var days = pipe.Say($$"""{"ask":"plan","area":"green","from":"2026-05-14","days":20,"daysOff":["{{off}}"]}""")["plan"]!.AsArray();
        var day = days.Single(d => (string)d!["date"]! == off)!;
        Assert.False((bool)day["mow"]!);
        Assert.Equal(0, (double)day["free"]!);
        Assert.Contains(days, d => (bool)d!["mow"]!);
        // The plan without it is what it was.
        Assert.Equal(planned.ToJsonString(), Plan(pipe, "2026-05-14", 20).First(d => (bool)d!["mow"]!)!.ToJsonString());
        var fault = pipe.SayAll("""{"ask":"plan","area":"green","daysOff":["tomorrow"]}""")[0];
        Assert.Equal("daysOff", (string)fault["error"]!["field"]!);
    }

    [Fact]
    public void Whoever_is_there_on_another_than_a_usual_day_is_told_to_mow_where_it_pays()
    {
        var pipe = Begun(
        [
            """{"kind":"wish","area":"green","cutMm":5,"weekdays":["sat"],"at":"2026-04-30T08:00:00Z"}""",
            """{"kind":"mow","area":"green","unit":"mower","hours":0.5,"cutMm":5,"at":"2026-05-09T09:00:00Z"}""",
            """{"kind":"canopy","area":"green","when":"before","mm":7,"how":"card","at":"2026-05-13T09:00:00Z"}""",
            .. Weather("2026-04-01", 60, 10, 20, 3),
        ]);
        JsonNode First(string more) => pipe.Say($$"""{"ask":"plan","area":"green","from":"2026-05-14","days":7{{more}}}""")["plan"]![0]!;
        var usual = First("");
        Assert.False((bool)usual["mow"]!);
        Assert.Contains("if you are there all the same, mowing pays", (string)usual["why"]!, StringComparison.Ordinal);
        var there = First(""","daysOn":["2026-05-14"]""");
        Assert.True((bool)there["mow"]!);
        Assert.Equal(1, (double)there["free"]!);
        Assert.False((bool)First("")["mow"]!);
        var fault = pipe.SayAll("""{"ask":"plan","area":"green","daysOn":["2026-05-14"],"daysOff":["2026-05-14"]}""")[0];
        Assert.Equal("daysOn", (string)fault["error"]!["field"]!);
    }

    [Fact]
    public void The_places_of_the_book_are_told_with_what_was_described_last()
    {
        var pipe = Begun("""{"kind":"unit","unit":"mower","blades":8,"inTurns":"clockwise","at":"2026-02-02T08:00:00Z"}""", """{"kind":"unit","unit":"mower","blades":10,"at":"2026-02-03T08:00:00Z"}""");
        var places = pipe.Say("""{"ask":"places"}""")["places"]!;
        Assert.Equal("""[{"unit":"mower","blades":10,"inTurns":"clockwise"}]""", places["units"]!.ToJsonString());
        Assert.Equal("cool", (string)Assert.Single(places["areas"]!.AsArray())!["grass"]!);
    }

    [Fact]
    public void The_same_entries_give_the_same_plan()
    {
        string Once() => Plan(ColdStory(6), "2026-03-02", 14).ToJsonString();
        Assert.Equal(Once(), Once());
    }

    [Fact]
    public void An_area_with_nothing_but_its_name_is_answered_with_honest_spread()
    {
        var turf = new Piped().Say("""{"ask":"turf","area":"lawn"}""")["turf"]!;
        Assert.True((double)turf["canopyMm"]!["sd"]! > 2);
        Assert.NotEmpty(turf["assumed"]!.AsArray());
    }
}
