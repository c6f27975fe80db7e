using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Calendars;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>The mowings of the coming weeks: days, heights, what comes off, and why.</summary>
internal sealed class PlanCommand : CliCommand
{
    private const int Dated = 12;
    private static readonly Option<int?> Days = new("--days") { Description = "so many days, 1 to 60; 28 where not told", HelpName = "N" };
    private static readonly Option<string> From = new("--from") { Description = "another first day than today", HelpName = "DATE" };
    private static readonly Option<string[]> Off = new("--off") { Description = "a day on which nobody is there to mow; may be repeated", HelpName = "DATE" };
    private static readonly Option<string[]> On = new("--on") { Description = "a day on which someone is there, though it is no usual day; may be repeated", HelpName = "DATE" };
    private static readonly Option<string[]> OverThird = new("--over-third") { Description = "a day on which more than a third may come off: your yes to that mowing; may be repeated", HelpName = "DATE" };
    private static readonly Option<bool> Dry = new("--dry") { Description = "as if nothing were watered, whatever the record shows" };
    private static readonly Option<string> File = new("--calendar") { Description = "also write the mowings as a calendar file (iCalendar)", HelpName = "FILE.ics" };
    private static readonly Option<bool> Each = new("--each-day") { Description = "also say of every other day why not" };

    public PlanCommand() : base("plan", "days to mow in the coming weeks, the height for each, what comes off, and why not the other days")
    {
        Examples = [("closemown plan --area green", "four weeks"), ("closemown plan --days 14 --each-day", "two weeks, every day with its reason"), ("closemown plan --on today --off saturday", "what if you have time today, and none on Saturday?"), ("closemown plan --calendar mowing.ics", "for the calendar"), ("closemown plan --json", "for a program")];
        foreach (var option in (Option[])[CommonOptions.Area, Days, From, On, Off, OverThird, Dry, File, Each, CommonOptions.At, CommonOptions.Draw]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        var n = call.Parsed.GetValue(Days) ?? 28;
        if (n is < 1 or > AreaPlan.MostShown) throw CliFault.Usage($"--days {n} cannot be.", "Write a number from 1 to 60.");
        using var open = call.Read();
        var area = TurfAreas.Of(call, open.Desk);
        var today = TurfAreas.Today(open, area);
        var asked = new DaysAsked(Dates(call, Off, today), Dates(call, On, today), Dates(call, OverThird, today), call.Parsed.GetValue(Dry));
        if (DaysAsked.Both(asked.Off, asked.On) is { } both) throw CliFault.Usage(both.Message, both.Remedy);
        if (DateOnly.TryParseExact(call.Parsed.GetValue(From), "yyyy-MM-dd", out var from) && Math.Abs(from.Year - open.Talk.AskedAt.Year) > QuestionDate.YearsAhead)
            throw CliFault.Usage($"--from {call.Parsed.GetValue(From)} lies too far from today.", $"Write a day within {QuestionDate.YearsAhead} years: further ahead nothing is known.");
        var plan = AreaPlan.Of(open.Desk, area, TurfAreas.At(call, open, area, From), n, open.Talk.AskedAt, asked);
        if (call.Parsed.GetValue(File) is { } path)
        {
            if (System.IO.File.Exists(path)) throw CliFault.Refused($"{path} exists already; a calendar overwrites nothing.", "Give another name, or move that file away.");
            System.IO.File.WriteAllText(path, PlanCalendarFile.Of(plan, area, new Phrasing(call.Style), call.Now));
        }
        if (call.Json)
        {
            call.Answer(open.Ask(new JsonObject { ["ask"] = "plan", ["area"] = area, ["days"] = n, ["from"] = call.Parsed.GetValue(From), ["daysOff"] = Written(asked.Off), ["daysOn"] = Written(asked.On), ["overThird"] = Written(asked.OverThird), ["dry"] = asked.Dry ? true : null }));
            return ExitCodes.Done;
        }
        Tell(call, open, plan);
        return ExitCodes.Done;
    }

    private static HashSet<DateOnly> Dates(Call call, Option<string[]> option, DateOnly today)
    {
        var days = new HashSet<DateOnly>();
        foreach (var text in call.Parsed.GetValue(option) ?? [])
        {
            if (DayTyped.Read([text], 0, today, ahead: true, out var day) != 1) throw CliFault.Usage($"{option.Name} {text} is no day.", "Write it like 2026-05-03, \"3 May\", today or saturday.");
            days.Add(day);
        }
        return days;
    }

    private static JsonArray? Written(IReadOnlySet<DateOnly> days) => days.Count == 0 ? null : new([.. days.Order().Select(d => (JsonNode)d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))]);

