namespace Closemown.Quantities;

/// <summary>How many slips of the finger lie between two words.</summary>
public static class EditDistance
{
    /// <summary>Letters added, left out, changed, or two neighbours swapped; upper and lower case differ.</summary>
    public static int Of(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) cost[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) cost[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                cost[i, j] = Math.Min(change, 1 + Math.Min(cost[i - 1, j], cost[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
            }
        }
        return cost[a.Length, b.Length];
    }
}
