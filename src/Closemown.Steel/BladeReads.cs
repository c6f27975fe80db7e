using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>What checks that name a blade showed, blade by blade, since anything was last changed. Blades differ: that is a fact of the reel and no mistake.</summary>
/// <remarks>Categories are those of <see cref="Checks.Words"/>: the least is the tightest.</remarks>
public sealed class BladeReads
{
    private readonly Dictionary<(string Kind, int Station), SortedDictionary<string, int>> byBlade = [];
    private readonly string?[] tightest = [null, null, null];
    private readonly bool[] once = [false, false, false];

    /// <summary>The blade that an entry names; null where it names none.</summary>
    public static string? Of(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e.Kind.IndexOf("blade") >= 0 ? e[CheckFields.Blade] : null;
    }

    /// <summary>Whether a touch once a turn was felt at a station, and no two blades were felt one by one there since: which is the tightest is not known.</summary>
    public bool TightestWanted(int station) => once[station];

    /// <summary>The blades felt one by one at a station, in order.</summary>
    public IReadOnlyCollection<string> Felt(int station) => byBlade.TryGetValue((ContactEntry.Name, station), out var felt) ? felt.Keys : [];

    /// <summary>The tightest blade at a station, where some were felt and they differ; null where not.</summary>
    public string? Differ(int station) => tightest[station];

    /// <summary>What a check of a kind shows at a station over all blades: the category of the tightest; null where no blade was named.</summary>
    public int? Tightest(string kind, int station) => byBlade.TryGetValue((kind, station), out var all) && all.Count > 0 ? all.Values.Min() : null;

    /// <summary>The category of the widest blade; null where no blade was named.</summary>
    public int? Widest(string kind, int station) => byBlade.TryGetValue((kind, station), out var all) && all.Count > 0 ? all.Values.Max() : null;

    internal void Add(Entry e)
    {
        var blade = Of(e);
        for (var s = 0; s < 3; s++)
        {
            if (e[StationFields.Words[s]] is not { } word) continue;
            if (word == Checks.OnceATurn) once[s] = true;
            if (Checks.CategoryOf(e.Kind.Name, word) is not (>= 0 and var category)) continue;
            var key = (e.Kind.Name, s);
            // Read of no one blade, it is of all of them: what was known by blade holds no longer.
            if (blade is null) byBlade.Remove(key);
            else
            {
                if (!byBlade.TryGetValue(key, out var all)) byBlade[key] = all = new(StringComparer.Ordinal);
                all[blade] = category;
                if (all.Count > 1 && all.Values.Min() != all.Values.Max())
                {
                    tightest[s] = all.MinBy(b => b.Value).Key;
                    once[s] = false;
                }
                else if (e.Is(ContactEntry.Kind) && category < 2) once[s] = false;
            }
        }
    }

    /// <summary>Something was turned, lapped, mown or taken apart: readings no longer hold, but which blade is the tightest still does.</summary>
    internal void Over() => byBlade.Clear();

    /// <summary>It was ground or taken apart: the blades are others.</summary>
    internal void Forget()
    {
        byBlade.Clear();
        Array.Fill(tightest, null);
        Array.Fill(once, false);
    }
}
