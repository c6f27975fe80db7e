using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Chooses the one next step of a unit.</summary>
/// <remarks>
/// The rules of the trade come first (<see cref="TradeRules"/>). What they leave is ranked by expected loss, with the spread of the belief, and a check is
/// taken first where it is worth its minutes.
/// </remarks>
public sealed class NextStep
{
    private const double WorthDoing = 0.25;              // minutes of expected gain under which nothing is changed
    private readonly BenchCase c;
    private readonly SteelBelief belief;
    private readonly UnitTrack track;
    private readonly BenchMemory memory;
    private readonly AdviceSettings set;
    private readonly SittingNow sitting;

    private NextStep(BenchCase bench)
    {
        c = bench;
        (belief, track, memory, set, sitting) = (c.Belief, c.Track, c.Memory, c.Settings, c.Sitting);
    }

    /// <summary>The next step from a belief alone, without the plan that an earlier step may have begun.</summary>
    public static StepAdvice Choose(SteelBelief belief, AdviceSettings settings, NextQuestion question, IReadOnlyList<AdviceStep>? declined = null)
    {
        ArgumentNullException.ThrowIfNull(belief);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(question);
        return new NextStep(new BenchCase(belief, settings, question, declined ?? [])).Choose();
    }

    private StepAdvice Choose()
    {
        foreach (var rule in TradeRules.All)
        {
            if (rule.Step(c) is { } step) return Advise(step, null, [rule.Rule]) with { Entries = rule.Because(c) is { } e ? [e.Id] : [] };
        }
        var narrowed = TradeRules.Narrow(c);
        var actions = Candidates.Actions(belief, sitting, c.Declined, set.Without);
        if (narrowed is not null)
        {
            List<SteelAction> left = [.. actions.Where(narrowed.Actions)];
            if (left.Count == 0) narrowed = null;
            else actions = left;
        }
        var ranking = new Ranking(belief, set, actions, c.Grit, sitting.Laps, opens: !c.Question.AtBench);
        var offers = narrowed is { Checks: false } ? []
            : ranking.Checks(CheckOffer.All(track, sitting, set.Without).Where(o => !c.Declined.Any(d => d.Do == o.Kind && d.Stations.SequenceEqual(o.At))));
        var open = c.AtBench ? 0 : set.OpenSittingMinutes * set.PriceOfMinute;
        var best = ranking.Best;
        var check = offers.Count > 0 ? offers[0] : null;
        var leave = ranking.Actions.FirstOrDefault(r => r.Action == SteelAction.Leave)?.Loss ?? double.PositiveInfinity;
        var bench = best.Loss - (check is { Net: > WorthDoing } ? check.Net : 0) + open;
        List<Rule> rules = narrowed is null ? [] : [narrowed.Rule];
        if (leave <= bench + WorthDoing) return Mow(ranking, offers, leave, rules);
        if (!Candidates.InVain(belief) && (check is { Net: > WorthDoing } || (!sitting.Checked && check is not null))) return AskCheck(check, ranking, offers, forced: check.Net <= WorthDoing);
        return Act(best, ranking, offers, rules);
    }

    private StepAdvice FeelFirst(Ranking ranking, List<RankedCheck> offers) =>
        Advise(Ask("contact", Unfelt() is { Length: > 0 } unfelt ? unfelt : BenchCase.Ends, [memory.HeightSet is null ? "Something was changed since both ends were last felt."
            : $"The height was set or read since the {{gap}} was last checked: a gauge hooked on the {{bedknife}} or the nuts can move it.", .. Reasons.Of(belief)]), ranking, [memory.HeightSet is null ? Rules.Feel : HeightRules.Nip], offers);

    private int[] Unfelt() => [.. BenchCase.Ends.Where(s => sitting.Done("contact", s) == 0)];

    private StepAdvice AskCheck(RankedCheck check, Ranking ranking, List<RankedCheck> offers, bool forced)
    {
        var o = check.Offer;
        var why = new List<string>();
        if (forced) why.Add("Nothing was checked in this sitting yet.");
        why.AddRange(Reasons.Of(belief));
        if (!forced) why.Add("What it shows decides what is done next.");
        var step = Ask(o.Kind, o.At, why);
        if (o.With is not null) step = step with { Then = [Ask(o.With, o.WithAt!, []) with { Cautions = [] }] };
        return Advise(step, ranking, forced ? [Rules.CheckFirst, Rules.Worth] : [Rules.Worth], offers);
    }

    private StepAdvice Mow(Ranking ranking, List<RankedCheck> offers, double leave, List<Rule> rules)
    {
        if (memory.FeelWanted) return FeelFirst(ranking, offers);
        if (HollowMiddle.BeforeMowing(c) is { } look) return Advise(look, null, [Rules.Hollow]);
        if (!set.Without.HasFlag(Ablation.StripLast) && c.Signs.Changed && c.OwnsStrip && !c.Signs.StripFed && !c.WasDeclined("paper-cut"))
            return Advise(Ask("paper-cut", [.. BenchCase.All.Where(s => !c.Signs.Fed(s))], ["It was turned or lapped since the strip was last fed in everywhere: the strip comes last.", .. Reasons.Of(belief)]), ranking, [Rules.StripLast], offers);
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
            ExpectStep = expect,
            BenchInMowings = mowings,
            BenchInDays = days,
            Why = [.. rules.Select(r => r.Text), .. Reasons.Of(belief)],
            Cautions = Cautions.For("mow", memory, sitting),
        };
        return Advise(step, ranking, [.. rules, Rules.Loss], offers) with { ExpectedLoss = leave };
    }

    private StepAdvice Act(RankedAction best, Ranking ranking, List<RankedCheck> offers, List<Rule> narrowed)
    {
        var a = best.Action;
        var plan = new PlanSteps(belief, set, c.Grit, sitting).Of(a, ExpectedOutcome.Of(a, ranking));
        List<Rule> rules = [.. narrowed, Rules.Loss];
        if (a.Left != 0 || a.Right != 0) rules.Add(Rules.TwoSteps);
        if (memory.Touched(0) || memory.Touched(1) || memory.Touched(2)) rules.Add(Rules.Touched);
        if (Math.Abs(a.Left - a.Right) > 1 || !Candidates.MayDiffer(belief)) rules.Add(Rules.Cone);
        if (a.LapMinutes > 0) rules.Add(Rules.LapEdge);
        if (a.Do is "stone" or "grind" or "repair") rules.Add(Rules.LapInVain);
        var why = Reasons.Of(belief);
        if (narrowed.Count > 0) why.Insert(0, narrowed[0].Text);
        var first = plan[0] with { Why = why, Then = [.. plan.Skip(1)], ExpectStep = ExpectedOutcome.Of(plan.Count > 1 ? PlanSteps.Alone(plan[0], a) : a, ranking) };
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
        return new StepAdvice(step with { Asks = ClickQuestion.Of(track, step) })
        {
            Entries = [.. (memory.Sitting.Count > 0 ? memory.Sitting : memory.LastMow is { } mow ? [mow] : []).TakeLast(12).Select(e => e.Id)],
            Figures = [.. Reasons.Figures(belief)],
            Rules = rules,
            Alternatives = alternatives,
            AsItStands = ranking is null ? null : ExpectedOutcome.Of(SteelAction.Leave, ranking),
            WouldChange = ranking is null ? [] : ranking.Changes(track, new CheckOffer("contact", BenchCase.Ends), step),
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
