using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Chooses the one next step of a unit.</summary>
/// <remarks>
/// Some rules decide alone (a bad fit, an odd reading, a change not yet felt after). Otherwise actions and checks are ranked by expected loss,
/// with the spread of the belief, and a check is taken first where it is worth its minutes.
/// </remarks>
public sealed class NextStep
{
    private const double WorthDoing = 0.25;              // minutes of expected gain under which nothing is changed
    private static readonly int[] Ends = [0, 2];
    private readonly SteelBelief belief;
    private readonly UnitTrack track;
    private readonly BenchMemory memory;
    private readonly AdviceSettings set;
    private readonly NextQuestion question;
    private readonly bool atBench;
    private readonly SittingNow sitting;
    private readonly double? grit;
    private readonly IReadOnlyList<AdviceStep> declined;

    private NextStep(SteelBelief belief, AdviceSettings settings, NextQuestion question, IReadOnlyList<AdviceStep> declined)
    {
        (this.belief, this.declined, this.question) = (belief, declined, question);
        track = belief.Track;
        memory = track.Memory;
        set = settings with { PriceOfMinute = question.PriceOfMinute };
        sitting = new SittingNow(memory, question.Now);
        atBench = question.AtBench || sitting.Open;
        grit = track.LastGrit ?? (track.Unit.Grits.Count > 0 ? track.Unit.Grits.Max() : null);
    }

    /// <summary>The next step from a belief alone, without the plan that an earlier step may have begun.</summary>
    public static StepAdvice Choose(SteelBelief belief, AdviceSettings settings, NextQuestion question, IReadOnlyList<AdviceStep>? declined = null)
    {
        ArgumentNullException.ThrowIfNull(belief);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(question);
        return new NextStep(belief, settings, question, declined ?? []).Choose();
    }

    private StepAdvice Choose()
    {
        if (memory.BadFit is { } bad) return Repair(bad);
        if (memory.AdjusterFails && !declined.Any(d => d.Do == "repair")) return AdjusterFails();
        if (memory.FitWanted is { } why && !declined.Any(d => d.Do == "fit")) return AskFit(why);
        if (memory.Unusual is { } odd) return ReadAgain(odd.Entry, odd.Surprise);
        if (memory.OddSound is { } sound && !declined.Any(d => d.Do == "contact"))
            return Advise(Ask("contact", Ends, [$"A sound that was not there before ({sound.Word("sound")}) came from the mower: feel both ends before it mows again."]), null, [Rules.Sound]);

        if (memory.LapsInVain >= AdviceSettings.LapRounds && !memory.PaperSinceLap && sitting.Open && !declined.Any(d => d.Do == "paper-cut"))
            return Advise(Ask("paper-cut", [0, 1, 2], ["Three rounds were lapped: does the strip cut better now?"]), null, [Rules.LapInVain]);

        var ranking = new Ranking(belief, set, Candidates.Actions(belief, sitting, declined, set.Without), grit, sitting.Laps, opens: !question.AtBench);
        var offers = ranking.Checks(CheckOffer.All(track, sitting, set.Without).Where(o => !declined.Any(d => d.Do == o.Kind && d.Stations.SequenceEqual(o.At))));
        var open = atBench ? 0 : set.OpenSittingMinutes * set.PriceOfMinute;
        var best = ranking.Best;
        var check = offers.Count > 0 ? offers[0] : null;
        var leave = ranking.Actions.FirstOrDefault(r => r.Action == SteelAction.Leave)?.Loss ?? double.PositiveInfinity;
        var bench = best.Loss - (check is { Net: > WorthDoing } ? check.Net : 0) + open;

        if (leave <= bench + WorthDoing) return memory.FeelWanted ? FeelFirst(ranking, offers) : Mow(ranking, offers, leave);
        if (!Candidates.InVain(belief) && (check is { Net: > WorthDoing } || (!sitting.Checked && check is not null))) return AskCheck(check, ranking, offers, forced: check.Net <= WorthDoing);
        return Act(best, ranking, offers);
    }

    private StepAdvice Repair(Entry bad) => new(new AdviceStep("repair")
    {
        Say = $"Repair first: {FitRules.Bad(bad)}. No check means anything until then.",
        TakesMinutes = 60,
        Why = [$"The look at the fit said: {FitRules.Bad(bad)}."],
        Cautions = Cautions.For("repair", memory, sitting),
    })
    {
        Entries = [bad.Id],
        Rules = [Rules.Fit],
    };

