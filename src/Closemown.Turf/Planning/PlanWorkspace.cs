namespace Closemown.Turf;

/// <summary>Arrays of a planner, to use again from plan to plan. Not for two plans at once.</summary>
public sealed class PlanWorkspace
{
    internal double[][] After { get; private set; } = [];

    internal double[] Clear { get; private set; } = [];

    internal double[] Wilting { get; private set; } = [];

    internal double[] Kept { get; private set; } = [];

    internal void Fit(PlanGrid grid, int days)
    {
        var size = grid.Size;
        if (Clear.Length < size) (Clear, Wilting, Kept) = (new double[size], new double[size], new double[size]);
        if (After.Length < days || (After.Length > 0 && After[0].Length < size))
        {
            var rows = Math.Max(days, After.Length);
            var length = After.Length > 0 ? Math.Max(size, After[0].Length) : size;
            After = Make(rows, length);
        }
    }

    private static double[][] Make(int rows, int length)
    {
        var made = new double[rows][];
        for (var i = 0; i < rows; i++) made[i] = new double[length];
        return made;
    }
}
