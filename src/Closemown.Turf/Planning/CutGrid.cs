namespace Closemown.Turf;

/// <summary>Cuts that a plan may set: a quarter of a millimetre apart from the wish, and the one set now.</summary>
internal sealed class CutGrid
{
    private const double StepMm = 0.25, AboveMm = 2.5, SameMm = 0.06, LeastMm = 1;

    public CutGrid(PlanProblem p)
    {
        var cuts = new SortedSet<double>();
        var low = Math.Min(p.WishMm, p.CutMm);
        var high = Math.Max(p.WishMm, p.CutMm) + AboveMm;
        for (var k = (int)Math.Ceiling((low - p.WishMm - SameMm) / StepMm); p.WishMm + (k * StepMm) <= high; k++)
        {
            if (p.WishMm + (k * StepMm) >= LeastMm) cuts.Add(p.WishMm + (k * StepMm));
        }
        if (!cuts.Any(c => Math.Abs(c - p.CutMm) < SameMm)) cuts.Add(p.CutMm);
        Mm = [.. cuts];
        Now = Nearest(p.CutMm);
        Wish = Nearest(p.WishMm);
    }

    /// <summary>The cuts, mm, rising.</summary>
    public double[] Mm { get; }

    /// <summary>The one set now, and the one wished.</summary>
    public int Now { get; }

    public int Wish { get; }

    public int Count => Mm.Length;

    /// <summary>Whether a move is a lowering that a rule allows in size.</summary>
    public bool StepAllowed(int from, int to) => Mm[from] - Mm[to] <= PlanRules.LowerMm + 1e-9;

    private int Nearest(double mm)
    {
        var best = 0;
        for (var i = 1; i < Mm.Length; i++)
        {
            if (Math.Abs(Mm[i] - mm) < Math.Abs(Mm[best] - mm)) best = i;
        }
        return best;
    }
}