    private StepAdvice AdjusterFails() => new(new AdviceStep("repair")
    {
        Say = "Take the adjusters apart and look: they turn, but nothing follows.",
        TakesMinutes = 60,
        Why = [$"An end was turned {memory.TurnedFar:0} steps the same way on balance, and the readings have not followed."],
        Cautions = Cautions.For("repair", memory, sitting),
    })
    {
        Entries = [.. sitting.Entries.Where(e => e.Is("clicks")).TakeLast(12).Select(e => e.Id)],
        Rules = [Rules.Fit],
    };

    private StepAdvice AskFit(string why) => new(new AdviceStep("fit")
    {
        Say = StepSpeech.Check("fit", []),
        TakesMinutes = set.FitMinutes,
        Why = [why switch
        {
            "rebuild" => "It was just put back together: often tight at some place although it was right before.",
            "adjuster" => $"An end was turned {memory.TurnedFar:0} steps the same way and the readings have not followed: does the adjuster move it at all?",
            "strike" => "It hit something: a bent blade or a loose screw would make every other check worthless.",
            _ => "Nothing is in the book about this unit yet: while bearings knock, screws are loose or a blade is bent, no check means anything.",
        }],
        Cautions = Cautions.For("fit", memory, sitting),
    })
    {
        Entries = memory.Upset is { } u ? [u.Id] : [],
        Rules = [Rules.FitAsked],
    };

    /// <summary>An odd reading is read again; after an odd swath, which cannot be, the nip is looked at where it looked odd.</summary>
    private StepAdvice ReadAgain(Entry odd, double surprise)
    {
        var swath = odd.Is("swath");
        var at = Enumerable.Range(0, 3).Where(s => odd[odd.Kind.IndexOf(Stations.All[s])] is not null).ToArray();
        var why = $"The last {(swath ? "look at the swath" : "reading")} is not like this mower (about 1 in {Math.Max(2, Math.Round(1 / Math.Max(surprise, 1e-6))):0}): "
            + (swath ? "see whether the strip still cuts before anything is turned." : "read it again before anything is turned.");
        var kind = swath ? track.Unit.Owns.Contains("strip") ? "paper-cut" : "contact" : odd.Kind.Name;
        return Advise(Ask(kind, at, [why, .. Explained(odd)]), null, [Rules.Odd]) with { Entries = [odd.Id] };
    }

    private string[] Explained(Entry odd) =>
        track.Unusual.Count > 0 && track.Unusual[^1].Entry.Id == odd.Id && ExplanationSpeech.Sentence(track.Unusual[^1].Explanations) is { } said ? [said] : [];

    private StepAdvice FeelFirst(Ranking ranking, List<RankedCheck> offers) =>
        Advise(Ask("contact", Ends, [memory.HeightSet is null ? "Something was changed since both ends were last felt."
            : $"The height was set or read since the nip was last checked: a gauge hooked on the {{bedknife}} or the nuts can move the {{gap}}, on this mower by about {StepSpeech.Um(track.HeightShiftUm)} either way.", .. Reasons.Of(belief, sitting)]), ranking, [memory.HeightSet is null ? Rules.Feel : HeightRules.Nip], offers);

