using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What each action does to the steel, given the belief just before it.</summary>
internal static class Steps
{
    private const double SandSd = 5.0 / 7;               // × 8 ± 5: the part above plain turf is 7 ± 5
    private static readonly int[] Edges = [Layout.Edge, Layout.Edge + 1, Layout.Edge + 2];

    /// <summary>Mown: both sides open, the edges dull; where the pair presses it wears itself open.</summary>
    /// <param name="hours">Hours mown.</param>
    /// <param name="sand">How many times faster the edges dull (topdressing), 1 for clean turf.</param>
    /// <param name="belief">The belief just before.</param>
    public static Step Mow(double hours, double sand, GaussianState belief)
    {
        var step = new Step();
        for (var side = 0; side < 2; side++)
        {
            var (c, v) = (belief.Mean[side], belief.Covariance[(side * Size(belief)) + side]);
            var depth = Pressing.ExpectedUm(c, v);
            var opens = Pressing.Opens(depth, hours);
            step.Constant(side, Layout.OpeningPerOuting + side, 1)
                .Constant(side, Layout.OpeningPerHour + side, hours)
                .Add(side, opens)
                .Noise(side, SteelDefaults.MowNoiseUm * Math.Sqrt(hours))
                .Noise(side, SteelDefaults.FloorNoiseUm)
                .Noise(side, opens);
        }
        for (var s = 0; s < 3; s++)
        {
            var depth = Pressing.ExpectedUm(Centre(belief, s), 100);
            step.Constant(Edges[s], Layout.Dulling, hours * sand)
                .Add(Edges[s], Pressing.Blunts(depth, hours))
                .Noise(Edges[s], SteelDefaults.EdgeNoiseUm * Math.Sqrt(hours))
                .Noise(Edges[s], (sand - 1) * SandSd * SteelDefaults.DullingUmPerHour.Mean * hours);
        }
        return step;

        static double Centre(GaussianState g, int s) => s == 0 ? g.Mean[0] : s == 2 ? g.Mean[1] : ((g.Mean[0] + g.Mean[1]) / 2) + g.Mean[Layout.Bow];
    }

    /// <summary>Adjusters turned by n clicks a side, + in.</summary>
    /// <param name="left">Steps of the left adjuster.</param>
    /// <param name="right">Steps of the right adjuster.</param>
    /// <param name="before">Direction of the last move of each side: +1 in, −1 out, 0 not known.</param>
    public static Step Clicks(double left, double right, (int Left, int Right) before)
    {
        var step = new Step();
        Side(0, left, before.Left, +1);
        Side(1, right, before.Right, -1);
        return step;

        void Side(int side, double n, int direction, double sign)
        {
            if (n == 0) return;
            var now = Math.Sign(n);
            step.Constant(side, Layout.Click, -n).Constant(side, Layout.ClickSide, -n * sign)
                .Noise(side, SteelDefaults.ClickNoiseUm * Math.Sqrt(Math.Abs(n))).Noise(side, SteelDefaults.FloorNoiseUm);
            if (direction == now) return;
            // Part of a move against the last direction only takes up the slack: coming in it closes less, going out it opens less.
            var slack = direction == 0 ? 0.5 : 1.0;
            step.Constant(side, Layout.LostMotion + side, now * slack)
                .Noise(side, direction == 0 ? SteelDefaults.ReversalNoiseUm * 1.3 : SteelDefaults.ReversalNoiseUm);
        }
    }

    /// <summary>Lapped: edges go towards fresh and both sides open, as far as the compound bites at this gap.</summary>
    public static Step Lap(double minutes, double? grit, UnitDescription unit, GaussianState belief)
    {
        var step = new Step();
        var size = Size(belief);
        for (var side = 0; side < 2; side++)
        {
            var bite = LapBite.Expected(belief.Mean[side], belief.Covariance[(side * size) + side]);
            var opens = minutes * bite;
            step.Constant(side, Layout.LapOpening, opens);
            if (Layout.GritClass(grit) is var c and >= 0) step.Constant(side, c, opens);
            step.Noise(side, minutes * SteelDefaults.LapUmPerMinute.Mean * ((0.2 * bite) + (0.6 * bite * (1 - bite))))
                .Noise(side, SteelDefaults.FloorNoiseUm);
        }
        // Steel goes only where the pair is close: a centre that stands off is not lapped while the ends are, and the bow shrinks.
        var (centre, spread) = Stations3.Clearance(belief, unit, 1);
        var uneven = LapBite.Expected(centre, spread) - ((LapBite.Expected(belief.Mean[0], belief.Covariance[0]) + LapBite.Expected(belief.Mean[1], belief.Covariance[size + 1])) / 2);
        step.Constant(Layout.Bow, Layout.LapOpening, minutes * uneven).Noise(Layout.Bow, 0.4 * minutes * SteelDefaults.LapUmPerMinute.Mean * Math.Abs(uneven));
        for (var s = 0; s < 3; s++)
        {
            var (mean, variance) = Stations3.Clearance(belief, unit, s);
            var leaves = LapBite.Leaves(minutes, LapBite.Expected(mean, variance), unit.Relief);
            var fresh = SteelDefaults.EdgeLappedUm;
            var above = Math.Max(0, belief.Mean[Edges[s]] - fresh.Mean);
            step.Keep(Edges[s], leaves).Add(Edges[s], (1 - leaves) * fresh.Mean)
                .Noise(Edges[s], (1 - leaves) * fresh.Sd)
                .Noise(Edges[s], 0.35 * leaves * -Math.Log(Math.Max(leaves, 1e-6)) * above);
        }
        return step;
    }

