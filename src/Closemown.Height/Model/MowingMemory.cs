using Closemown.Entries;

namespace Closemown.Height;

/// <summary>What was mown last on each area and by which unit, and whether the turf was wet or soft.</summary>
internal sealed class MowingMemory
{
    /// <summary>A standing height tells the cut for so many hours after mowing; later it has grown.</summary>
    public const double FreshHours = 12;

    private readonly List<string> areas = [];
    private readonly Dictionary<string, Mowing> last = [];
    private readonly Dictionary<string, bool> soft = [];
    private readonly Dictionary<string, DateTimeOffset> wet = [];

    /// <summary>A mowing by this unit.</summary>
    /// <param name="Area">The area.</param>
    /// <param name="At">When.</param>
    /// <param name="Wet">Whether it was wet.</param>
    /// <param name="Soft">Whether it was soft; null where nobody said.</param>
    internal sealed record Mowing(string Area, DateTimeOffset At, bool Wet, bool? Soft)
    {
        /// <summary>Whether the standing height is read for the first time since.</summary>
        public bool FirstReading { get; init; } = true;
    }

    private readonly Dictionary<string, (int Mowings, int Spots)> read = [];

    public string? LastArea { get; private set; }

    /// <summary>Mowings of an area after which its standing height was read, and spots read in all.</summary>
    public (int Mowings, int Spots) Read(string? area) => read.GetValueOrDefault(area ?? LastArea ?? "");

    public void Counts(Mowing mowing, int spots)
    {
        var (mowings, before) = read.GetValueOrDefault(mowing.Area);
        read[mowing.Area] = (mowings + (mowing.FirstReading ? 1 : 0), before + spots);
    }

    public bool? Soft(string? area) => soft.TryGetValue(area ?? "", out var s) ? s : null;

    /// <summary>Which constant holds an area's sink: areas take places in the order they are first mown; those beyond the last place share it.</summary>
    public int Slot(string? area)
    {
        var i = areas.IndexOf(area ?? "");
        return Math.Min(i < 0 ? areas.Count : i, HeightLayout.AreaCount - 1);
    }

    public void Look(Entry e)
    {
        if (!e.Is(LookEntry.Kind)) return;
        var area = e.Area ?? "";
        if (e[LookEntry.Soft] is { } s) soft[area] = s;
        if (e[LookEntry.Wet] is { } w)
        {
            if (w) wet[area] = e.At;
            else wet.Remove(area);
        }
        // Said after the mowing, but of the same hours: the turf was wet when it was mown.
        if (last.TryGetValue(area, out var m) && m.FirstReading && (e.At - m.At).TotalHours < 1) last[area] = m with { Wet = e[LookEntry.Wet] ?? m.Wet, Soft = e[LookEntry.Soft] ?? m.Soft };
    }

    public void Mown(Entry e, bool byThis)
    {
        var area = e.Area ?? "";
        if (!byThis)
        {
            last.Remove(area);
            return;
        }
        if (!areas.Contains(area)) areas.Add(area);
        LastArea = area;
        last[area] = new(area, e.At, Wet(area, e.At), Soft(area));
    }

    /// <summary>Whether an area was said to be wet in the hours before.</summary>
    public bool Wet(string area, DateTimeOffset at) => wet.TryGetValue(area, out var w) && (at - w).TotalHours < FreshHours;

    /// <summary>The mowing that a standing height tells of, or null: another unit mowed last, or it has grown since.</summary>
    public Mowing? MownFor(Entry canopy)
    {
        var area = canopy.Area ?? "";
        // An area that neither the mowing nor the reading names is the only one there is.
        var key = last.ContainsKey(area) ? area : last.ContainsKey("") ? "" : canopy.Area is null ? LastArea ?? "" : area;
        if (!last.TryGetValue(key, out var m) || (canopy.At - m.At).TotalHours > FreshHours) return null;
        last[key] = m with { FirstReading = false };
        return m;
    }
}
