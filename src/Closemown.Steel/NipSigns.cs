using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>What the entries since the last mowing (some of them longer) show that the rules of the trade ask after. Plain facts, no estimates.</summary>
public sealed class NipSigns
{
    /// <summary>A reel just run or stood in the sun needs about so long to cool. Common practice, no source.</summary>
    public const double CoolingMinutes = 30;

    /// <summary>Two people who read within this of each other read the same nip. An assumption.</summary>
    public const double TogetherMinutes = 30;

    private static readonly HashSet<string> NipChecks = [PaperCutEntry.Name, PaperDragEntry.Name, ContactEntry.Name, TorchEntry.Name, FeelerEntry.Name];
    private static readonly HashSet<string> Changes = [ClicksEntry.Name, SquareUpEntry.Name, LapEntry.Name, StoneEntry.Name, GrindEntry.Name, RebuildEntry.Name];
    private readonly Dictionary<(string Kind, int Station), (Entry Entry, int Category)> last = [];
    private readonly bool[] fed = [false, false, false];
    private readonly SidesFollow sides = new();

    /// <summary>What was read blade by blade.</summary>
    public BladeReads Blades { get; } = new();

    /// <summary>The hit since which nobody has looked at the fit; null for none.</summary>
    public Entry? StrikeOpen { get; private set; }

    /// <summary>The last check of the nip, where it was made on a warm reel and none was made cold since; else null.</summary>
    public Entry? Hot { get; private set; }

    /// <summary>How often, since anything was done that could cure it, both ends cut or touched while the middle folded.</summary>
    public int HollowSeen { get; private set; }

    /// <summary>The last entry that showed it.</summary>
    public Entry? HollowLast { get; private set; }

    /// <summary>The hollow that a straightedge showed in the middle since, mm; null where none was laid on.</summary>
    public double? StraightedgeMm { get; private set; }

    /// <summary>Whether the screws of the bedknife were slackened and tightened since it was first seen.</summary>
    public bool KnifeScrewsDone { get; private set; }

    /// <summary>Two people read opposite things at a station within minutes, nothing changed between, and it was not settled since.</summary>
    public (Entry First, Entry Second, int Station)? Opposite { get; private set; }

    /// <summary>Whether anything was turned, lapped or ground since the last mowing.</summary>
    public bool Changed { get; private set; }

    /// <summary>Whether an adjuster was turned or it was lapped since the last mowing.</summary>
    public bool Turned { get; private set; }

    /// <summary>Whether the strip was fed in at all three stations since the last change.</summary>
    public bool StripFed => fed[0] && fed[1] && fed[2];

    /// <summary>Whether it cut at all three when it was last fed in there, and nothing was changed since.</summary>
    public bool CutsEverywhere => StripFed && Enumerable.Range(0, 3).All(s => last.TryGetValue((PaperCutEntry.Name, s), out var r) && r.Category == 0);

    /// <summary>Checks other than the strip since the last change.</summary>
    public int OtherChecks { get; private set; }

    /// <summary>Checks since it was first seen to cut everywhere, with nothing changed.</summary>
    public int FurtherChecks { get; private set; }

    /// <summary>Whether the strip was fed in at a station since the last change.</summary>
    public bool Fed(int station) => fed[station];

    /// <summary>Whether the strip folded at both ends and cut nowhere when it was last fed in since the last mowing, and no end has touched since.</summary>
    public bool FoldsFar { get; private set; }

    /// <summary>Whether a heavy touch was turned out, and the ends were not felt since.</summary>
    public bool BackedOff { get; private set; }

    /// <summary>The end that does not follow its adjuster, 0 left or 1 right, and the steps it was turned; null where none is known not to.</summary>
    public (int Side, double Steps)? NotFollowing => sides.Lost;

    /// <summary>What was described as the strip last, until a check of the nip came after it.</summary>
    public Entry? StripTold { get; private set; }

    /// <summary>The worst of the last look at the swath: 0 clean, 1 ragged, 2 uncut; null where nobody looked.</summary>
    public int? Swath { get; private set; }

