using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>What the last entries mean for the next step at the bench: sittings, directions, touches, laps, doubts.</summary>
/// <remarks>Plain facts, no estimates.</remarks>
public sealed class BenchMemory
{
    private static readonly HashSet<string> Bench = [FitEntry.Name, PaperCutEntry.Name, PaperDragEntry.Name, ContactEntry.Name, TorchEntry.Name, FeelerEntry.Name, ClicksEntry.Name, SquareUpEntry.Name, LapEntry.Name, StoneEntry.Name, GrindEntry.Name, RebuildEntry.Name, GaugeEntry.Name, ScrewEntry.Name, LockedEntry.Name];
    private static readonly HashSet<string> NipChecks = [PaperCutEntry.Name, PaperDragEntry.Name, ContactEntry.Name, TorchEntry.Name, FeelerEntry.Name];
    private static readonly HashSet<string> Changes = [ClicksEntry.Name, SquareUpEntry.Name, LapEntry.Name, StoneEntry.Name, GrindEntry.Name, RebuildEntry.Name];
    /// <summary>More clicks than any unit should need: then the adjuster itself is in doubt. Common practice, no source.</summary>
    public const double FarClicks = 12;

    private static readonly TimeSpan Gap = TimeSpan.FromHours(6);
    private readonly List<double> hours = [];
    private readonly List<DateTimeOffset> mowings = [];
    private readonly int?[] lastContact = [null, null, null];
    private readonly bool[] touched = [false, false, false];
    private DateTimeOffset? lastBench;

    /// <summary>Direction of the last move of each adjuster: +1 in, −1 out, 0 not known.</summary>
    public (int Left, int Right) Direction { get; private set; }

    /// <summary>Entries of the sitting that is open, in order; empty when none is.</summary>
    public IReadOnlyList<Entry> Sitting => sitting;

    private readonly List<Entry> sitting = [];

    /// <summary>Entry that makes the fit worth asking for before anything else (a new unit, a rebuild, screws tightened, an adjuster in doubt); null when none does. A hit is <see cref="NipSigns.StrikeOpen"/>.</summary>
    public string? FitWanted { get; private set; } = "new";

    /// <summary>Steps that one end was turned the same way on balance since a reading last changed.</summary>
    public double TurnedFar => Math.Max(Math.Abs(turned.Left), Math.Abs(turned.Right));

    /// <summary>Whether an end was turned twice as far as any unit should need while what is felt and cut stayed the same.</summary>
    public bool AdjusterFails { get; private set; }

    /// <summary>Whether a turn of an adjuster is in the book.</summary>
    public bool EverTurned { get; private set; }

    private (double Left, double Right) turned;

    private readonly int?[] felt = [null, null, null];    // what was last felt at each station, whatever came between

    private bool adjusterLookedAt;

    /// <summary>The <c>fit</c> entry after which no check can be believed, until a repair.</summary>
    public Entry? BadFit { get; private set; }

    /// <summary>The last <c>fit</c> entry, where it names any fault that was not seen to since, small ones too.</summary>
    public Entry? Fit { get; private set; }

    /// <summary>Kind and id of a reading that did not fit and has not been read again.</summary>
    public (Entry Entry, double Surprise)? Unusual { get; private set; }

    /// <summary>An odd sound behind the mower, not yet felt after.</summary>
    public Entry? OddSound { get; private set; }

    /// <summary>Whether anything was changed after which both ends have not been felt.</summary>
    public bool FeelWanted { get; private set; }

    /// <summary>The height setting or reading since which no nip check was made; null for none.</summary>
    public Entry? HeightSet { get; private set; }

    /// <summary>Whether an entry sets or reads the height: that can move the nip.</summary>
    public static bool SetsHeight(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e.Kind.Name is GaugeEntry.Name or ScrewEntry.Name or LockedEntry.Name;
    }

    /// <summary>Whether an entry changes the nip: mown, turned, lapped, ground, hit.</summary>
    public static bool ChangesNip(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return Changes.Contains(e.Kind.Name) || e.Kind.Name is MowEntry.Name or StrikeEntry.Name;
    }

    /// <summary>Whether drag, contact or a feeler has told the ends apart since the unit was last opened or struck.</summary>
    public bool EndsCompared { get; private set; }

    /// <summary>Laps since the last mowing, or since the paper last cut better.</summary>
    public int LapsInVain { get; private set; }


    /// <summary>Times each kind of check was done since the last change.</summary>
    public IReadOnlyDictionary<string, int> DoneSinceChange => doneSinceChange;

    private readonly Dictionary<string, int> doneSinceChange = [];

    /// <summary>The rebuild, grind or strike after which nothing but checks has come; null when none.</summary>
    public Entry? Upset { get; private set; }

    public Entry? LastMow { get; private set; }

    public Entry? Last { get; private set; }

    /// <summary>Ids of advice declined since the last mowing.</summary>
    public IReadOnlyList<string> Declined => declined;

    private readonly List<string> declined = [];

