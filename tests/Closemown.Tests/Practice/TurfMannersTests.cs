using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>How a greenkeeper brings turf to a height and back, told to the pipe. All are common practice, no source.</summary>
public sealed class TurfMannersTests
{
    private const double Third = 1 / 3.0, Roundoff = 0.002;

    private static Piped Begun(string area, params string[] lines)
    {
        var pipe = new Piped();
        pipe.Say([$$"""{"kind":"area","area":"{{area}}","grass":"cool","lat":51,"at":"2026-01-02T08:00:00Z"}""", .. lines]);
        return pipe;
    }

    private static IEnumerable<string> Weather(string area, string from, int days, double tMin, double tMax, double rain = 1) => Enumerable.Range(0, days).Select(d => string.Create(CultureInfo.InvariantCulture,
        $$"""{"kind":"weather","area":"{{area}}","date":"{{Day(from, d)}}","tMinC":{{tMin}},"tMaxC":{{tMax}},"rainMm":{{rain}}}"""));

    private static string Day(string from, int after) => DateOnly.Parse(from, CultureInfo.InvariantCulture).AddDays(after).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static JsonNode Ask(Piped pipe, string area, string from, int days = 60) => pipe.Say($$"""{"ask":"plan","area":"{{area}}","from":"{{from}}","days":{{days}}}""");

    private static List<JsonNode> Mown(JsonNode plan) => [.. plan["plan"]!.AsArray().Where(d => (bool)d!["mow"]!).Select(d => d!)];

    private static double Cut(JsonNode day) => (double)day["cutMm"]!;