    private static void Tell(Call call, OpenBook open, AreaPlan plan)
    {
        var (screen, words) = (call.Screen, new Phrasing(call.Style));
        void Say(IEnumerable<string> sentences)
        {
            foreach (var line in sentences.SelectMany(s => Wrap.Text(words.Say(s), screen.Width))) screen.Line(line);
        }
        if (screen.OutIsTerminal || call.Parsed.GetValue(CommonOptions.Draw))
        {
            foreach (var line in new CanopyDrawing(screen, call.Style).Lines(CanopySeries.Of(open.Desk, plan, 7, plan.Plan.Days.Count), plan.WishMm)) screen.Line(line);
            screen.Line();
        }
        Say(PlanSpeech.Summary(plan));
        var first = true;
        var others = new List<PlanDay>();
        foreach (var day in plan.Plan.Days)
        {
            if (!day.Mow)
            {
                others.Add(day);
                continue;
            }
            if (first)
            {
                screen.Line();
                Say(PlanSpeech.StandOnIt);
                screen.Line();
            }
            first = false;
            Between(call, words, others);
            var bench = plan.Today.CutMm?.Unit is { } unit ? $", bench {words.Say(HeightSpeech.Near(open.Desk.Height(unit).SetBenchMm(day.CutMm, plan.Today.AreaName).Mean))}" : "";
            var line = $"mow at {words.Say(HeightSpeech.Near(day.CutMm))}{bench}: {Percent(day.Share.Mean)} % off ({Percent(day.Share.P05)} to {Percent(day.Share.P95)}){(Height(day) is { } height ? $", {height}" : "")}";
            foreach (var row in Wrap.Beside(Date(day.Date), line, screen.Width, Dated)) screen.Line(screen.Ink(Tone.Strong, row));
        }
        Between(call, words, others);
        if (plan.Plan.Days.FirstOrDefault(d => d.Mow) is { } next)
        {
            screen.Line();
            Say([$"{Date(next.Date)}: {PlanSpeech.Why(next)} It should look like this: {PlanSpeech.Looks(next)}."]);
        }
        var notes = PlanNotes.Of(plan, open.Desk, plan.Today.CutMm?.Unit).ToList();
        if (notes.Count > 0) screen.Line();
        Say(notes.Select(x => x.Say));
    }

    /// <summary>Days without a mowing, by what decides.</summary>
    private static void Between(Call call, Phrasing words, List<PlanDay> days)
    {
        if (days.Count == 0) return;
        if (call.Parsed.GetValue(Each))
        {
            foreach (var d in days)
            {
                foreach (var line in Wrap.Beside(Date(d.Date), words.Say(PlanSpeech.Why(d)), call.Screen.Width, Dated)) call.Screen.Line(line);
            }
        }
        else
        {
            var span = days.Count == 1 ? "" : $"to {Date(days[^1].Date)} ";
            var why = string.Join(", ", days.GroupBy(d => Word(d.Why.Reason)).OrderByDescending(g => g.Count()).Select(g => $"{g.Key} ({g.Count()})"));
            foreach (var line in Wrap.Beside(Date(days[0].Date), $"{span}no mowing: {why}", call.Screen.Width, Dated)) call.Screen.Line(line);
        }
        days.Clear();
    }

    /// <summary>What is done to the height, in a word or two; null where nothing is.</summary>
    private static string? Height(PlanDay d) => d.WhyHeight.Reason switch
    {
        HeightReason.ComingDown => "back by thirds",
        HeightReason.LoweredTowardsWish => "a step down",
        HeightReason.RaisedTowardsWish => "raised to the wish",
        _ when d.Move == CutMove.Raised => "raised",
        _ => null,
    };

    private static string Word(PlanReason reason) => reason switch
    {
        PlanReason.KeepOff => "keep off",
        PlanReason.NotFree => "not usual days",
        PlanReason.NoMinutes => "too few minutes",
        PlanReason.LittleGrown => "little grown",
        PlanReason.Stressed => "stressed turf",
        PlanReason.ComingDownWaits => "a day between two mowings on the way back",
        PlanReason.TooTall => "too tall for one mowing",
        PlanReason.HeightNotKnown => "read what it stands at first",
        _ => "another day costs less",
    };

    private static string Date(DateOnly d) => d.ToString("ddd dd MMM", CultureInfo.InvariantCulture);

    private static string Percent(double share) => Math.Round(100 * share).ToString(CultureInfo.InvariantCulture);
}
