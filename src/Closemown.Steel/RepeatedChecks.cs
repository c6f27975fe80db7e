namespace Closemown.Steel;

/// <summary>Which checks are repeats: of one kind, place, person and blade, in one sitting, with nothing changed between.</summary>
/// <remarks>The same hand that feels the same blade a minute later makes much the same error again (common practice, no source).</remarks>
/// <param name="learned">The share of its variance that a repeat has in common with the first.</param>
internal sealed class RepeatedChecks(RepeatShare learned)
{
    private const int MostBlades = 100, MostPeople = 50;
    private readonly Dictionary<(string Kind, int Station, int Kin), List<(double Low, double High)>> made = [];
    private readonly List<string> blades = [];
    private double share = learned.Mean;
    private int spell;

    /// <summary>Something was changed, or a new sitting begins: errors are fresh.</summary>
    public void Over()
    {
        made.Clear();
        spell++;
        share = learned.Mean;                            // the same for all readings of a spell
    }

    /// <summary>The readings, each with those like it that came before.</summary>
    public List<CheckRead> Of(List<CheckRead> reads, int person, string? blade)
    {
        if (reads.Count == 0) return reads;
        if (blade is not null && !blades.Contains(blade)) blades.Add(blade);
        var kin = (((spell * MostBlades) + ((blade is null ? 0 : blades.IndexOf(blade) + 1) % MostBlades)) * MostPeople) + (person % MostPeople);
        var told = new List<CheckRead>(reads.Count);
        foreach (var read in reads)
        {
            var key = (read.Check.Kind, read.Check.Station, kin);
            if (!made.TryGetValue(key, out var before)) made[key] = before = [];
            told.Add(read with { Shared = share, Kin = kin, Earlier = [.. before] });
            before.Add(read.Limits());
        }
        return told;
    }
}