    private StepAdvice AskCheck(RankedCheck check, Ranking ranking, List<RankedCheck> offers, bool forced)
    {
        var o = check.Offer;
        var why = new List<string>();
        if (forced) why.Add("Nothing was checked in this sitting yet.");
        else why.Add($"It is expected to save {Phrasing.Number(check.Gain, "0.#")} minutes' worth of torn leaf, pressing or work, for {Phrasing.Number(o.Minutes(set), "0.#")} minutes of yours.");
        why.AddRange(Reasons.Of(belief, sitting));
        var step = Ask(o.Kind, o.At, why);
        if (o.With is not null) step = step with { Then = [Ask(o.With, o.WithAt!, []) with { Cautions = [] }] };
        return Advise(step, ranking, forced ? [Rules.CheckFirst, Rules.Worth] : [Rules.Worth], offers);
    }

    private StepAdvice Mow(Ranking ranking, List<RankedCheck> offers, double leave)
    {
        var mowings = BenchForecast.Mowings(set, ranking);
        var days = mowings is { } m && memory.UsualDays is { } d ? m * d : (double?)null;
        var due = mowings is null ? "The bench is not due within a hundred such mowings"
            : days is { } t ? $"Bench check {StepSpeech.Days(t)}"
            : mowings == 1 ? "Bench check before the mowing after" : $"Bench check after about {mowings} such mowings";
        var expect = ExpectedOutcome.Of(SteelAction.Leave, ranking);
        var step = new AdviceStep("mow")
        {
            Say = $"Mow, and look behind you. {due}.",
            TakesMinutes = 0,
            Expect = expect,
            BenchInMowings = mowings,
            BenchInDays = days,
            Why = [$"{StepSpeech.InHundred(expect.InTolerance)} that the {{gap}} is in tolerance everywhere; about {StepSpeech.InHundred(expect.CleanShare)} leaves cut clean.", .. Reasons.Of(belief, sitting)],
            Cautions = Cautions.For("mow", memory, sitting),
        };
        return Advise(step, ranking, [Rules.Loss], offers) with { ExpectedLoss = leave };
    }

    private StepAdvice Act(RankedAction best, Ranking ranking, List<RankedCheck> offers)
    {
        var a = best.Action;
        var plan = new PlanSteps(belief, set, grit, sitting).Of(a, ExpectedOutcome.Of(a, ranking));
        var rules = new List<Rule> { Rules.Loss };
        if (a.Left != 0 || a.Right != 0) rules.Add(Rules.TwoSteps);
        if (memory.Touched(0) || memory.Touched(1) || memory.Touched(2)) rules.Add(Rules.Touched);
        if (Math.Abs(a.Left - a.Right) > 1 || !Candidates.MayDiffer(belief)) rules.Add(Rules.Cone);
        if (a.LapMinutes > 0) rules.Add(Rules.LapEdge);
        if (a.Do is "stone" or "grind" or "repair") rules.Add(Rules.LapInVain);
        var why = Reasons.Of(belief, sitting);
        var leave = ranking.Actions.FirstOrDefault(r => r.Action.Do == "leave");
        if (leave is not null) why.Insert(0, $"Left as it is, the next mowing would cost about {leave.Loss:0} minutes' worth; with this about {best.Loss:0}, its own minutes counted.");
        var first = plan[0] with { Why = why, Then = [.. plan.Skip(1)] };
        return Advise(first, ranking, rules, offers) with { ExpectedLoss = best.Loss };
    }

    private AdviceStep Ask(string kind, int[] at, IReadOnlyList<string> why) => CheckSteps.Of(belief, set, kind, at, sitting) with { Why = why };

    private StepAdvice Advise(AdviceStep step, Ranking? ranking, IReadOnlyList<Rule> rules, List<RankedCheck>? offers = null)
    {
        var alternatives = new List<Alternative>();
        if (ranking is not null)
        {
            var shown = ranking.Actions.Take(4).ToList();
            if (shown.TrueForAll(r => r.Action.Do != "leave") && ranking.Actions.FirstOrDefault(r => r.Action.Do == "leave") is { } l) shown.Add(l);
            if (shown.TrueForAll(r => r.Action.LapMinutes == 0) && ranking.Actions.FirstOrDefault(r => r.Action.LapMinutes > 0) is { } lap) shown.Add(lap);
            alternatives.AddRange(shown.Select(r => new Alternative(Plain(r.Action), r.Action.Say(track.Unit), r.Loss, null)));
        }
        if (offers is not null)
        {
            alternatives.AddRange(offers.Take(4).Select(o => new Alternative(
                new AdviceStep(o.Offer.Kind) { Stations = o.Offer.At, TakesMinutes = o.Offer.Minutes(set) }, o.Offer.Say(), null, o.Gain)));
        }
        return new StepAdvice(step)
        {
            Entries = [.. (memory.Sitting.Count > 0 ? memory.Sitting : memory.LastMow is { } mow ? [mow] : []).TakeLast(12).Select(e => e.Id)],
            Rules = rules,
            Alternatives = alternatives,
            AsItStands = ranking is null ? null : ExpectedOutcome.Of(SteelAction.Leave, ranking),
            WouldChange = ranking is null ? [] : ranking.Changes(track, new CheckOffer("contact", Ends), step),
        };
    }

    private AdviceStep Plain(SteelAction a) => new(a.Do == "leave" ? "mow" : a.Do)
    {
        Left = a.Left == 0 && a.Right == 0 ? null : a.Left,
        Right = a.Left == 0 && a.Right == 0 ? null : a.Right,
        LapMinutes = a.LapMinutes > 0 ? a.LapMinutes : null,
        TakesMinutes = a.Minutes(set),
    };
}