    /// <summary>What the rules of the trade ask after.</summary>
    public NipSigns Signs { get; } = new();

    /// <summary>Whether anything touched at the last feeling, and nothing has come between since.</summary>
    public bool AnyTouched => touched[0] || touched[1] || touched[2];

    /// <summary>Whether the nip was ever looked over: bearings, screws, blades.</summary>
    public bool LookedOver { get; private set; }

    private double? paperBeforeLap;                       // mean category of the last paper cut: 0 cuts all along, 2 folds all along

    private double? paper;

    /// <summary>Whether the strip was fed in since the last lap, and did not cut everywhere.</summary>
    public bool StillNotCutting { get; private set; }

    /// <summary>Whether the strip was fed in since the last lap.</summary>
    public bool PaperSinceLap { get; private set; }

    /// <summary>The last contact felt at a station: 0 heavy, 1 light, 2 none; null where never or long changed.</summary>
    public int? LastContact(int station) => lastContact[station];

    /// <summary>Whether an end touched at the last feeling, and nothing has come between since.</summary>
    public bool Touched(int station) => touched[station];

    /// <summary>Whether a heavy touch was felt and not backed off since.</summary>
    public bool Heavy => lastContact.Any(c => c == 0);

    /// <summary>Whether a sitting is open at a time.</summary>
    public bool AtBench(DateTimeOffset now) => sitting.Count > 0 && lastBench is { } t && now - t <= Gap;

    /// <summary>Hours of a usual mowing: the middle of the last nine, 1 before the first.</summary>
    public double UsualHours => hours.Count == 0 ? 1.0 : Middle(hours.TakeLast(9));

    /// <summary>Days between mowings: the middle of the last nine gaps; null before the second.</summary>
    public double? UsualDays => mowings.Count < 2 ? null
        : Middle(mowings.Zip(mowings.Skip(1), (a, b) => (b - a).TotalDays).TakeLast(9));

    internal void Add(Entry e, double hoursMown, double? surprise)
    {
        var kind = e.Kind.Name;
        var bench = Bench.Contains(kind) || (kind is MeasureEntry.Name or ServiceEntry.Name && e[ServiceEntry.What] is "straightedge" or NipSigns.KnifeScrews);
        if (bench)
        {
            if (lastBench is { } t && e.At - t > Gap) sitting.Clear();
            lastBench = e.At;
            sitting.Add(e);
        }
        if (Unusual is { } odd && e.Id != odd.Entry.Id && (kind == odd.Entry.Kind.Name || (odd.Entry.Is(SwathEntry.Kind) && NipChecks.Contains(kind)))) Unusual = null;
        if (surprise is { } p) Unusual = (e, p);
        Signs.Add(e, this);
        // A new unit is asked about once: until somebody looked it over, or it went from the bench to mowing regardless.
        if (FitWanted is not null && FitWanted is not "new" && bench && kind != RebuildEntry.Name) FitWanted = null;
        if (FitWanted == "new" && kind == MowEntry.Name && sitting.Count > 0) FitWanted = null;
        switch (kind)
        {
            case FitEntry.Name:
                BadFit = FitRules.Bad(e) is null ? null : e;
                Fit = FitRules.Faults(e).Count == 0 ? null : e;
                (FitWanted, LookedOver) = (null, true);
                break;
            case DeclineEntry.Name:
                declined.Add(e[DeclineEntry.Advice]!);
                Unusual = null;
                break;
            case PaperCutEntry.Name:
                Paper(e);
                break;
            case ContactEntry.Name:
                Contact(e);
                break;
            case PaperDragEntry.Name:
            case FeelerEntry.Name:
                if (e[e.Kind.IndexOf(Stations.Left)] is not null && e[e.Kind.IndexOf(Stations.Right)] is not null) EndsCompared = true;
                break;
            case SwathEntry.Name:
                if (e[SwathEntry.Sound] is "ticks" or "louder") OddSound = e;
                break;
            case ClicksEntry.Name:
                EverTurned = true;
                Turned(e[ClicksEntry.Left] ?? 0, e[ClicksEntry.Right] ?? 0);
                break;
            case SquareUpEntry.Name:
                Direction = (1, 1);
                Followed();
                Array.Fill(felt, null);
                EndsCompared = true;
                Clear();
                break;
            case LapEntry.Name:
                paperBeforeLap ??= paper;
                (PaperSinceLap, StillNotCutting) = (false, false);
                LapsInVain++;
                Clear();
                break;
            case ServiceEntry.Name when e[ServiceEntry.What] == NipSigns.KnifeScrews:
                if (Fit is { } loose && FitRules.Faults(loose).Contains(FitFault.LooseScrews)) (BadFit, Fit, FitWanted) = (null, null, "tightened");
                EndsCompared = false;
                Clear();
                FeelWanted = true;
                doneSinceChange.Clear();
                break;
            case StoneEntry.Name when e[StoneEntry.What] is "nick" or "burr":
                Fit = Fit is { } nicked && FitRules.Faults(nicked).Any(f => f != FitFault.NickedBlade) ? Fit : null;
                Clear();
                break;
            case StoneEntry.Name:
            case GrindEntry.Name:
                LapsInVain = 0;
                paperBeforeLap = null;
                if (kind == GrindEntry.Name) (Upset, EndsCompared, Direction) = (e, false, (0, 0));
                Clear();
                break;
            case RebuildEntry.Name:
                Followed();
                Array.Fill(felt, null);
                (BadFit, Fit, Upset, EndsCompared, Direction, LapsInVain, FitWanted) = (null, null, e, false, (0, 0), 0, "rebuild");
                paperBeforeLap = null;
                Clear();
                break;
            case StrikeEntry.Name:
                (Upset, EndsCompared) = (e, false);
                Clear();
                break;
            case MowEntry.Name:
                Mown(e, hoursMown);
                break;
        }
        if (SetsHeight(e))
        {
            HeightSet = e;
            FeelWanted = true;
            doneSinceChange.Clear();
        }
        if (NipChecks.Contains(kind))
        {
            HeightSet = null;
            foreach (var s in Stations.All.Where(s => e[e.Kind.IndexOf(s)] is not null))
                doneSinceChange[$"{kind} {s}"] = doneSinceChange.GetValueOrDefault($"{kind} {s}") + 1;
        }
        if (Changes.Contains(kind))
        {
            FeelWanted = true;
            doneSinceChange.Clear();
        }
        Last = e;
    }

