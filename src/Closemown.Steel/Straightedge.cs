using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>A straightedge laid along the bedknife: the hollow of the knife in the middle, as a reading of the bow.</summary>
/// <remarks>It sees the knife alone, and the bow is of knife and reel together, so it scatters by what the reel may be worn in the middle. The scatter is an assumption.</remarks>
internal static class Straightedge
{
    private const double HalfStepUm = 5;
    private const double ScatterUm = 12;

    /// <summary>Whether an entry is such a reading, with a figure for the middle.</summary>
    public static bool Is(Entry e) => e.Is(MeasureEntry.Kind) && e[MeasureEntry.What] == "straightedge" && e[MeasureEntry.Centre] is not null;

    public static CheckRead Read(Entry e)
    {
        var um = 1000 * e[MeasureEntry.Centre]!.Value;
        return new(new Check("straightedge", 1, [Term.State(0, Layout.Bow, 1)], [um - HalfStepUm, um + HalfStepUm], Words, ScatterUm), -1, um - HalfStepUm, um + HalfStepUm);
    }

    private static readonly string[] Words = ["less", "so much", "more"];
}
