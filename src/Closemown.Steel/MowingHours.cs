using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>How long a mowing ran.</summary>
public static class MowingHours
{
    private const double WalkKmPerHour = 4;             // a walking pace; common practice, no source
    private const double UsefulWidth = 0.9;             // the rest overlaps; common practice, no source

    /// <summary>Hours of a <c>mow</c> entry: as told, or from the area, the passes and the width of cut.</summary>
    public static double Of(Entry mow, UnitDescription unit)
    {
        ArgumentNullException.ThrowIfNull(mow);
        ArgumentNullException.ThrowIfNull(unit);
        return mow[MowEntry.Hours] ?? (mow[MowEntry.AreaM2]!.Value * (mow[MowEntry.Passes] ?? 1) / (unit.WidthMm / 1000 * UsefulWidth * WalkKmPerHour * 1000));
    }
}
