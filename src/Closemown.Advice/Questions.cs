using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>Answers questions about a book in the shapes of the contract.</summary>
public sealed class Questions(Desk desk, AdviceSettings settings, Phrasing phrasing)
{
    private static readonly string[] All = ["next", "steel", "height", "step-down", "why", "today", "score", "turf", "plan", "steel-history", "canopy", "sink", "places"];
    private readonly StepJson write = new(phrasing);

    /// <summary>Answers a question.</summary>
    /// <param name="question">A JSON object with <c>ask</c>.</param>
    /// <param name="now">When it is asked.</param>
    /// <param name="onlyUnit">The unit where the question names none; null where several are in use.</param>
    /// <param name="fault">What is wrong with the question; null where it was answered.</param>
    /// <returns>The answer under the question's own name, or null.</returns>
    public JsonObject? Answer(JsonElement question, DateTimeOffset now, string? onlyUnit, out EntryFault? fault)
    {
        fault = null;
        var ask = Text(question, "ask");
        switch (ask)
        {
            case "next":
                return Next(question, now, onlyUnit, out fault);
            case "steel":
                if (Unit(question, onlyUnit, out fault) is not { } unit) return null;
                return new JsonObject { ["ok"] = true, ["steel"] = SteelAnswer.Of(desk.Belief(unit)) };
            case "steel-history":
                return Unit(question, onlyUnit, out fault) is { } told && AimReader.Number(question, "last", 1, SteelHistory.Most, "entries", out var last, out fault)
                    ? new JsonObject { ["ok"] = true, ["steel-history"] = SteelHistory.Of(desk, told, (int)(last ?? SteelHistory.Most)) } : null;
            case "height":
                return Height(question, now, onlyUnit, out fault);
            case "step-down":
                return StepsDown(question, now, onlyUnit, out fault);
            case "why":
                return Why(question, out fault);
            case "today":
                return Today(now);
            case "turf":
                return TurfOf(question, now, out fault);
            case "plan":
                return PlanOf(question, now, out fault);
            case "canopy":
                return CanopyOf(question, now, out fault);
            case "sink":
                return SinkOf(question, onlyUnit, out fault);
            case "places":
                return new JsonObject { ["ok"] = true, ["places"] = PlacesAnswer.Of(desk) };
            case "score":
                return new JsonObject { ["ok"] = true, ["score"] = ScoreAnswer.Of(desk.Units.Select(desk.Track), desk.Units.Select(desk.HeightTrack)) };
            default:
                fault = Unknown(ask);
                return null;
        }
    }

    /// <summary>The advice behind an id, on the book as it was then.</summary>
    /// <param name="id">The id of an advice.</param>
    /// <param name="fault">Why there is none.</param>
    public StepAdvice? Recall(string id, out EntryFault? fault)
    {
        fault = null;
        var advice = Planner.Recall(desk, id, settings);
        if (advice is not null) return advice;
        fault = AdviceId.Read(id) is { Chain: null, Count: var then }
            ? new(FaultCodes.UnknownId, "id", $"The advice {Spelling.Clip(id)} was given on {then} entries that cannot be told from the {desk.Arrived.Count} here: others have come in between them, or some are not in this book.",
                "Ask why on the device that gave it, or ask \"next\" for what the book calls for now.")
            : new(FaultCodes.UnknownId, "id", $"There is no advice {Spelling.Clip(id)} in this book.", "Give the id that a step carries under \"advice\", with the same book.");
        return null;
    }

