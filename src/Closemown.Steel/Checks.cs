using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What each kind of check sees of the steel.</summary>
public static class Checks
{
    private const double StripErrorInCut = -0.5;        // an error of the strip's thickness moves both cut-points about half as far
    private const double DragHalfWidthUm = 8;
    private const double HeavyUm = -12;
    private const double TouchUm = 4;
    private const double RunOutUm = 30;                  // as much as the mean blade may stand off where one touches once a turn; an assumption
    private const double ThinUm = 8;
    private const double WideUm = 20;
    private const double RaggedAboveCleanUm = 5;
    private const double UncutAboveCleanUm = 40;

    /// <summary>Categories of each kind in ascending order of what it sees.</summary>
    public static IReadOnlyDictionary<string, string[]> Words { get; } = new Dictionary<string, string[]>
    {
        [PaperCutEntry.Name] = ["cuts", "nicks", "folds"],
        [PaperDragEntry.Name] = ["tight", "slight", "loose"],
        [ContactEntry.Name] = ["heavy", "light", "none"],
        [TorchEntry.Name] = ["none", "thin", "wide"],
        [SwathEntry.Name] = ["clean", "ragged", "uncut"],
        [FeelerEntry.Name] = ["below", "between", "above"],
    };

    /// <summary>What a contact check says where the tightest blade touches and the others do not: a fact of the reel before it is one of the gap.</summary>
    public const string OnceATurn = "once-a-turn";

    /// <summary>The category that a word of a check stands for: its place in <see cref="Words"/>; −1 where it is none of them.</summary>
    public static int CategoryOf(string kind, string word) => Words.TryGetValue(kind, out var words) ? Array.IndexOf(words, word) : -1;

    /// <summary>The check of a kind at a station as it would be done plainly: one dry layer of the strip in use, no blade named, machine cold.</summary>
    /// <param name="kind">One of the keys of <see cref="Words"/>.</param>
    /// <param name="station">0 left, 1 centre, 2 right.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="strip">The strip in use.</param>
    public static Check Of(string kind, int station, UnitDescription unit, PaperStrip strip)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return Of(kind, station, unit, strip, new Manner());
    }

    internal static Check Of(string kind, int station, UnitDescription unit, PaperStrip strip, Manner m)
    {
        var gap = Stations3.ClearanceTerms(unit, station);
        var edge = Term.State(0, Layout.Edge + station, 1);
        double[] cuts;
        Term[] terms;
        switch (kind)
        {
            case PaperCutEntry.Name:
                var (cut, fold) = strip.CutPoints(m.Layers, m.Damp);
                cuts = [cut, fold];
                terms = [.. gap, edge, Term.State(0, Layout.Strip, StripErrorInCut * m.Layers), Term.Constant(Layout.PaperOffset, strip.Tried ? SteelDefaults.TriedStripShare : 1)];
                break;
            case PaperDragEntry.Name:
                cuts = [strip.Um - DragHalfWidthUm, strip.Um + DragHalfWidthUm];
                terms = [.. gap, Term.State(0, Layout.Strip, -1)];
                break;
            case ContactEntry.Name:
                cuts = [HeavyUm, TouchUm];
                terms = [.. gap, Term.Constant(Layout.Touch, -1)];
                break;
            case TorchEntry.Name:
                cuts = [ThinUm, WideUm];
                terms = [edge];
                break;
            case SwathEntry.Name:
                cuts = [unit.CleanUm.Mean + RaggedAboveCleanUm, unit.CleanUm.Mean + UncutAboveCleanUm];
                terms = [.. gap, edge, Term.Constant(Layout.CleanOffset, -1)];
                break;
            case FeelerEntry.Name:
                cuts = [30, 50];
                terms = gap;
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a check");
        }
        var scatter = SteelDefaults.ScatterUm[kind];
        var variance = scatter * scatter;
        if (kind is PaperCutEntry.Name or PaperDragEntry.Name && !m.BladeNamed) variance += SteelDefaults.UnnamedBladeUm * SteelDefaults.UnnamedBladeUm;
        if (m.Warm && kind != TorchEntry.Name) variance += SteelDefaults.WarmScatterUm * SteelDefaults.WarmScatterUm;
        if (m.BladesDiffer && kind is not (TorchEntry.Name or SwathEntry.Name)) variance += SteelDefaults.BladesApartUm * SteelDefaults.BladesApartUm;
        if (m.Damp) variance += 9;
        return new(kind, station, terms, cuts, Words[kind], Math.Sqrt(variance));
    }

    /// <summary>The readings of an entry, station by station; empty where the entry is no such check.</summary>
    internal static List<CheckRead> Read(Entry e, UnitDescription unit, PaperStrip strip, bool bladesDiffer = false)
    {
        var reads = new List<CheckRead>(3);
        if (!Words.ContainsKey(e.Kind.Name)) return reads;
        var manner = new Manner(e[PaperCutEntry.Layers] ?? 1, e[PaperCutEntry.Damp] ?? false, e[CheckFields.Blade] is not null, e[CheckFields.State] is "just-run" or "sun", bladesDiffer);
        for (var s = 0; s < 3; s++)
        {
            if (e[StationFields.Feelers[s]] is { } f)
                reads.Add(new(Of(e.Kind.Name, s, unit, strip, manner), -1, f.GoUm ?? double.NegativeInfinity, f.NoGoUm ?? double.PositiveInfinity));
            else if (e[StationFields.Words[s]] is OnceATurn)
                reads.Add(new(Of(e.Kind.Name, s, unit, strip, manner), -1, HeavyUm, TouchUm + RunOutUm));
            else if (e[StationFields.Words[s]] is { } word)
                reads.Add(new(Of(e.Kind.Name, s, unit, strip, manner), Array.IndexOf(Words[e.Kind.Name], word), 0, 0));
        }
        return reads;
    }
}

/// <summary>How a check was done; of several blades that were named, each stands off from the mean blade by itself.</summary>
internal readonly record struct Manner(double Layers, bool Damp, bool BladeNamed, bool Warm, bool BladesDiffer)
{
    public Manner()
        : this(1, false, false, false, false)
    {
    }
}
