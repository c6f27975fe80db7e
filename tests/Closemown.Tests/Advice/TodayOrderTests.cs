using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;
using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>What goes first today. The order is of our own; that a change at the bench is felt before mowing and that frozen turf is left alone is common practice, no source.</summary>
public sealed class TodayOrderTests
{
    private static readonly DateTimeOffset Today = new(2026, 5, 20, 9, 0, 0, TimeSpan.Zero);

    /// <summary>The turf read at five spots: unread it is hardly known, and read before it is mown.</summary>
    private const string Read = """{"kind":"canopy","area":"green","when":"before","how":"prism","mm":[7,7.2,6.9,7,7.1],"at":"2026-05-20T08:00:00Z"}""";

    [Fact]
    public void A_bench_step_that_can_wait_comes_after_the_mowing_of_today()
    {
        var tasks = Tasks(Grown(Read), Lap(inTolerance: 0.9));
        Assert.Equal(["mow", "lap"], Bare(tasks));
        var lap = tasks.Single(t => t.Do == "lap");
        Assert.Equal(Urgency.CanWait, lap.Urgency);
        Assert.StartsWith("It can wait", lap.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_that_would_mow_out_of_tolerance_today_goes_to_the_bench_first()
    {
        var tasks = Tasks(Grown(Read), Lap(inTolerance: 0.2));
        Assert.Equal(["lap", "mow"], Bare(tasks));
        Assert.Equal(Urgency.OutOfTolerance, tasks[0].Urgency);
        Assert.Contains("is unlikely", tasks[0].Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_it_does_not_mow_today_the_bench_can_wait_until_it_does()
    {
        var tasks = Tasks(Mown(), Lap(inTolerance: 0.2));
        var lap = Assert.Single(tasks, t => t.Do == "lap");
        Assert.Equal(Urgency.CanWait, lap.Urgency);
        Assert.DoesNotContain(tasks, t => t.Do == "mow");
    }

    [Fact]
    public void Frost_seen_today_keeps_off_before_anything_at_the_bench_and_nothing_is_mown()
    {
        var desk = Grown("""{"kind":"look","area":"green","frost":true,"at":"2026-05-20T07:00:00Z"}""");
        var tasks = Tasks(desk, Lap(inTolerance: 0.2));
        Assert.Equal((Urgency.KeepOff, "wait"), (tasks[0].Urgency, tasks[0].Do));
        Assert.Contains("Keep off today: frost seen", tasks[0].Say, StringComparison.Ordinal);
        Assert.DoesNotContain(tasks, t => t.Do == "mow");
        Assert.Equal(Urgency.CanWait, Assert.Single(tasks, t => t.Do == "lap").Urgency);
    }

    [Fact]
    public void What_was_changed_at_the_bench_and_not_felt_since_goes_before_all()
    {
        var desk = Grown("""{"kind":"look","area":"green","frost":true,"at":"2026-05-20T07:00:00Z"}""", """{"kind":"clicks","unit":"mower","left":1,"right":1,"at":"2026-05-20T08:50:00Z"}""");
        var tasks = Tasks(desk, new StepAdvice(new AdviceStep("contact") { Say = "Feel both ends.", Stations = [0, 2] }));
        Assert.Equal((Urgency.Safety, "contact"), (tasks[0].Urgency, tasks[0].Do));
    }

    [Fact]
    public void A_repair_and_a_hit_not_yet_looked_into_are_a_matter_of_safety()
    {
        Assert.Equal(Urgency.Safety, Tasks(Grown(), new StepAdvice(new AdviceStep("repair") { Say = "Repair." }))[0].Urgency);
        var hit = Grown("""{"kind":"strike","unit":"mower","where":"left","at":"2026-05-20T08:50:00Z"}""");
        Assert.Equal(Urgency.Safety, Tasks(hit, new StepAdvice(new AdviceStep("fit") { Say = "Look." }))[0].Urgency);
    }

    [Fact]
    public void The_day_before_a_match_the_mowing_presses_and_the_bench_before_it()
    {
        var desk = Grown("""{"kind":"wish","area":"green","cutMm":5,"fixtures":["2026-05-21"],"at":"2026-05-12T08:00:00Z"}""", Read);
        var good = Tasks(desk, Lap(inTolerance: 0.9));
        Assert.Equal((Urgency.Match, "mow"), (good[0].Urgency, good[0].Do));
        var bad = Tasks(desk, Lap(inTolerance: 0.2));
        Assert.Equal(["lap", "mow"], Bare(bad).Take(2));
        Assert.All(bad.Take(2), t => Assert.Equal(Urgency.Match, t.Urgency));
    }

    [Fact]
    public void Water_due_by_the_weather_is_for_today_where_waterings_are_entered_and_never_on_frozen_turf()
    {
        string[] dry =
        [
            .. Enumerable.Range(0, 25).Select(d => string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"weather","area":"green","date":"{{new DateOnly(2026, 5, 15).AddDays(d):yyyy-MM-dd}}","tMinC":12,"tMaxC":26,"rainMm":0}""")),
            """{"kind":"area","area":"green","rootMm":200,"fieldCapacity":0.3,"wiltingPoint":0.1,"at":"2026-04-01T08:05:00Z"}""",
        ];
        const string Watered = """{"kind":"water","area":"green","mm":5,"at":"2026-05-01T08:00:00Z"}""";
        Urgency? Water(params string[] more) => Tasks(Grown([.. dry, .. more]), Lap(0.9)).Where(t => t.Do == "water").Select(t => (Urgency?)t.Urgency).SingleOrDefault();
        Assert.Equal(Urgency.Today, Water(Watered));
        Assert.Equal(Urgency.CanWait, Water());
        Assert.Equal(Urgency.Now, Water(Watered, """{"kind":"look","area":"green","footprints":true,"at":"2026-05-20T07:00:00Z"}"""));
        Assert.Null(Water(Watered, """{"kind":"look","area":"green","frost":true,"at":"2026-05-20T07:00:00Z"}"""));
    }

    [Fact]
    public void Nothing_due_is_said_with_the_day_to_come_back()
    {
        var mow = new StepAdvice(new AdviceStep("mow") { Say = "Mow, and look behind you." });
        var tasks = Tasks(Mown(), mow);
        Assert.Equal((Urgency.Nothing, "wait"), (tasks[^1].Urgency, tasks[^1].Do));
        Assert.True(tasks[^1].Until > new DateOnly(2026, 5, 20));
    }

    [Fact]
    public void Without_any_turf_the_bench_alone_is_told()
    {
        var desk = Conversation("""{"kind":"mow","unit":"mower","hours":1,"at":"2026-05-10T10:00:00Z"}""").Desk;
        Assert.Equal(["lap"], TodayOrder.Of(desk, [("mower", Lap(inTolerance: 0.2))], [], Today).Select(t => t.Do));
    }

    [Fact]
    public void The_answer_tells_the_tasks_in_this_order()
    {
        var talk = Conversation(Story([]));
        var answer = TodayAnswer.Of(talk.Desk, AdviceSettings.Default, talk.AskedAt);
        var json = answer.Json(talk.Desk, Phrasing.Plain);
        JsonNode[] told = [json["now"]!, .. json["next"]!.AsArray().Select(n => n!)];
        Assert.Equal(answer.Tasks.Select(t => (t.Do, t.UrgencyWord)), told.Select(t => ((string)t["do"]!, (string)t["urgency"]!)));
        Assert.True(answer.Tasks.Count > 1);
        Assert.Equal(answer.Tasks.OrderBy(t => t.Urgency).Select(t => t.Urgency), answer.Tasks.Select(t => t.Urgency));
    }

    /// <summary>Bench and mowing alone: whether water is due is another thing.</summary>
    private static IEnumerable<string> Bare(IReadOnlyList<TodayTask> tasks) => tasks.Where(t => t.Do != "water").Select(t => t.Do);

    private static IReadOnlyList<TodayTask> Tasks(Desk desk, StepAdvice step) => TodayOrder.Of(desk, [("mower", step)], [.. TurfToday.All(desk, Today)], Today);

    private static StepAdvice Lap(double inTolerance)
    {
        var gap = Estimate.FromDraws([10, 20, 30]);
        return new StepAdvice(new AdviceStep("lap") { Say = "Lap.", LapMinutes = 2 }) { AsItStands = new ExpectedNip([gap, gap, gap], inTolerance, 0.9) };
    }

    /// <summary>Ten days of good growth since the last mowing at 5 mm.</summary>
    private static Desk Grown(params string[] more) => Conversation(Story(more)).Desk;

    /// <summary>Mown yesterday.</summary>
    private static Desk Mown() => Grown("""{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-05-19T18:00:00Z"}""");

    private static string[] Story(string[] more) =>
    [
        """{"kind":"area","area":"green","grass":"cool","lat":51,"at":"2026-04-01T08:00:00Z"}""",
        """{"kind":"wish","area":"green","cutMm":5,"at":"2026-04-01T08:10:00Z"}""",
        """{"kind":"fit","unit":"mower","playLeft":"none","playRight":"none","knifeScrews":"tight","at":"2026-04-01T09:00:00Z"}""",
        """{"kind":"mow","unit":"mower","area":"green","hours":0.3,"cutMm":5,"at":"2026-05-10T10:00:00Z"}""",
        .. Enumerable.Range(0, 60).Select(d => string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"weather","area":"green","date":"{{new DateOnly(2026, 4, 1).AddDays(d):yyyy-MM-dd}}","tMinC":10,"tMaxC":20,"rainMm":3}""")),
        .. more,
        """{"kind":"canopy","area":"green","when":"before","how":"prism","lowMm":2,"highMm":60,"at":"2026-05-20T08:59:00Z"}""",
    ];

    private static Conversation Conversation(params string[] lines)
    {
        var talk = new Conversation(new MemoryBook(), AdviceSettings.Default, Phrasing.Plain, new SequentialIds().Next);
        foreach (var line in lines) Assert.True((bool)JsonNode.Parse(talk.Say(line))!["ok"]!, line);
        return talk;
    }
}