    private void Mown(Entry e, double hoursMown)
    {
        Followed();
        Array.Fill(felt, null);
        sitting.Clear();
        declined.Clear();
        doneSinceChange.Clear();
        LastMow = e;
        Unusual = null;
        LapsInVain = 0;
        paperBeforeLap = null;
        paper = null;
        (PaperSinceLap, StillNotCutting) = (false, false);
        (Upset, HeightSet) = (null, null);
        FeelWanted = false;
        if (hoursMown > 0)
        {
            hours.Add(hoursMown);
            mowings.Add(e.At);
        }
        Array.Fill(lastContact, null);
        Array.Fill(touched, false);
    }

    private void Paper(Entry e)
    {
        var found = StationFields.Words.Select(s => e[s]).Where(w => w is not null).Select(w => Array.IndexOf(Checks.Words[PaperCutEntry.Name], w)).ToArray();
        var mean = found.Average();
        if (paper is { } last && BladeReads.Of(e) is null) Compare(mean == last);
        if (LapsInVain > 0 && paperBeforeLap is { } before && mean < before) (LapsInVain, paperBeforeLap) = (0, null);
        (paper, PaperSinceLap, StillNotCutting) = (mean, true, mean > 0);
    }

    /// <summary>A reading after turning: where it changed, the adjuster moves the end; where it never does, it is in doubt.</summary>
    private void Compare(bool same)
    {
        if (!same) Followed();
        else if (TurnedFar >= 2 * FarClicks) AdjusterFails = true;
        else if (TurnedFar >= FarClicks && !adjusterLookedAt) (FitWanted, adjusterLookedAt) = ("adjuster", true);
    }

    private void Followed() => (turned, AdjusterFails, adjusterLookedAt) = ((0, 0), false, false);

    private void Contact(Entry e)
    {
        var now = Array.ConvertAll<int, int?>([0, 1, 2], s => e[StationFields.Words[s]] is { } w ? Felt(w, s) : null);
        if (Enumerable.Range(0, 3).Any(s => now[s] is not null && felt[s] is not null)) Compare(Enumerable.Range(0, 3).All(s => now[s] is null || felt[s] is null || now[s] == felt[s]));
        for (var s = 0; s < 3; s++)
        {
            if (e[StationFields.Words[s]] is not { } word) continue;
            felt[s] = lastContact[s] = Felt(word, s);
            touched[s] = lastContact[s] < 2;
        }
        OddSound = null;
        if (lastContact[0] is not null && lastContact[2] is not null)
        {
            FeelWanted = false;
            EndsCompared = true;
        }
    }

    /// <summary>How hard it touches at a station: the tightest blade decides, where blades were felt one by one.</summary>
    private int Felt(string word, int station) => Signs.Blades.Tightest(ContactEntry.Name, station) ?? (word == Checks.OnceATurn ? 1 : Checks.CategoryOf(ContactEntry.Name, word));

    private void Turned(double left, double right)
    {
        turned = (turned.Left + left, turned.Right + right);
        Direction = (left == 0 ? Direction.Left : Math.Sign(left), right == 0 ? Direction.Right : Math.Sign(right));
        for (var s = 0; s < 3; s++)
        {
            var moved = s == 0 ? left : s == 2 ? right : left + right;
            if (s == 1 ? left != 0 || right != 0 : moved != 0) lastContact[s] = null;
            if (moved < 0) touched[s] = false;
        }
    }

    /// <summary>What was felt before no longer holds.</summary>
    private void Clear()
    {
        Array.Fill(lastContact, null);
        Array.Fill(touched, false);
    }

    private static double Middle(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
