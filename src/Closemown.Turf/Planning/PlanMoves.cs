namespace Closemown.Turf;

/// <summary>A mowing that the rules allow: the cut, and what the turf is used to and bound by after it.</summary>
internal readonly record struct PlanMove(double CutMm, int Level, int Phase);

/// <summary>The mowings that the rules allow on a morning, whatever they cost.</summary>
internal sealed class PlanMoves(PlanProblem p, PlanSolver solved)
{
    private const double Same = 0.01, HandMm = 0.05, Roundoff = 1e-9;
    private readonly PlanGrid grid = solved.Grid;

    /// <summary>Whether the last ones filled are made whatever they cost: raised turf comes back, or a lower height would be too low on the next day that someone is there.</summary>
    public bool AnyPrice { get; private set; }

    /// <summary>Fills what may be mown to.</summary>
    /// <param name="t">The day.</param>
    /// <param name="canopyMm">The middle of what it stands at, mm.</param>
    /// <param name="level">What the turf is used to.</param>
    /// <param name="phase">What the last mowings bind, that morning.</param>
    /// <param name="setMm">What the machine would leave as it is set, mm.</param>
    /// <param name="wilting">Whether it wilts.</param>
    /// <param name="stress">Stress.</param>
    /// <param name="into">Cleared first.</param>
    public void Fill(int t, double canopyMm, int level, int phase, double setMm, bool wilting, double stress, List<PlanMove> into)
    {
        into.Clear();
        AnyPrice = false;
        if (phase == PlanPhase.JustRaised) return;
        var change = solved.Calendar.CanChange[t];
        var lowest = p.OverThirdOn.Contains(p.From.AddDays(t)) ? 0 : RaisedCuts.LowestMm(canopyMm);
        var used = grid.LevelsMm[level];
        void Add(double cutMm, int to, int then)
        {
            var takes = cutMm >= lowest - Roundoff && cutMm <= (1 - PlanLimits.LeastShare) * canopyMm;
            if (takes && (change || Math.Abs(cutMm - setMm) <= Same)) into.Add(new(cutMm, to, then));
        }
        if (grid.Allowed[level]) Add(used, level, PlanPhase.AtUsed(phase));
        // Up for a third only, and no further: the way back is not to be drawn out by prices.
        var spared = wilting || stress >= PlanLimits.StressedFrom || solved.Prices.Spares(canopyMm, used, t);
        if (setMm > used + Same && (spared || !change)) Add(setMm, level, PlanPhase.JustRaised);
        if (!change) return;
        AnyPrice = RaisedCuts.ComesBack(canopyMm, used, phase, spared);
        var most = spared ? RaisedCuts.Most : 1;
        for (var j = 0; j < most; j++)
        {
            // What a hand can set, and no more than a third after rounding.
            var cut = Math.Ceiling((RaisedCuts.Mm(canopyMm, used, j) / HandMm) - Roundoff) * HandMm;
            if (cut > used + Same) Add(cut, level, PlanPhase.JustRaised);
        }
        if (level < grid.Wish) Add(grid.LevelsMm[grid.Wish], grid.Wish, PlanPhase.MayLower);
        if (phase != PlanPhase.MayLower || wilting || stress >= PlanLimits.StressedFrom || !solved.Calendar.MayLower(t, used)) return;
        var others = into.Count;
        for (var to = level - 1; to >= 0 && grid.StepDown(level, to); to--)
        {
            if (!grid.Allowed[to] || solved.Prices.Spares(canopyMm, grid.LevelsMm[to], t)) continue;
            var count = into.Count;
            Add(grid.LevelsMm[to], to, 0);
            AnyPrice |= into.Count > count && LoweringDay.IsLast(canopyMm, grid.LevelsMm[to], solved.Calendar.ToNextMm(t));
        }
        // A wished height is come to as soon as the rules allow: a mowing that may lower does.
        if (into.Count > others) into.RemoveRange(0, others);
    }

    /// <summary>Whether the machine has to be set anew for a cut.</summary>
    public static bool Sets(double cutMm, double setMm) => Math.Abs(cutMm - setMm) > Same;
}
