using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>What the box and the eye tell of the leaf a mowing took.</summary>
internal static class MowingLook
{
    private const double LittleShare = 0.6, MuchShare = 1.5, EyeShare = 0.5, LeastMm = 0.1;
    private const double BoxShare = 0.15, BoxMm = 0.12;

    /// <summary>"Came off little, usual, much": of what usually comes off.</summary>
    /// <param name="e">A look.</param>
    /// <param name="usualMm">What usually comes off, mm.</param>
    public static LinearReading? Eye(Entry e, double usualMm)
    {
        if (e[LookEntry.CameOff] is not { } word) return null;
        var usual = Math.Max(LeastMm, usualMm);
        Term[] taken = [Term.State(0, CanopyLayout.Before, 1), Term.State(0, CanopyLayout.Canopy, -1)];
        var (low, high) = word switch
        {
            "little" => (double.NegativeInfinity, LittleShare * usual),
            "usual" => (LittleShare * usual, MuchShare * usual),
            _ => (MuchShare * usual, double.PositiveInfinity),
        };
        return new(taken, low, high, EyeShare * usual);
    }

    /// <summary>The box: leaf taken off less what its volume stands for.</summary>
    /// <param name="litresM2">Clippings, L/m².</param>
    /// <param name="takenMm">What is believed to have come off, mm: the scale of its scatter.</param>
    public static LinearReading Box(double litresM2, double takenMm) => new(
        [Term.State(0, CanopyLayout.Before, 1), Term.State(0, CanopyLayout.Canopy, -1), Term.Constant(CanopyLayout.Clippings, -litresM2)],
        0, 0, BoxMm + (BoxShare * Math.Max(0, takenMm)));
}
