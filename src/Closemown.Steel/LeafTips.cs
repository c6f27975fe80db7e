using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>The tips of the leaves a day or two after mowing, as a reading of the pair that cut them: the loop from the turf back to the bench.</summary>
/// <remarks>
/// They tell of the whole width at once, so of the mean of the three stations, and far less sharply than a check: wet grass, seed heads and drought leave the same ragged or white tips.
/// Clean is under the clean limit, ragged or white above it, as for a swath. Common practice, no source; the scatter is an assumption.
/// </remarks>
internal static class LeafTips
{
    /// <summary>For so many hours after a mowing tips are laid to it.</summary>
    public const double Hours = 72;

    /// <summary>Scatter, µm; more where wet or wilting turf mimics a blunt edge.</summary>
    public const double ScatterUm = 22, MimicUm = 15;

    private const double RaggedAboveCleanUm = 5;
    private static readonly string[] Words = ["clean", "ragged"];

    /// <summary>Whether an entry is a look at tips.</summary>
    public static bool Is(Entry e) => e.Is(LookEntry.Kind) && e[LookEntry.Tips] is not null;

    /// <summary>The reading, where this unit mowed that area last and nothing was done to it since.</summary>
    /// <param name="e">A look at tips.</param>
    /// <param name="mow">The unit's last mowing, or null.</param>
    /// <param name="changed">Whether the nip was changed since.</param>
    /// <param name="unit">The unit.</param>
    public static IEnumerable<CheckRead> Read(Entry e, Entry? mow, bool changed, UnitDescription unit)
    {
        if (mow is null || changed || (e.At - mow.At).TotalHours is < 0 or > Hours || (mow.Area is { } a && e.Area is { } b && a != b)) yield break;
        var mimics = e[LookEntry.Wet] == true || e[LookEntry.Footprints] == true || e[LookEntry.Colour] == "blue-grey";
        var terms = new List<Term> { Term.Constant(Layout.CleanOffset, -1) };
        for (var s = 0; s < 3; s++)
        {
            foreach (var t in Stations3.ClearanceTerms(unit, s)) terms.Add(t.IsConstant ? Term.Constant(t.Index, t.Weight / 3) : Term.State(0, t.Index, t.Weight / 3));
            terms.Add(Term.State(0, Layout.Edge + s, 1.0 / 3));
        }
        var sd = mimics ? Math.Sqrt((ScatterUm * ScatterUm) + (MimicUm * MimicUm)) : ScatterUm;
        yield return new(new Check("tips", 1, [.. terms], [unit.CleanUm.Mean + RaggedAboveCleanUm], Words, sd), e[LookEntry.Tips] == "clean" ? 0 : 1, 0, 0);
    }
}