    private JsonObject? Next(JsonElement question, DateTimeOffset now, string? onlyUnit, out EntryFault? fault)
    {
        if (Unit(question, onlyUnit, out fault) is not { } unit) return null;
        if (question.TryGetProperty("aim", out var aim) && aim.ValueKind != JsonValueKind.Null)
        {
            if (AimReader.Read(aim, unit, now, out fault) is not { } wanted || !Known(desk, "aim.area", wanted.Area, out fault)) return null;
            if (wanted.CutMm is not null) wanted = wanted with { Area = wanted.Area ?? OnlyOne };
            fault = HeightPlanner.OutOfReach(desk, wanted);
            if (fault is not null || !Flag(question, "ahead", out var whole, out fault)) return null;
            var set = write.Of(HeightPlanner.Next(desk, wanted));
            if (FirstMowing.Of(desk, wanted) is { } first) set["firstMowing"] = HeightAnswer.First(first);
            if (whole) set["ahead"] = set["then"]!.DeepClone();   // what comes after the next reading hangs on it
            return new JsonObject { ["ok"] = true, ["next"] = set };
        }
        var price = settings.PriceOfMinute;
        if (question.TryGetProperty("priceOfMinute", out var p) && p.ValueKind != JsonValueKind.Null)
        {
            if (p.ValueKind != JsonValueKind.Number || !p.TryGetDouble(out price) || price is not (> 0 and <= 100))
            {
                fault = new(FaultCodes.BadValue, "priceOfMinute", $"{Spelling.Clip(p.GetRawText())} is no price of a minute.", "Write a number above 0, at most 100; 1 is usual.");
                return null;
            }
        }
        if (!Flag(question, "atBench", out var atBench, out fault) || !Flag(question, "ahead", out var ahead, out fault)) return null;
        var q = new NextQuestion(unit, now, atBench, price);
        if (!ahead) return new JsonObject { ["ok"] = true, ["next"] = write.Of(Planner.Next(desk, q, settings)) };
        var sequence = Planner.Ahead(desk, q, settings);
        var next = write.Of(sequence[0]);
        next["ahead"] = new JsonArray([.. sequence.Skip(1).Select(a =>
        {
            var step = write.Of(a);
            step.Remove("advice");                // imagined: nothing in the book stands behind it
            return (JsonNode)step;
        })]);
        return new JsonObject { ["ok"] = true, ["next"] = next };
    }

    private JsonObject? Height(JsonElement question, DateTimeOffset now, string? onlyUnit, out EntryFault? fault)
    {
        if (Unit(question, onlyUnit, out fault) is not { } unit || !Area(question, out var area, out fault)
            || !AimReader.Number(question, "benchMm", 0.5, 150, "mm", out var bench, out fault) || !AimReader.Number(question, "cutMm", 0.5, 150, "mm", out var cut, out fault)
            || !Flag(question, "wet", out var wet, out fault)) return null;
        return new JsonObject { ["ok"] = true, ["height"] = HeightAnswer.Of(desk.Height(unit, now), area ?? OnlyOne, bench, cut, wet, phrasing) };
    }

    private JsonObject? StepsDown(JsonElement question, DateTimeOffset now, string? onlyUnit, out EntryFault? fault)
    {
        if (!Area(question, out var area, out fault) || !AimReader.Number(question, "cutMm", 0.5, 150, "mm", out var cut, out fault)
            || !AimReader.Number(question, "share", 0.01, 0.95, "a share of the standing height", out var share, out fault)
            || !AimReader.Number(question, "canopyMm", 0.5, 500, "mm", out var canopy, out fault)
            || !AimReader.Number(question, "growthMm", 0, 100, "mm between two mowings", out var growth, out fault)) return null;
        cut ??= desk.Standing.LastOrDefault(e => e.Is(WishEntry.Kind) && (area is null || e.Area == area))?[WishEntry.CutMm];
        if (cut is null)
        {
            fault = new(FaultCodes.Missing, "cutMm", "The question does not say what the turf shall be cut at, and no wish is in the book.", "Add \"cutMm\", or an entry of kind wish.");
            return null;
        }
        var planned = canopy is null && share is null && growth is null && (area ?? OnlyOne) is { } one ? Planned(one, cut.Value, now) : null;
        canopy ??= Stands(area, now);
        if (canopy is null)
        {
            fault = StandingHeight.Of(desk, area) is null
                ? new(FaultCodes.Missing, "canopyMm", "What the turf stands at is not in the book.", "Read it (an entry of kind canopy), or add \"canopyMm\".")
                : new(FaultCodes.Missing, "canopyMm", "What the turf stands at is not known: it was not read or mown for too long.", "Read it at five spots (an entry of kind canopy), or add \"canopyMm\".");
            return null;
        }
        // The unit that mows this area, where none is named.
        var mows = desk.Standing.LastOrDefault(e => e.Is(MowEntry.Kind) && e.Unit is not null && (area is null || e.Area == area))?.Unit;
        if (Unit(question, mows ?? onlyUnit, out fault) is not { } unit) return null;
        if (planned is not null) return new JsonObject { ["ok"] = true, ["step-down"] = StepDownAnswer.Of(desk.Height(unit), planned) };
        return StepDownAnswer.Of(desk.Height(unit), area, canopy.Value, cut.Value, share ?? StepDown.UsualShare, growth ?? 0, out fault) is { } rows
            ? new JsonObject { ["ok"] = true, ["step-down"] = rows }
            : null;
    }

