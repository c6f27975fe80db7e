using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>A look at the turf as an ordered reading of its stress.</summary>
internal static class StressLook
{
    private static readonly double[] Cuts = [0.5, 1.5, 2.5];
    private static readonly Term[] Stress = [Term.State(0, CanopyLayout.Stress, 1)];

    /// <summary>Readings of stress in a look; empty where it says nothing of it.</summary>
    public static IEnumerable<LinearReading> Of(Entry e)
    {
        int? level = e[LookEntry.Colour] switch
        {
            "green" => 0,
            "pale" or "yellow" or "patches" => 1,
            "purple" or "blue-grey" => 2,
            "straw" => 3,
            _ => null,
        };
        if (level is { } l)
            yield return new(Stress, l == 0 ? double.NegativeInfinity : Cuts[l - 1], l == Cuts.Length ? double.PositiveInfinity : Cuts[l], AreaDefaults.LookSd);
        // Footprints stay where leaves have lost their spring: at least a slight stress. That they do not says little.
        if (e[LookEntry.Footprints] == true) yield return new(Stress, 1, double.PositiveInfinity, AreaDefaults.LookSd);
    }
}
