using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>The next step as a book calls for it: a plan that was begun goes on, else the best step is chosen afresh.</summary>
public static class Planner
{
    private const int MostAhead = 20;

    /// <summary>The next step, with its id.</summary>
    public static StepAdvice Next(Desk desk, NextQuestion question, AdviceSettings settings)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(settings);
        if (desk.Remembered(question, settings, desk.State) is { } same && desk.RememberedAt(question.Unit) == question.Now) return same;
        var advice = GoesOn(desk, question, settings) ?? NextStep.Choose(desk.Belief(question.Unit), settings, question, Declined(desk, question, settings));
        advice = advice with { Id = AdviceId.Of(question, advice.Step, desk.State) };
        desk.Remember(new(question, settings, desk.State, advice));
        return advice;
    }

    /// <summary>The sequence that is expected from here: each check is taken to show what is most probable, each step to be done.</summary>
    /// <remarks>The first element is the next step itself; the last is to mow, unless twenty steps do not reach it or a repair ends it.</remarks>
    public static IReadOnlyList<StepAdvice> Ahead(Desk desk, NextQuestion question, AdviceSettings settings)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(question);
        var sequence = new List<StepAdvice>();
        var imagined = desk.Before(desk.Arrived.Count);
        var now = question.Now;
        while (sequence.Count < MostAhead)
        {
            var advice = Next(imagined, question with { Now = now, AtBench = question.AtBench || sequence.Count > 0 }, settings);
            sequence.Add(advice);
            if (advice.Step.Do is "mow" or "repair" or "grind") break;
            now = now.AddMinutes(Math.Max(1, advice.Step.TakesMinutes));
            if (Imagined(advice.Step, question.Unit, now, imagined.Arrived.Count) is not { } entry) break;
            imagined.Add(entry, $"imagined {sequence.Count}");
        }
        return sequence;
    }

    /// <summary>The steps declined since the last mowing: an id names its own; behind an older one it is reckoned again, where it is of this book.</summary>
    private static List<AdviceStep> Declined(Desk desk, NextQuestion question, AdviceSettings settings)
    {
        var steps = new List<AdviceStep>();
        foreach (var id in desk.Track(question.Unit).Memory.Declined)
        {
            if (AdviceId.Read(id) is { Steel: not null } name && (name.Step ?? Recall(desk, id, settings)?.Step) is { } step) steps.Add(step);
        }
        return steps;
    }

    /// <summary>The advice behind an id, on the book as it was then; null where that book cannot be told within this one.</summary>
    public static StepAdvice? Recall(Desk desk, string id, AdviceSettings settings)
    {
        ArgumentNullException.ThrowIfNull(desk);
        if (AdviceId.Read(id) is not { } name || EarlierBook.Of(desk, name) is not { } then) return null;
        var advice = name.Steel is { } q ? Next(then, q, settings) : HeightPlanner.Next(then, name.Setting!);
        return advice with { Id = id };
    }

    /// <summary>A plan goes on where the latest entry is its last step, done as advised on the book before that entry.</summary>
    /// <remarks>The latest by time, not by arrival, so that two devices with the same entries go on alike.</remarks>
    private static StepAdvice? GoesOn(Desk desk, NextQuestion question, AdviceSettings settings)
    {
        var memory = desk.Track(question.Unit).Memory;
        if (memory.BadFit is not null || memory.FitWanted is not null || memory.Signs.StrikeOpen is not null || memory.AdjusterFails || memory.Last is not { } last || desk.Latest?.Id != last.Id) return null;
        if (!(last.Is(ClicksEntry.Kind) || last.Is(SquareUpEntry.Kind) || last.Is(LapEntry.Kind)) || !memory.AtBench(question.Now)) return null;
        var before = desk.Remembered(question, settings, desk.StateWithoutLatest) ?? Next(desk.WithoutLatest(), question with { Now = last.At }, settings);
        if (!Done(before.Step, last) || before.Step.Then.Count == 0) return null;
        var sitting = new SittingNow(memory, question.Now);
        var step = before.Step.Then[0] with { Then = [.. before.Step.Then.Skip(1)], Why = ["It goes on with the plan of the step before."], Cautions = Cautions.For(before.Step.Then[0].Do, memory, sitting) };
        if (step.Do == "contact")
        {
            step = CheckSteps.Of(desk.Belief(question.Unit), settings, "contact", [.. step.Stations], sitting) with
            {
                Then = step.Then,
                Why = ["Something was changed since both ends were last felt: one full turn backwards by hand comes first."],
            };
        }
        return before with { Step = step, Rules = [Rules.Plan, .. step.Do == "contact" ? (Rule[])[Rules.Feel] : [.. before.Rules.Where(r => r != Rules.Plan)]], Entries = [last.Id, .. before.Entries.Take(8)] };
    }

    /// <summary>Whether an entry is the step that was advised, done as advised.</summary>
    private static bool Done(AdviceStep step, Entry e) => step.Do == e.Kind.Name
        && (step.Do != "clicks" || ((e[ClicksEntry.Left] ?? 0) == step.Left && (e[ClicksEntry.Right] ?? 0) == step.Right));

    /// <summary>The entry that a step would leave behind; null for what cannot be imagined.</summary>
    private static Entry? Imagined(AdviceStep step, string unit, DateTimeOffset at, int count)
    {
        var fields = new System.Text.Json.Nodes.JsonObject { ["kind"] = step.Do, ["unit"] = unit };
        switch (step.Do)
        {
            case "clicks":
                (fields["left"], fields["right"]) = (step.Left ?? 0, step.Right ?? 0);
                break;
            case "lap":
                fields["minutes"] = step.LapMinutes;
                if (step.Grit is { } g) fields["grit"] = g;
                break;
            case "stone":
                fields["what"] = step.What;
                break;
            case "fit":
                (fields["playLeft"], fields["playRight"], fields["knifeScrews"]) = ("none", "none", "tight");
                break;
            case "straightedge":
                (fields["kind"], fields["what"], fields[Stations.Centre]) = ("measure", "straightedge", 0.03);
                break;
            case "knife-screws":
                (fields["kind"], fields["what"]) = ("service", Steel.NipSigns.KnifeScrews);
                break;
            case "strip":
                fields["um"] = 80;
                break;
            case "wait":
                return null;
            case "feeler":
                foreach (var (s, _, p) in step.ExpectRead)
                {
                    fields[Stations.All[s]] = Array.IndexOf(p, p.Max()) switch
                    {
                        0 => new System.Text.Json.Nodes.JsonObject { ["noGoUm"] = 30 },
                        1 => new System.Text.Json.Nodes.JsonObject { ["goUm"] = 30, ["noGoUm"] = 50 },
                        _ => new System.Text.Json.Nodes.JsonObject { ["goUm"] = 50 },
                    };
                }
                break;
            default:
                foreach (var (s, words, p) in step.ExpectRead) fields[Stations.All[s]] = words[Array.IndexOf(p, p.Max())];
                break;
        }
        var faults = EntryReader.Read(fields.ToJsonString(), new EntryContext { Now = () => at, NewId = t => EntryIds.Make(t, 0xFFF, (ulong)count) }, out var entry);
        return faults.Count == 0 ? entry : null;
    }
}
