using System.Text.Json.Nodes;

namespace Closemown.Advice;

/// <summary>Everything that today tells, before it is put into words or JSON.</summary>
/// <param name="Tasks">Today's things in their order; the first is the one to do now. Empty where the book names neither unit nor area in use.</param>
/// <param name="Steps">The next step of each unit.</param>
/// <param name="Plans">Plans of the areas.</param>
/// <param name="Odd">What is unusual.</param>
public sealed record TodayAnswer(IReadOnlyList<TodayTask> Tasks, IReadOnlyList<(string Unit, StepAdvice Advice)> Steps, IReadOnlyList<AreaPlan> Plans, IReadOnlyList<TodayOdd> Odd)
{
    /// <summary>When it is asked.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>Looks at everything.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="settings">What things are worth.</param>
    /// <param name="now">When it is asked.</param>
    public static TodayAnswer Of(Desk desk, AdviceSettings settings, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(settings);
        List<(string, StepAdvice)> steps = [.. desk.Units.Select(u => (u, Planner.Next(desk, new NextQuestion(u, now, PriceOfMinute: settings.PriceOfMinute), settings)))];
        List<AreaPlan> plans = [.. TurfToday.All(desk, now)];
        return new(TodayOrder.Of(desk, steps, plans, now), steps, plans, TodayOdd.Of(desk, plans, now)) { At = now };
    }

    /// <summary>In the shape of the contract.</summary>
    public JsonObject Json(Desk desk, Phrasing phrasing)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(phrasing);
        var write = new StepJson(phrasing);
        return new JsonObject
        {
            ["now"] = Tasks.Count > 0 ? Json(desk, write, phrasing, Tasks[0]) : null,
            ["turf"] = new JsonArray([.. Plans.Select(p => (JsonNode)TurfToday.Json(desk, p))]),
            ["next"] = new JsonArray([.. Tasks.Skip(1).Select(t => (JsonNode)Json(desk, write, phrasing, t))]),
            ["steel"] = new JsonArray([.. Steps.Select(s => (JsonNode)Steel(desk, s.Unit, s.Advice.Step))]),
            ["height"] = new JsonArray([.. desk.Units.Where(u => desk.HeightTrack(u).Readings > 0).Select(u => (JsonNode)new JsonObject
            {
                ["unit"] = u,
                ["benchMm"] = new JsonObject { ["left"] = StepJson.Q(desk.Height(u, At).BenchMm(0)), ["right"] = StepJson.Q(desk.Height(u, At).BenchMm(1)) },
                ["cutMm"] = StepJson.Q(desk.Height(u, At).CutMm()),
            })]),
            ["unusual"] = new JsonArray([.. Odd.Select(o => (JsonNode)Unusual(desk, phrasing, o))]),
        };
    }

    private static JsonObject Steel(Desk desk, string unit, AdviceStep step)
    {
        var steel = new JsonObject { ["unit"] = unit, ["usableGapUm"] = StepJson.Q(desk.Belief(unit).UsableGapUm()), ["clearanceUm"] = StepJson.AtStations(desk.Belief(unit).ClearanceUm) };
        if (step.BenchInMowings is { } k) steel["benchInMowings"] = k;
        if (step.BenchInDays is { } d) steel["benchInDays"] = d;
        return steel;
    }

    private static JsonObject Unusual(Desk desk, Phrasing phrasing, TodayOdd o)
    {
        var odd = new JsonObject();
        if (o.Unit is not null) odd["unit"] = o.Unit;
        else if (o.Area is not null) odd["area"] = o.Area;
        odd["id"] = o.Id.ToString("D");
        if (o.Surprise is { } surprise) odd["surprise"] = surprise;
        odd["say"] = phrasing.Say(o.Say);
        if (o.Unit is { } unit && o.Surprise is not null) odd["explanations"] = ExplanationSpeech.Json(desk.Track(unit).Unusual[^1].Explanations);
        return odd;
    }

    private static JsonObject Json(Desk desk, StepJson write, Phrasing phrasing, TodayTask task)
    {
        var step = task.Bench is { } bench ? write.Of(bench) : new JsonObject { ["do"] = task.Do, ["expect"] = new JsonObject(), ["then"] = new JsonArray() };
        if (task.Unit is not null) step["unit"] = task.Unit;
        step["urgency"] = task.UrgencyWord;
        step["because"] = phrasing.Say(task.Because);
        if (task.Area is null) return step;
        step["area"] = task.Area;
        step["say"] = phrasing.Say(task.Say);
        step["takesMinutes"] = Math.Round(task.TakesMinutes, 2);
        step["why"] = new JsonArray([.. task.Why.Select(w => (JsonNode)phrasing.Say(w))]);
        step["cautions"] = new JsonArray([.. task.Cautions.Select(c => (JsonNode)phrasing.Say(c))]);
        if (task.Do == "mow" && task.Plan is { } plan)
        {
            if (plan.Today.CutMm?.Unit is { } unit) step["benchMm"] = Math.Round(desk.Height(unit).SetBenchMm(plan.Plan.Days[0].CutMm, task.Area).Mean, 3);
            step["cutMm"] = Math.Round(plan.Plan.Days[0].CutMm, 3);
        }
        if (task.WaterMm is { } mm) step["mm"] = Math.Round(mm, 1);
        if (task.Do == "wait") step["until"] = task.Until is { } on ? TurfAnswer.Date(on) : null;
        return step;
    }
}