    /// <summary>The height set or read: the gauge or the nuts may have moved either end.</summary>
    /// <param name="sdUm">By about so much, µm.</param>
    public static Step HeightSet(double sdUm) => new Step().Noise(0, sdUm).Noise(1, sdUm);

    /// <summary>Both ends brought to the same slight drag: what was before is forgotten; the drag itself is read as a check.</summary>
    public static Step[] SquareUp() => NewEnds(new Step(), SteelDefaults.ClearanceUm);

    public static Step Stone(string what)
    {
        var step = new Step();
        foreach (var e in Edges)
        {
            if (what == "face") step.Keep(e, 0.5).Add(e, 0.5 * SteelDefaults.EdgeLappedUm.Mean).Noise(e, 3);
            if (what == "burr") step.Noise(e, 4);
        }
        for (var side = 0; side < 2; side++) step.Noise(side, what == "ends" ? 10 : 4);
        return step;
    }

    /// <summary>The screws of the bedknife slackened and tightened from the middle outwards: a knife that was pulled lies flat again, or not; the ends may move a little.</summary>
    public static Step KnifeScrews() => new Step().Keep(Layout.Bow, 0.6).Noise(Layout.Bow, 12).Noise(0, 8).Noise(1, 8);

    /// <summary>Ground: fresh edges, and a clearance that has to be found again.</summary>
    public static Step[] Grind(string what)
    {
        var step = new Step();
        var both = what == "both";
        foreach (var e in Edges)
        {
            if (both) step.Reset(e, SteelDefaults.EdgeGroundUm);
            else step.Keep(e, 0.5).Add(e, 0.5 * SteelDefaults.EdgeGroundUm.Mean).Noise(e, 3);
        }
        if (what != "reel") step.Reset(Layout.Bow, SteelDefaults.BowGroundUm);
        return NewEnds(step, SteelDefaults.ClearanceUm);
    }

    /// <summary>Taken apart and put together: the clearance is new, the bow where the knife was touched.</summary>
    public static Step[] Rebuild(bool newKnife, bool groundOnBar)
    {
        var step = new Step();
        if (groundOnBar) step.Reset(Layout.Bow, SteelDefaults.BowGroundUm);
        else if (newKnife) step.Reset(Layout.Bow, SteelDefaults.BowNewKnifeUm);
        else step.Noise(Layout.Bow, SteelDefaults.BowGroundUm.Sd);
        foreach (var e in Edges)
        {
            if (newKnife) step.Keep(e, 0.5).Add(e, 0.5 * SteelDefaults.EdgeLappedUm.Mean).Noise(e, 4);
        }
        return NewEnds(step, SteelDefaults.ClearanceAfterRebuildUm);
    }

    /// <summary>Hit something: the station stands off by 40 ± 30 (here 30 ± 35, as a knife may also be knocked in) and is blunted by 12, the ends move by 10.</summary>
    /// <param name="station">0, 1, 2, or −1 where it was not seen.</param>
    public static Step Strike(int station)
    {
        var step = new Step();
        const double Off = 30, OffSd = 35, Ends = 10, Blunts = 12, BluntsSd = 8;
        for (var side = 0; side < 2; side++) step.Noise(side, Ends);
        for (var s = 0; s < 3; s++)
        {
            if (station >= 0 && s != station) continue;
            var share = station >= 0 ? 1.0 : 1.0 / 3;
            var state = s == 1 ? Layout.Bow : s / 2;
            step.Add(Edges[s], Blunts * share).Noise(Edges[s], BluntsSd * Math.Sqrt(share))
                .Add(state, Off * share).Noise(state, OffSd * Math.Sqrt(share));
        }
        return step;
    }

    /// <summary>Something settled where it was put together: ends and bow may be elsewhere.</summary>
    public static Step Settled() => new Step().Noise(0, 20).Noise(1, 20).Noise(Layout.Bow, 10);

    /// <summary>An adjuster moved less, or more, than was turned: by about a click.</summary>
    public static Step Slipped(double left, double right)
    {
        var step = new Step();
        if (left > 0) step.Noise(0, SteelDefaults.ClickUm.Mean);
        if (right > 0) step.Noise(1, SteelDefaults.ClickUm.Mean);
        return step;
    }

    /// <summary>A new strip: its error is not the old one's.</summary>
    public static Step NewStrip(PaperStrip strip) => new Step().Reset(Layout.Strip, new Prior(0, strip.SdUm));

    /// <summary>Forgets both ends and gives them a new clearance that they mostly share: first what is common, then what each end has of its own.</summary>
    private static Step[] NewEnds(Step first, Prior p)
    {
        var common = p.Sd * Math.Sqrt(SteelDefaults.EndsTogether);
        var own = p.Sd * Math.Sqrt(1 - SteelDefaults.EndsTogether);
        first.Reset(Layout.ClearanceLeft, new Prior(p.Mean, common)).Reset(Layout.ClearanceRight, new Prior(p.Mean, common));
        var second = new Step().Noise(Layout.ClearanceLeft, own).From(Layout.ClearanceRight, Layout.ClearanceLeft).Noise(Layout.ClearanceRight, own);
        return [first, second];
    }

    private static int Size(GaussianState g) => g.StateSize + g.ConstantCount;
}
