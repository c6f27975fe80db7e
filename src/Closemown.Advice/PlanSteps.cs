using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>A plan as steps in order: at most two clicks a side at a go, rounds of lapping, and the ends felt after every change.</summary>
internal sealed class PlanSteps(SteelBelief belief, AdviceSettings set, double? grit, SittingNow sitting)
{
    private static readonly int[] Ends = [0, 2];
    private readonly UnitTrack track = belief.Track;
    private readonly BenchMemory memory = belief.Track.Memory;

    /// <summary>The steps; what the plan leads to is said with the first.</summary>
    public List<AdviceStep> Of(SteelAction a, ExpectedNip expect)
    {
        var steps = new List<AdviceStep>();
        switch (a.Do)
        {
            case "square-up":
                steps.Add(new AdviceStep("square-up") { Say = "Back both adjusters off, then bring both ends in to the same slight drag on the same strip.", TakesMinutes = set.SquareUpMinutes });
                break;
            case "stone":
                steps.Add(new AdviceStep("stone") { What = "face", Say = "File the front of the {bedknife} lightly until it is bright along its whole length.", TakesMinutes = set.StoneMinutes });
                break;
            case "grind":
                return [Cautioned(new AdviceStep("grind") { What = "both", Say = "Grind {reel} and {bedknife}: lapping no longer helps.", TakesMinutes = set.OwnGrindMinutes, Expect = expect })];
            case "repair":
                return [Cautioned(new AdviceStep("repair") { Say = "Have {reel} and {bedknife} ground: lapping no longer helps, and there is no grinder here.", TakesMinutes = set.SentGrindMinutes, Expect = expect })];
        }
        Turn(steps, a);
        Lap(steps, a.LapMinutes);
        steps.Add(Feel());
        if (a.Do != "close-in" && !set.Without.HasFlag(Ablation.StripLast) && track.Unit.Owns.Contains("strip")) steps.Add(Strip());
        // A click in on an end that touches is lawful only with its lap: both are said in one sentence.
        if (steps[0].Do == "clicks" && a.ComesIn && steps.Count > 1 && steps[1].Do == "lap")
            steps[0] = steps[0] with { Say = $"{steps[0].Say.TrimEnd('.')}, then {StepSpeech.LapLow(steps[1].LapMinutes!.Value, grit)}" };
        // Steps on the way lead nowhere by themselves: the end of the plan is said with its first step.
        steps[0] = Cautioned(steps[0]) with { Expect = expect };
        for (var i = 1; i < steps.Count; i++)
        {
            if (steps[i].Do == "lap") steps[i] = Cautioned(steps[i]);
        }
        return steps;
    }

    /// <summary>What the first step of a plan does by itself, without those that follow.</summary>
    public static SteelAction Alone(AdviceStep first, SteelAction plan) => first.Do switch
    {
        "clicks" => new("clicks", first.Left ?? 0, first.Right ?? 0),
        "lap" => new("lap", LapMinutes: first.LapMinutes ?? 0),
        _ => plan with { Left = 0, Right = 0, LapMinutes = 0 },
    };

    private void Turn(List<AdviceStep> steps, SteelAction a)
    {
        var (l, r) = a.Do == "close-in" ? FirstGo() : (a.Left, a.Right);
        while (l != 0 || r != 0)
        {
            var (nl, nr) = (Go(l), Go(r));
            if (steps.Count > 0 && steps[^1].Do == "clicks") steps.Add(Feel());
            var minutes = set.ClicksMinutes + ((Math.Abs(nl) + Math.Abs(nr)) * set.ClickMinutes);
            var say = StepSpeech.Clicks(nl, nr, track.Unit) + (a.Do == "close-in" ? " Then feel, and so on until an end touches." : "");
            steps.Add(new AdviceStep("clicks") { Left = nl, Right = nr, Say = say, TakesMinutes = minutes });
            (l, r) = (l - nl, r - nr);
        }
    }

    private void Lap(List<AdviceStep> steps, double all)
    {
        for (var left = all; left > 0; left -= AdviceSettings.LapRoundMinutes)
        {
            var minutes = Math.Min(left, AdviceSettings.LapRoundMinutes);
            var again = sitting.Laps > 0 || left < all;
            if (left < all)
            {
                steps.Add(Feel());
                if (track.Unit.Owns.Contains("strip")) steps.Add(Strip());
            }
            steps.Add(new AdviceStep("lap") { LapMinutes = minutes, Grit = grit, Say = StepSpeech.Lap(minutes, grit), TakesMinutes = minutes + (again ? set.LapAgainMinutes : set.LapSetUpMinutes) });
        }
    }

    /// <summary>The first go of coming in until an end touches: two clicks where two will hardly touch, else one; none where it touched.</summary>
    private (int Left, int Right) FirstGo()
    {
        var left = memory.Touched(0) || memory.Touched(1) ? 0 : Most(0);
        var right = memory.Touched(2) || memory.Touched(1) ? 0 : Most(2);
        if (left > 0 && right > 0 && !Candidates.MayDiffer(belief)) left = right = Math.Min(left, right);
        return (left, right);

        int Most(int station)
        {
            var contact = Checks.Of("contact", station, track.Unit, track.Strip);
            var (mean, variance) = belief.Last.Predict([.. contact.Terms, Estimation.Term.Constant(Layout.Click, -AdviceSettings.MostClicks)]);
            return Estimate.Normal(mean, variance).Below(contact.CutPoints[^1]) < 0.35 ? AdviceSettings.MostClicks : 1;
        }
    }

    private AdviceStep Feel() => new("contact") { Stations = Ends, Say = StepSpeech.Check("contact", Ends), TakesMinutes = set.CheckMinutes("contact", 2) };

    private AdviceStep Strip() => new("paper-cut") { Stations = BenchCase.All, Say = StepSpeech.Check("paper-cut", BenchCase.All), TakesMinutes = set.CheckMinutes("paper-cut", 3) };

    private AdviceStep Cautioned(AdviceStep step) => step with { Cautions = Cautions.For(step.Do, memory, sitting) };

    private static int Go(int n) => Math.Clamp(n, -AdviceSettings.MostClicks, AdviceSettings.MostClicks);
}
