using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What may be done now, by the rules that no reckoning may overrule.</summary>
internal static class Candidates
{
    private const int MostOut = 6;
    private const int MostIn = 8;
    private const int MostApart = 3;
    private const double BluntUm = 6;

    /// <summary>The actions on offer.</summary>
    /// <param name="belief">What is known.</param>
    /// <param name="sitting">The sitting as it is now.</param>
    /// <param name="declined">Steps that the person declined since the last mowing: they are not offered again.</param>
    /// <param name="without">Parts left out.</param>
    public static List<SteelAction> Actions(SteelBelief belief, SittingNow sitting, IReadOnlyList<AdviceStep> declined, Ablation without = Ablation.None)
    {
        var m = belief.Track.Memory;
        var actions = new List<SteelAction>();
        if (!m.Heavy) actions.Add(SteelAction.Leave);          // a heavy touch is never left as it is
        var apart = MayDiffer(belief) ? MostApart : 1;
        var leftTouched = m.Touched(0) || m.Touched(1);
        var rightTouched = m.Touched(2) || m.Touched(1);
        for (var l = -MostOut; l <= MostIn; l++)
        {
            for (var r = l - apart; r <= l + apart; r++)
            {
                if ((l == 0 && r == 0) || r < -MostOut || r > MostIn) continue;
                if ((l > 0 && leftTouched) || (r > 0 && rightTouched)) continue;      // an end that touched gets no step in
                actions.Add(new("clicks", l, r));
            }
        }
        if (!leftTouched || !rightTouched) actions.Add(SteelAction.CloseIn);
        if (!without.HasFlag(Ablation.Laps) && MayLap(belief, sitting))
        {
            for (var l = -1; l <= AdviceSettings.MostClicks; l++)
            {
                for (var r = Math.Max(-1, l - 1); r <= Math.Min(AdviceSettings.MostClicks, l + 1); r++)
                {
                    actions.Add(new("lap", l, r, 1));
                    actions.Add(new("lap", l, r, AdviceSettings.LapRoundMinutes));
                    if (sitting.Laps + 2 <= AdviceSettings.LapRounds && m.LapsInVain + 2 <= AdviceSettings.LapRounds) actions.Add(new("lap", l, r, 2 * AdviceSettings.LapRoundMinutes));
                }
            }
        }
        if (m.Upset is not null || (!m.EndsCompared && belief.TiltClicks.Sd > 2)) AddSquareUp(belief, actions);
        var worn = new SteelAction(belief.Track.Unit.Owns.Contains("grinder") ? "grind" : "repair");
        if (InVain(belief))
        {
            // More lapping will not help, and clicks do not sharpen: the file, then the grinder.
            List<SteelAction> steel = sitting.Has("stone") ? [worn] : [new("stone"), worn];
            steel.RemoveAll(a => declined.Any(d => Declines(d, a)));
            if (steel.Count > 0) return steel;
        }
        else if (Enumerable.Range(0, 3).Max(s => belief.EdgeUm(s).P05) > 25)
        {
            actions.Add(worn);
        }
        actions.RemoveAll(a => declined.Any(d => Declines(d, a)));
        if (actions.Count == 0) actions.Add(SteelAction.Leave);
        return actions;
    }

    /// <summary>A declined repair or lap is declined in every form; declined clicks only as they were.</summary>
    private static bool Declines(AdviceStep d, SteelAction a) => d.Do switch
    {
        "clicks" => a.LapMinutes == 0 && a.Do is "clicks" or "close-in" && (a.Do == "close-in" || (a.Left == d.Left && a.Right == d.Right)),
        "lap" => a.LapMinutes > 0,
        "grind" or "repair" => a.Do is "grind" or "repair",
        _ => a.Do == d.Do,
    };

    /// <summary>Three rounds of lapping, the strip tried since, and it cuts no better; not where a bow holds the centre out of reach, which no file cures.</summary>
    public static bool InVain(SteelBelief belief)
    {
        var (m, (low, high)) = (belief.Track.Memory, belief.Track.Unit.BandUm);
        return m.LapsInVain >= AdviceSettings.LapRounds && m.StillNotCutting && Math.Abs(belief.BowUm.Mean) <= (high - low) / 2;
    }

    /// <summary>Whether the ends are known to differ by something that tells them apart: drag, contact, a feeler, or an opening learned per side.</summary>
    public static bool MayDiffer(SteelBelief belief)
    {
        if (belief.Track.Memory.EndsCompared) return true;
        var l = belief.OpeningUmPerHour(0);
        var r = belief.OpeningUmPerHour(1);
        return Math.Abs(l.Mean - r.Mean) > 2 * Math.Sqrt((l.Sd * l.Sd) + (r.Sd * r.Sd));
    }

    /// <summary>Never lap where a blade presses hard, where the edge is not the fault, or a fourth round in vain.</summary>
    private static bool MayLap(SteelBelief belief, SittingNow sitting)
    {
        var m = belief.Track.Memory;
        // Where the middle alone folds, one lap at most is spent before the knife is looked at.
        if (m.Signs.HollowSeen > 1 || (m.Signs.HollowSeen == 1 && sitting.Laps > 0)) return false;
        if (m.Heavy || sitting.Laps >= AdviceSettings.LapRounds || m.LapsInVain >= AdviceSettings.LapRounds) return false;
        for (var s = 0; s < 3; s++)
        {
            if (belief.ClearanceUm(s).Below(-12) > 0.10) return false;
        }
        return Enumerable.Range(0, 3).Any(s => belief.EdgeUm(s).Mean > BluntUm);
    }

    private static void AddSquareUp(SteelBelief belief, List<SteelAction> actions)
    {
        var (low, high) = belief.Track.Unit.BandUm;
        var click = Math.Max(2, belief.ClickUm(0).Mean);
        var n = (int)Math.Round((belief.Track.Strip.Um - ((low + high) / 2)) / click);
        for (var k = n - 1; k <= n + 1; k++)
        {
            if (k >= 0) actions.Add(new("square-up", k, k));
        }
    }
}