    /// <summary>The plan of an area where it comes down to the cut asked for, which is the one wished; null where it does not.</summary>
    private AreaPlan? Planned(string area, double cutMm, DateTimeOffset now)
    {
        if (!desk.Areas.Contains(area) || desk.Ledger(area).Track is { HeightReadings: 0, Mowings: 0 }) return null;
        var plan = AreaPlan.Of(desk, area, TurfTime.Now(desk, now), AreaPlan.MostShown, now);
        return plan.WishMm is { } wish && Math.Abs(wish - cutMm) <= StepDownAnswer.SameMm && plan.Today.HeightKnown && plan.Whole.Any(d => d.Mow) ? plan : null;
    }

    private JsonObject? TurfOf(JsonElement question, DateTimeOffset now, out EntryFault? fault)
    {
        if (OneArea(question, out fault) is not { } area || !QuestionDate.Read(question, "date", now, out var date, out fault)) return null;
        var today = AreaToday.Of(desk, area, TurfTime.On(desk, area, date, now), now);
        return new JsonObject { ["ok"] = true, ["turf"] = TurfAnswer.Of(today, phrasing) };
    }

    private JsonObject? PlanOf(JsonElement question, DateTimeOffset now, out EntryFault? fault)
    {
        if (OneArea(question, out fault) is not { } area || !QuestionDate.Read(question, "from", now, out var from, out fault)
            || !AimReader.Number(question, "days", 1, AreaPlan.MostShown, "days", out var days, out fault)
            || !DaysAsked.Read(question, out var asked, out fault)) return null;
        var plan = AreaPlan.Of(desk, area, TurfTime.On(desk, area, from, now), (int)Math.Ceiling(days ?? AreaPlan.UsualDays), now, asked);
        return PlanAnswer.Of(desk, plan, phrasing);
    }

    private JsonObject? CanopyOf(JsonElement question, DateTimeOffset now, out EntryFault? fault)
    {
        if (OneArea(question, out fault) is not { } area || !AimReader.Number(question, "back", 0, CanopyAnswer.MostBack, "days", out var back, out fault)
            || !AimReader.Number(question, "ahead", 1, AreaPlan.MostShown, "days", out var ahead, out fault)) return null;
        var days = (int)Math.Ceiling(ahead ?? CanopyAnswer.UsualAhead);
        return new JsonObject { ["ok"] = true, ["canopy"] = CanopyAnswer.Of(desk, AreaPlan.Of(desk, area, TurfTime.Now(desk, now), days, now), (int)(back ?? CanopyAnswer.UsualBack), days) };
    }

    private JsonObject? SinkOf(JsonElement question, string? onlyUnit, out EntryFault? fault) =>
        Unit(question, onlyUnit, out fault) is { } unit && Area(question, out var area, out fault) ? new JsonObject { ["ok"] = true, ["sink"] = SinkAnswer.Of(desk, unit, area) } : null;


    /// <summary>The area a question names, or the only one.</summary>
    private string? OneArea(JsonElement question, out EntryFault? fault)
    {
        if (!Area(question, out var area, out fault)) return null;
        if ((area ?? (desk.Areas.Count switch { 0 => "turf", 1 => desk.Areas.First(), _ => null })) is { } one) return one;
        fault = new(FaultCodes.Missing, "area", "The question does not say which area.", $"Add \"area\": one of {string.Join(", ", desk.Areas)}.");
        return null;
    }