    [Theory]
    [InlineData("2025-11-30", 9, 5, true)]
    [InlineData("2026-10-20", 9, 5, true)]
    [InlineData("2026-11-01", 6, 4.5, true)]
    [InlineData("2026-11-03", 9, 5, true)]
    [InlineData("2027-01-15", 7, 4.5, true)]
    [InlineData("2026-01-10", 7.5, 4, true)]
    [InlineData("2026-03-01", 9, 5, false)]
    [InlineData("2026-04-20", 12, 6, false)]
    [InlineData("2026-06-10", 9, 5, false)]
    public void P34_a_new_book_is_brought_down_half_a_millimetre_at_a_time_and_never_in_months_without_growth(string day, double stands, double wish, bool winter)
    {
        var pipe = new Piped();
        pipe.Say(
            $$"""{"kind":"area","area":"green","grass":"cool","lat":51,"at":"{{day}}T08:00:00Z"}""",
            string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"wish","area":"green","cutMm":{{wish}},"byDate":"{{Day(day, 150)}}","at":"{{day}}T08:01:00Z"}"""),
            string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"canopy","area":"green","when":"before","how":"ruler","mm":{{stands}},"at":"{{day}}T08:02:00Z"}"""));
        var plan = Ask(pipe, "green", day);
        var used = stands;
        var since = 99;
        foreach (var d in Mown(plan))
        {
            Assert.True((double)d["shareRemoved"]!["mean"]! <= Third + Roundoff, d.ToJsonString());
            if (Cut(d) < used - 0.1)
            {
                Assert.False(winter, d.ToJsonString());
                Assert.True(used - Cut(d) <= 0.61, $"{used} to {Cut(d)}");
                Assert.True(since >= 2, $"{since} mowings since the last step down");
                (used, since) = (Cut(d), 0);
            }
            else
            {
                since++;
            }
        }
        Assert.False((bool?)plan["plan"]![0]!["askFirst"] ?? false);
        if (winter) Assert.Equal(stands, used);
    }

    [Theory]
    [InlineData(9.5, 4.7)]
    [InlineData(12, 6)]
    public void P35_after_ten_days_away_it_is_raised_and_comes_back_in_two_or_three_mowings(double stands, double kept)
    {
        var pipe = Begun("green",
        [
            string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"wish","area":"green","cutMm":{{kept}},"at":"2026-05-01T08:00:00Z"}"""),
            .. Weather("green", "2026-04-20", 45, 9, 19, 3),
            .. new[] { 1, 4, 7, 10 }.Select(d => string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"mow","area":"green","hours":0.4,"cutMm":{{kept}},"at":"2026-05-{{d:00}}T10:00:00Z"}""")),
            string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[{{stands}},{{stands}},{{stands}},{{stands}},{{stands}}],"at":"2026-05-20T08:00:00Z"}"""),
        ]);
        var answer = Ask(pipe, "green", "2026-05-20", 20);
        var way = Mown(answer).TakeWhile(d => Cut(d) > kept + 0.1).ToList();
        Assert.InRange(way.Count, 1, 3);
        Assert.Equal("2026-05-20", (string)way[0]["date"]!);
        Assert.Equal(stands * 2 / 3, Cut(way[0]), 0.35);
        Assert.All(way, d => Assert.True((double)d["shareRemoved"]!["mean"]! <= Third + Roundoff, d.ToJsonString()));
        if (way.Count > 1) Assert.Equal("2026-05-22", (string)way[1]["date"]!);
        Assert.Equal(kept, Cut(Mown(answer)[way.Count]), 0.15);
        Assert.Contains(answer["says"]!.AsArray(), s => ((string)s!).StartsWith("Back by thirds: Wed 20 May", StringComparison.Ordinal));
    }

    [Fact]
    public void P36_back_to_a_height_kept_within_three_weeks_only_the_third_binds()
    {
        var pipe = Begun("green",
        [
            """{"kind":"wish","area":"green","cutMm":5,"at":"2026-05-01T08:00:00Z"}""",
            .. Weather("green", "2026-04-20", 60, 9, 19, 3),
            .. new[] { (1, 5.0), (4, 5.0), (7, 5.0), (12, 7.0), (14, 7.0), (16, 7.0) }.Select(m => string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"mow","area":"green","hours":0.4,"cutMm":{{m.Item2}},"at":"2026-05-{{m.Item1:00}}T10:00:00Z"}""")),
            """{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[7.4,7.3,7.4,7.5,7.4],"at":"2026-05-18T08:00:00Z"}""",
        ]);
        // Two millimetres at once, as no more than a third comes off.
        var next = Mown(Ask(pipe, "green", "2026-05-18", 14))[0];
        Assert.True(Cut(next) < 5.4, next.ToJsonString());
        Assert.True((double)next["shareRemoved"]!["mean"]! <= Third + Roundoff, next.ToJsonString());
    }

    /// <summary>Cuts are told to a hundredth, steps down are half a millimetre: nothing is stuck a little off a whole step.</summary>
    [Theory]
    [InlineData(6)]
    [InlineData(6.03)]
    [InlineData(6.049)]
    [InlineData(6.06)]
    [InlineData(6.3)]
    [InlineData(5.96)]
    public void P34_from_any_height_kept_it_comes_down_to_the_wish_in_growing_weather(double kept)
    {
        var fields = string.Create(CultureInfo.InvariantCulture, $"\"kind\":\"mow\",\"area\":\"green\",\"hours\":0.4,\"cutMm\":{kept}");
        var pipe = Begun("green",
        [
            """{"kind":"wish","area":"green","cutMm":5,"weekdays":["mon","wed","fri"],"at":"2026-05-01T08:00:00Z"}""",
            .. Weather("green", "2026-04-20", 60, 9, 19, 3),
            .. new[] { 1, 4, 6, 8, 11, 13, 15 }.Select(d => $$"""{{{fields}},"at":"2026-05-{{d:00}}T10:00:00Z"}"""),
            """{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[7.0,7.1,7.0,7.2,7.1],"at":"2026-05-18T08:00:00Z"}""",
        ]);
        var plan = Ask(pipe, "green", "2026-05-18", 28);
        var cuts = Mown(plan).Select(Cut).ToList();
        Assert.True(cuts.Min() < 5.2, string.Join(' ', cuts));
        // Half a millimetre, as exactly as a hand sets it.
        Assert.All(cuts.Zip(cuts.Skip(1)), c => Assert.True(c.First - c.Second < 0.56, string.Join(' ', cuts)));
        Assert.NotNull(plan["wish"]!["reached"]);
    }

    [Fact]
    public void P37_no_weather_is_no_forecast()
    {
        var pipe = Begun("green", """{"kind":"canopy","area":"green","when":"before","mm":7,"at":"2026-01-10T08:00:00Z"}""");
        var turf = pipe.Say("""{"ask":"turf","area":"green","date":"2026-01-10"}""")["turf"]!;
        Assert.Empty(turf["frostNights"]!.AsArray());
        Assert.Single(turf["says"]!.AsArray(), s => ((string)s!).StartsWith("No forecast is in the book", StringComparison.Ordinal) && ((string)s!).Contains("for the latitude", StringComparison.Ordinal) && ((string)s!).Contains("add weather tomorrow", StringComparison.Ordinal));
        pipe.Say("""{"kind":"weather","area":"green","date":"2026-01-11","tMinC":-4,"tMaxC":3,"forecast":true,"at":"2026-01-10T09:00:00Z"}""");
        turf = pipe.Say("""{"ask":"turf","area":"green","date":"2026-01-10"}""")["turf"]!;
        Assert.Equal(["2026-01-11"], turf["frostNights"]!.AsArray().Select(n => (string)n!["date"]!));
        Assert.DoesNotContain(turf["says"]!.AsArray(), s => ((string)s!).StartsWith("No forecast", StringComparison.Ordinal));
    }

    [Fact]
    public void P38_who_has_watered_goes_on_so_and_the_dry_version_is_a_choice()
    {
        string[] waterings = [.. new[] { 2, 5, 9, 12, 16, 19 }.Select(d => $$"""{"kind":"water","area":"green","mm":14,"at":"2026-07-{{d:00}}T19:00:00Z"}""")];
        var pipe = Begun("green",
        [
            """{"kind":"wish","area":"green","cutMm":5,"at":"2026-05-01T08:00:00Z"}""",
            .. Weather("green", "2026-06-15", 60, 12, 23, 0),
            """{"kind":"mow","area":"green","hours":0.4,"cutMm":5,"at":"2026-07-18T10:00:00Z"}""",
            .. waterings,
        ]);
        double Wilts(string more) => pipe.Say($$"""{"ask":"plan","area":"green","from":"2026-07-20","days":20{{more}}}""")["plan"]!.AsArray().Average(d => (double)d!["wilting"]!);
        Assert.True(Wilts("") < 0.3, $"{Wilts("")}");
        Assert.True(Wilts(""","dry":true""") > Wilts("") + 0.3, $"{Wilts(""","dry":true""")}");
        var says = Ask(pipe, "green", "2026-07-20", 20)["says"]!.AsArray().Select(s => (string)s!).ToList();
        Assert.Contains(says, s => s.Contains("watered on as lately, 14 mm about every 3 days", StringComparison.Ordinal) && s.Contains("plan --dry", StringComparison.Ordinal));
        // A day to come asked of the turf alone knows them too, and says so; today does not: what was not entered was not given.
        var ahead = pipe.Say("""{"ask":"turf","area":"green","date":"2026-07-28"}""")["turf"]!;
        Assert.True((double)ahead["depletionMm"]!["mean"]! < 14, ahead["depletionMm"]!.ToJsonString());
        Assert.Contains(ahead["says"]!.AsArray(), s => ((string)s!).Contains("watered on as lately, 14 mm", StringComparison.Ordinal));
        pipe.Say("""{"kind":"look","area":"green","colour":"pale","at":"2026-07-28T11:00:00Z"}""");
        var late = pipe.Say("""{"ask":"turf","area":"green","date":"2026-07-28"}""")["turf"]!;
        Assert.True((double)late["depletionMm"]!["mean"]! > 14, late["depletionMm"]!.ToJsonString());
    }

    [Theory]
    [InlineData("2026-05-20", "2026-08-30")]
    [InlineData("2025-11-02", "2026-03-20")]
    public void P39_after_long_silence_measuring_first_is_the_whole_answer(string mown, string asked)
    {
        var pipe = new Piped();
        pipe.Say(
            """{"kind":"area","area":"green","grass":"cool","lat":51,"at":"2025-10-01T08:00:00Z"}""",
            """{"kind":"wish","area":"green","cutMm":5,"byDate":"2026-05-01","at":"2025-10-01T08:01:00Z"}""",
            $$"""{"kind":"mow","area":"green","hours":0.4,"cutMm":5,"at":"{{mown}}T10:00:00Z"}""",
            $$"""{"kind":"feed","area":"green","nGm2":1,"at":"{{asked}}T07:00:00Z"}""");
        var plan = Ask(pipe, "green", asked);
        Assert.Empty(plan["plan"]!.AsArray());
        Assert.Null(plan["wish"]!["reached"]);
        var said = Assert.Single(plan["says"]!.AsArray());
        Assert.Contains("Read it at five spots", (string)said!, StringComparison.Ordinal);
        var turf = pipe.Say($$"""{"ask":"turf","area":"green","date":"{{asked}}"}""")["turf"]!;
        Assert.False((bool)turf["canopyKnown"]!);
        Assert.DoesNotContain(turf["says"]!.AsArray(), s => ((string)s!).Contains(" mm", StringComparison.Ordinal) && ((string)s!).Contains("stands at about", StringComparison.Ordinal));
        var today = pipe.Say("""{"ask":"today"}""")["today"]!;
        JsonNode[] things = [today["now"]!, .. today["next"]!.AsArray().Select(n => n!)];
        Assert.Equal("canopy", (string)things.First(t => (string?)t["area"] == "green" && (string)t["do"]! != "water")["do"]!);
    }

    private static List<string> Causes(Piped pipe, string day, string seen) =>
        [.. pipe.Say($$"""{"ask":"turf","area":"green","date":"{{day}}"}""")["turf"]!["causes"]!.AsArray().Where(c => (string)c!["seen"]! == seen).Select(c => (string)c!["likely"]!)];

    [Theory]
    [InlineData("2026-01-20", -1, 5, "pale", "cold")]
    [InlineData("2026-02-20", 0, 6, "yellow", "cold")]
    [InlineData("2026-06-20", 12, 22, "pale", "hungry")]
    [InlineData("2026-11-10", 4, 10, "patches", "disease")]
    [InlineData("2026-12-10", 2, 7, "patches", "disease")]
    [InlineData("2026-04-10", 4, 14, "straw", "dead leaf after cold")]
    [InlineData("2026-04-10", 4, 14, "blue-grey", "frost or wet leaves")]
    [InlineData("2026-07-10", 15, 28, "blue-grey", "drought today")]
    public void P41_the_season_comes_before_the_sign(string day, double tMin, double tMax, string colour, string first)
    {
        var pipe = new Piped();
        pipe.Say(
        [
            """{"kind":"area","area":"green","grass":"cool","lat":51,"at":"2025-12-02T08:00:00Z"}""",
            .. Weather("green", Day(day, -20), 21, tMin, tMax, 2),
            $$"""{"kind":"mow","area":"green","hours":0.4,"cutMm":6,"at":"{{Day(day, -4)}}T10:00:00Z"}""",
            $$"""{"kind":"look","area":"green","colour":"{{colour}}","at":"{{day}}T11:00:00Z"}""",
        ]);
        Assert.Equal(first, Causes(pipe, day, colour)[0]);
    }

    [Fact]
    public void P41_a_dry_april_of_9_degrees_where_nobody_waters_yet_is_no_drought()
    {
        var pipe = new Piped();
        pipe.Say(
        [
            """{"kind":"area","area":"green","grass":"cool","lat":51,"at":"2025-07-02T08:00:00Z"}""",
            .. new[] { 3, 6, 9, 12 }.Select(d => $$"""{"kind":"water","area":"green","mm":9,"at":"2025-07-{{d:00}}T19:00:00Z"}"""),
            .. Weather("green", "2026-03-20", 27, 4, 14, 0),
            """{"kind":"mow","area":"green","hours":0.4,"cutMm":6,"at":"2026-04-10T10:00:00Z"}""",
        ]);
        var turf = pipe.Say("""{"ask":"turf","area":"green","date":"2026-04-14"}""")["turf"]!;
        Assert.False((bool)turf["wilting"]!);
        Assert.DoesNotContain(turf["says"]!.AsArray(), s => ((string)s!).Contains("drought", StringComparison.Ordinal));
    }

    [Fact]
    public void P42_looks_of_one_day_add_up_field_by_field()
    {
        var pipe = Begun("green",
        [
            .. Weather("green", "2026-01-20", 20, -3, 5, 0),
            """{"kind":"canopy","area":"green","when":"before","mm":6,"at":"2026-02-05T09:00:00Z"}""",
            """{"kind":"look","area":"green","colour":"purple","at":"2026-02-06T08:00:00Z"}""",
            """{"kind":"look","area":"green","frost":true,"at":"2026-02-06T08:01:00Z"}""",
        ]);
        Assert.Equal("cold", Causes(pipe, "2026-02-06", "purple")[0]);
        var turf = pipe.Say("""{"ask":"turf","area":"green","date":"2026-02-06"}""")["turf"]!;
        Assert.Contains("frost seen", turf["keepOff"]!.AsArray().Select(o => (string)o!));
        // What is said later of the same field holds.
        pipe.Say("""{"kind":"look","area":"green","frost":false,"at":"2026-02-06T11:30:00Z"}""");
        turf = pipe.Say("""{"ask":"turf","area":"green","date":"2026-02-06"}""")["turf"]!;
        Assert.DoesNotContain("frost seen", turf["keepOff"]!.AsArray().Select(o => (string)o!));
        Assert.Equal("cold", Causes(pipe, "2026-02-06", "purple")[0]);
    }

    [Theory]
    [InlineData("dead tips")]
    [InlineData("brown tips")]
    [InlineData("white tips")]
    [InlineData("Dead")]
    public void P46_dead_brown_and_white_tips_are_a_look_at_the_tips(string said) =>
        Assert.Equal("white", Typing.Sayings.Value("tips", said));

    [Fact]
    public void P43_heat_asks_for_a_higher_cut_or_a_roll_before_any_lowering()
    {
        var pipe = Begun("green",
        [
            """{"kind":"wish","area":"green","cutMm":4,"at":"2026-05-01T08:00:00Z"}""",
            .. Weather("green", "2026-06-15", 21, 12, 24, 3),
            .. Weather("green", "2026-07-06", 6, 19, 33, 0).Select(w => w.Replace("}", ""","forecast":true,"at":"2026-07-05T08:00:00Z"}""", StringComparison.Ordinal)),
            .. new[] { 25, 27, 29 }.Select(d => $$"""{"kind":"mow","area":"green","hours":0.4,"cutMm":5,"at":"2026-06-{{d}}T10:00:00Z"}"""),
            """{"kind":"mow","area":"green","hours":0.4,"cutMm":5,"at":"2026-07-03T10:00:00Z"}""",
        ]);
        var plan = Ask(pipe, "green", "2026-07-05", 8);
        Assert.Contains(plan["says"]!.AsArray(), s => ((string)s!).StartsWith("Heat on Mon 6 Jul (33 °C): raise the cut by half a millimetre, or skip a mowing and roll", StringComparison.Ordinal));
        Assert.All(plan["plan"]!.AsArray().Skip(2).Take(4).Where(d => (bool)d!["mow"]!), d => Assert.True(Cut(d!) >= 4.75, d!.ToJsonString()));
    }
}