    internal void Add(Entry e, BenchMemory before)
    {
        var kind = e.Kind.Name;
        switch (kind)
        {
            case StrikeEntry.Name:
                StrikeOpen = e;
                break;
            case FitEntry.Name:
                StrikeOpen = null;
                break;
            case StripEntry.Name:
                StripTold = e;
                break;
            case SwathEntry.Name:
                Swath = Read(e).Select(r => (int?)r.Category).Max() ?? Swath;
                break;
            case MeasureEntry.Name when e[MeasureEntry.What] == "straightedge":
                StraightedgeMm = e[MeasureEntry.Centre] ?? StationFields.Numbers.Max(s => e[s]);
                break;
            case ServiceEntry.Name when e[ServiceEntry.What] == KnifeScrews:
                (KnifeScrewsDone, HollowSeen, Changed, OtherChecks, FurtherChecks) = (true, 0, true, 0, 0);
                Array.Fill(fed, false);
                last.Clear();
                break;
            case MowEntry.Name:
                Mown();
                break;
        }
        sides.Add(e);
        if (NipChecks.Contains(kind)) Blades.Add(e);
        if (NipChecks.Contains(kind)) Checked(e, before);
        if (Changes.Contains(kind)) Change(e, before);
    }

    /// <summary>What a <c>service</c> is called in which the screws of the bedknife are slackened and tightened from the middle outwards.</summary>
    public const string KnifeScrews = "knife-screws";

    /// <summary>Whether a check was made on a warm reel.</summary>
    public static bool Warm(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e[CheckFields.State] is "just-run" or "sun";
    }

    private static IEnumerable<(int Station, int Category)> Read(Entry e)
    {
        for (var s = 0; s < 3; s++)
        {
            if (e[StationFields.Words[s]] is { } word && Checks.CategoryOf(e.Kind.Name, word) is >= 0 and var c) yield return (s, c);
        }
    }

    private void Checked(Entry e, BenchMemory before)
    {
        Hot = Warm(e) ? e : null;
        if (CutsEverywhere) FurtherChecks++;
        if (e.Kind.Name != PaperCutEntry.Name) OtherChecks++;
        StripTold = null;
        var settled = Opposite is { } o && (e.Is(PaperCutEntry.Kind) || e.Is(o.First.Kind)) && e.Has(StationFields.Words[o.Station]);
        if (settled) Opposite = null;
        foreach (var (s, c) in Read(e))
        {
            var key = (e.Kind.Name, s);
            if (!settled && last.TryGetValue(key, out var was) && Math.Abs(was.Category - c) > 1 && (was.Entry.By ?? "") != (e.By ?? "") && BladeReads.Of(was.Entry) == BladeReads.Of(e) && (e.At - was.Entry.At).TotalMinutes <= TogetherMinutes)
                Opposite = (was.Entry, e, s);
            last[key] = (e, Blades.Widest(e.Kind.Name, s) ?? c);
        }
        if (e.Is(ContactEntry.Kind))
        {
            BackedOff = false;
            if (Read(e).Any(r => r.Category < 2)) FoldsFar = false;
        }
        if (!e.Is(PaperCutEntry.Kind)) return;
        foreach (var (s, _) in Read(e)) fed[s] = true;
        var all = Read(e).ToDictionary(r => r.Station, r => r.Category);
        if (all.Count == 3) FoldsFar = Tightest(0) == 2 && Tightest(1) > 0 && Tightest(2) == 2 && !before.AnyTouched;
        else if (all.Values.Any(c => c < 2)) FoldsFar = false;
        if (!all.TryGetValue(1, out var middle)) return;
        if (middle == 2 && End(0) && End(2)) (HollowSeen, HollowLast) = (HollowSeen + 1, e);
        else if (middle == 0) (HollowSeen, HollowLast, StraightedgeMm, KnifeScrewsDone) = (0, null, null, false);

        int Tightest(int s) => Blades.Tightest(PaperCutEntry.Name, s) ?? all[s];
        bool End(int s) => all.TryGetValue(s, out var c) ? c == 0 || (c < 2 && before.Touched(s)) : before.Touched(s);
    }

    private void Change(Entry e, BenchMemory before)
    {
        Changed = true;
        Turned |= e.Is(ClicksEntry.Kind) || e.Is(SquareUpEntry.Kind) || e.Is(LapEntry.Kind);
        Array.Fill(fed, false);
        last.Clear();
        Blades.Over();
        (OtherChecks, FurtherChecks, Opposite) = (0, 0, null);
        BackedOff = e.Is(ClicksEntry.Kind) && (BackedOff || before.Heavy);
        if (e.Is(GrindEntry.Kind) || e.Is(RebuildEntry.Kind)) Blades.Forget();
        if (e.Is(GrindEntry.Kind) || e.Is(RebuildEntry.Kind)) (HollowSeen, HollowLast, StraightedgeMm, KnifeScrewsDone, FoldsFar) = (0, null, null, false, false);
    }

    private void Mown()
    {
        Turned = false;
        Blades.Over();
        (Changed, Hot, Opposite, OtherChecks, FurtherChecks, BackedOff, FoldsFar, Swath) = (false, null, null, 0, 0, false, false, null);
        Array.Fill(fed, false);
        last.Clear();
    }
}
