namespace Closemown.Entries;

/// <summary>Which entries stand after all corrections.</summary>
/// <remarks>
/// Of two standing entries that void the same one the later by (at, id) counts and the earlier falls with the target;
/// a void may come before its target; voiding a void restores. Should voids form a ring, which no honest writer can make,
/// its latest entry counts before the others.
/// </remarks>
public static class StandingEntries
{
    /// <summary>The entries that stand, in order of (at, id); entries of kind <c>void</c> are left out.</summary>
    public static IReadOnlyList<Entry> Of(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var all = entries.ToArray();
        if (!IsSorted(all)) Array.Sort(all, EntryOrder.Instance);
        if (Array.TrueForAll(all, e => e.Voids is null)) return all;
        var stands = Resolve(all);
        return [.. all.Where((e, i) => stands[i] && !e.Is(VoidEntry.Kind))];
    }

    private static bool IsSorted(Entry[] all)
    {
        for (var i = 1; i < all.Length; i++)
        {
            if (EntryOrder.Instance.Compare(all[i - 1], all[i]) > 0) return false;
        }
        return true;
    }

    private static bool[] Resolve(Entry[] all)
    {
        var at = new Dictionary<Guid, int>(all.Length);
        for (var i = 0; i < all.Length; i++) at[all[i].Id] = i;
        var target = Array.ConvertAll(all, e => e.Voids is { } v && at.TryGetValue(v, out var k) ? k : -1);
        var waiting = new int[all.Length];                 // voiders of each entry not yet settled
        foreach (var t in target)
        {
            if (t >= 0) waiting[t]++;
        }
        var stands = new bool[all.Length];
        Array.Fill(stands, true);
        var best = new int[all.Length];                    // latest standing voider seen so far
        Array.Fill(best, -1);
        var settled = new bool[all.Length];
        var ready = new Stack<int>(Enumerable.Range(0, all.Length).Where(i => waiting[i] == 0));
        var ring = all.Length - 1;
        while (true)
        {
            while (ready.TryPop(out var i))
            {
                if (settled[i]) continue;
                settled[i] = true;
                var t = target[i];
                if (t < 0) continue;
                // i's own voiders are all settled, so i is known to stand or not.
                if (stands[i])
                {
                    if (best[t] >= 0) stands[Math.Min(best[t], i)] = false;
                    best[t] = Math.Max(best[t], i);
                    stands[t] = false;
                }
                if (--waiting[t] == 0) ready.Push(t);
            }
            while (ring >= 0 && settled[ring]) ring--;
            if (ring < 0) return stands;
            ready.Push(ring);                              // stands, unless an entry outside the ring voids it
        }
    }
}