    /// <summary>What an area stands at by its own estimate; null where it was neither mown nor read, or several could be meant.</summary>
    private double? Stands(string? area, DateTimeOffset now) =>
        (area ?? OnlyOne) is { } one ? StandingNow.Of(desk, one, now) : StandingHeight.Of(desk, area)?.Mm;

    /// <summary>The book's only area, meant where none is named; null where there are several, or none.</summary>
    private string? OnlyOne => desk.Areas.Count == 1 ? desk.Areas.First() : null;

    private bool Area(JsonElement question, out string? area, out EntryFault? fault)
    {
        (area, fault) = (null, null);
        if (!question.TryGetProperty("area", out var v) || v.ValueKind == JsonValueKind.Null) return true;
        area = v.ValueKind == JsonValueKind.String ? v.GetString() : null;
        if (area is { Length: > 0 and <= 80 }) return Known(desk, "area", area, out fault);
        fault = new(FaultCodes.BadValue, "area", $"{Spelling.Clip(v.GetRawText())} is no area.", "Write its short name in quotes.");
        return false;
    }

    private JsonObject? Why(JsonElement question, out EntryFault? fault)
    {
        if (Text(question, "id") is not { } id)
        {
            fault = new(FaultCodes.Missing, "id", "The question does not say which advice.", "Add \"id\": the text that a step carries under \"advice\".");
            return null;
        }
        return Recall(id, out fault) is { } advice ? new JsonObject { ["ok"] = true, ["why"] = write.Why(advice) } : null;
    }

    private JsonObject Today(DateTimeOffset now) => new() { ["ok"] = true, ["today"] = TodayAnswer.Of(desk, settings, now).Json(desk, phrasing) };

    private static EntryFault Unknown(string? ask)
    {
        if (ask is null) return new(FaultCodes.Missing, "ask", "The question does not say what it asks.", $"Ask one of {string.Join(", ", All)}.");
        var near = Spelling.Nearest(ask, All);
        return new(FaultCodes.UnknownQuestion, "ask", $"There is no question \"{Spelling.Clip(ask)}\".", near is null ? $"Ask one of {string.Join(", ", All)}." : $"Did you mean \"{near}\"?");
    }

    /// <summary>Whether the book has an area of that name; in a book without any each name will do, as for entries.</summary>
    private static bool Known(Desk desk, string field, string? area, out EntryFault? fault)
    {
        fault = area is null || desk.Areas.Count == 0 || desk.KnowsArea(area) ? null : NoSuch("area", field, area, desk.Areas);
        return fault is null;
    }

    private static EntryFault NoSuch(string what, string field, string name, IReadOnlyCollection<string> has)
    {
        var near = Spelling.Nearest(name, has);
        return new(FaultCodes.BadValue, field, $"The book has no {what} \"{Spelling.Clip(name)}\".", near is null ? $"It has {string.Join(", ", has)}." : $"Did you mean \"{near}\"?");
    }

    private string? Unit(JsonElement question, string? onlyUnit, out EntryFault? fault)
    {
        fault = null;
        if (Text(question, "unit") is { Length: > 0 and <= 80 } name)
        {
            if (desk.Units.Count == 0 || desk.Units.Contains(name)) return name;
            fault = NoSuch("unit", "unit", name, desk.Units);
            return null;
        }
        if (onlyUnit is not null && !(question.TryGetProperty("unit", out var u) && u.ValueKind != JsonValueKind.Null)) return onlyUnit;
        fault = new(FaultCodes.Missing, "unit", "The question does not say which unit.", "Add \"unit\": its short name.");
        return null;
    }

    private static bool Flag(JsonElement question, string field, out bool value, out EntryFault? fault)
    {
        (value, fault) = (false, null);
        if (!question.TryGetProperty(field, out var v) || v.ValueKind == JsonValueKind.Null) return true;
        if (v.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            value = v.GetBoolean();
            return true;
        }
        fault = new(FaultCodes.BadValue, field, $"{Spelling.Clip(v.GetRawText())} is not true or false.", "Write true or false.");
        return false;
    }

    private static string? Text(JsonElement question, string field) => question.TryGetProperty(field, out var v) && v.ValueKind == JsonValueKind.String ? v.GetString() : null;
}
