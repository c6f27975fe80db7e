namespace Closemown.Steel;

/// <summary>One way to read the record: how much each person's readings scatter, and which spreads a rival explanation changes.</summary>
/// <param name="SpreadByPerson">Factor of each person's scatter.</param>
/// <param name="Rival">The rival explanation; null for none.</param>
/// <param name="Weight">Its probability.</param>
/// <param name="Name">What tells it from others, for starting again from an earlier solution.</param>
internal sealed record Reading(double[] SpreadByPerson, Rival? Rival, double Weight, string Name)
{
    private const double Least = 0.1;
    private const int Most = 4;

    /// <summary>Those worth solving, with weights that sum to one.</summary>
    public static List<Reading> Trimmed(List<Reading> all)
    {
        var most = all.Max(r => r.Weight);
        var kept = all.Where(r => r.Weight >= Math.Min(Least, most)).OrderByDescending(r => r.Weight).Take(Most).ToList();
        var sum = kept.Sum(r => r.Weight);
        return [.. kept.Select(r => r with { Weight = r.Weight / sum })];
    }
}
