using Closemown.Entries;
using Closemown.Height;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>An advice as it was given.</summary>
internal sealed record AdviceGiven(NextQuestion Question, AdviceSettings Settings, BookState Book, StepAdvice Advice);

/// <summary>The entries as they arrived, and what the models make of them: the one place where questions are answered from.</summary>
/// <remarks>Holds no more than follows from the entries; an entry that comes in order is added to what is there, any other rebuilds it.</remarks>
public sealed class Desk
{
    private readonly LearningOptions? learning;
    private readonly List<Entry> arrived = [];
    private readonly List<string> hashes = [""];
    private readonly List<ulong> marks = [];              // of the first entries to arrive, as far as they were needed
    private readonly List<ulong> sums = [0];
    private readonly Dictionary<string, UnitTrack> tracks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SteelBelief> beliefs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SteelBelief> earlier = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HeightTrack> heights = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HeightBelief> heightBeliefs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, AdviceGiven> advised = new(StringComparer.Ordinal);
    private readonly HashSet<Guid> voided = [];
    private readonly SortedSet<string> units = new(StringComparer.Ordinal);
    private readonly Dictionary<string, AreaLedger> ledgers = new(StringComparer.Ordinal);
    private readonly SortedSet<string> areas = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Area, DateTimeOffset At, DateOnly Today), AreaPlan> plans = [];
    private readonly Dictionary<(string Unit, int Last), IReadOnlyList<SteelMoment>> histories = [];
    private readonly WeatherShelf weather;
    private IReadOnlyList<Entry>? standing;
    private Entry? latest;
    private Entry? latestUnconfirmed;
    private bool unplaced;                                // whether any entry names no area though it is about one

    /// <summary>An empty desk.</summary>
    /// <param name="learning">What is learned besides the steel; null for everything.</param>
    /// <param name="weather">Reads the standing weather when it is first needed; null where there is none.</param>
    public Desk(LearningOptions? learning = null, Func<IReadOnlyList<Entry>>? weather = null)
    {
        this.learning = learning;
        this.weather = new(weather);
    }

    /// <summary>Entries in order of arrival.</summary>
    public IReadOnlyList<Entry> Arrived => arrived;

    /// <summary>Cutting units named by any entry, by name.</summary>
    public IReadOnlyCollection<string> Units => units;

    /// <summary>Turf areas named by any entry, by name; one that was never named is "turf".</summary>
    public IReadOnlyCollection<string> Areas => areas;

    /// <summary>The time of the last entry by (at, id); null where there is none.</summary>
    public DateTimeOffset? LatestAt => latest?.At;

    /// <summary>The same, of the standing entries whose time nobody has confirmed.</summary>
    public DateTimeOffset? LatestUnconfirmedAt =>
        (latestUnconfirmed is { } e && !voided.Contains(e.Id) ? e : Standing.LastOrDefault(TimeUnconfirmed))?.At;

    /// <summary>Whether an area is known: by an entry, or by weather alone.</summary>
    internal bool KnowsArea(string area) => areas.Contains(area) || weather.All.Any(e => e.Area == area);

    /// <summary>The last entry by (at, id), standing or not; null where there is none.</summary>
    internal Entry? Latest => latest;

    /// <summary>The hash that the book gave with the last of the first entries: it tells their order.</summary>
    public string HashAfter(int count) => hashes[count];

    /// <summary>The state of the book: which entries it holds, whatever their order.</summary>
    public BookState State => new(arrived.Count, SumAfter(arrived.Count));

    /// <summary>The state of <see cref="WithoutLatest"/>.</summary>
    internal BookState StateWithoutLatest => new(arrived.Count - 1, BookState.Less(SumAfter(arrived.Count), Mark(arrived.LastIndexOf(latest!))));

    /// <summary>The sum of the marks of the first entries to arrive.</summary>
    internal ulong SumAfter(int count)
    {
        while (sums.Count <= count) sums.Add(BookState.Plus(sums[^1], Mark(sums.Count - 1)));
        return sums[count];
    }

    /// <summary>The sum of the marks of some entries, by their places in order of arrival.</summary>
    internal ulong SumOf(IEnumerable<int> places)
    {
        ulong sum = 0;
        foreach (var i in places) sum = BookState.Plus(sum, Mark(i));
        return sum;
    }

    private ulong Mark(int place)
    {
        while (marks.Count <= place) marks.Add(BookState.MarkOf(arrived[marks.Count]));
        return marks[place];
    }

    /// <summary>Standing entries in order.</summary>
    public IReadOnlyList<Entry> Standing => standing ??= unplaced ? OnlyArea.Placed(StandingEntries.Of(arrived)) : StandingEntries.Of(arrived);

    /// <summary>A desk with the first entries to arrive only.</summary>
    public Desk Before(int count) => With(Enumerable.Range(0, count));

    /// <summary>A desk without the latest entry by (at, id).</summary>
    internal Desk WithoutLatest()
    {
        var last = arrived.LastIndexOf(latest!);
        return With(Enumerable.Range(0, arrived.Count).Where(i => i != last));
    }

    /// <summary>A desk with some of the entries only, by their places in order of arrival.</summary>
    internal Desk With(IEnumerable<int> places)
    {
        var desk = new Desk(learning, () => weather.All);
        foreach (var i in places)
        {
            desk.Load(arrived[i], hashes[i + 1]);
            if (i < marks.Count && desk.marks.Count == desk.arrived.Count - 1) desk.marks.Add(marks[i]);
        }
        return desk;
    }

    /// <summary>Takes in an entry of a book that is being opened: nothing is made of it before something is asked.</summary>
    /// <param name="entry">The entry that arrived next.</param>
    /// <param name="hash">The book's hash after it.</param>
    public void Load(Entry entry, string hash)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Arrives(entry, hash);
        Forget();
    }

    /// <summary>Adds the entry that arrived next.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="hash">The book's hash after it.</param>
    /// <returns>How odd its reading was before it was seen; null for what is no reading.</returns>
    public ReadingSurprise? Add(Entry entry, string hash)
    {
        ArgumentNullException.ThrowIfNull(entry);
        foreach (var (unit0, b) in beliefs) earlier[unit0] = b;
        var height = entry.Is(GaugeEntry.Kind) || entry.Is(CanopyEntry.Kind);
        var known = areas.Count;
        if (!Arrives(entry, hash))
        {
            Forget();
            return height ? HeightReplayed(entry) : entry.Unit is { } u && entry.Kind.Nature == Nature.Reading && Checks.Words.ContainsKey(entry.Kind.Name) ? Replayed(u, entry) : null;
        }
        // To whom the unnamed ones belong hangs on how many areas there are.
        if (areas.Count != known && unplaced) Forget();
        if (OnlyArea.Unnamed(entry)) entry = Standing[^1];
        ReadingSurprise? surprise = height ? HeightReplayed(entry) : null;
        if (areas.Count != known || entry.Is(AreaEntry.Kind)) ledgers.Clear();
        if (TurfRead(entry) is { } odd) surprise ??= new([], odd);
        if (!height)
        {
            foreach (var t in heights.Values) t.Add(entry);
        }
        if (entry.Unit is { } unit && !tracks.ContainsKey(unit)) surprise ??= height ? null : Replayed(unit, entry);
        else if (entry.Unit is { } ours) surprise = tracks[ours].Add(entry) ?? surprise;
        if (entry.Is(WorkEntry.Kind) || entry.Is(LookEntry.Kind))
        {
            foreach (var (name, t) in tracks)
            {
                if (name != entry.Unit) t.Add(entry);
            }
        }
        return surprise;
    }

    /// <summary>A unit's track; an unseen name starts one with default values.</summary>
    public UnitTrack Track(string unit)
    {
        if (!tracks.TryGetValue(unit, out var track)) tracks[unit] = track = UnitTrack.Of(unit, Standing, learning);
        return track;
    }

    /// <summary>What is known of a unit's steel now.</summary>
    public SteelBelief Belief(string unit)
    {
        if (!beliefs.TryGetValue(unit, out var belief)) beliefs[unit] = belief = SteelBelief.Of(Track(unit), earlier.GetValueOrDefault(unit));
        return belief;
    }

    /// <summary>A unit's heights; an unseen name starts one with default values.</summary>
    public HeightTrack HeightTrack(string unit)
    {
        if (!heights.TryGetValue(unit, out var track)) heights[unit] = track = Closemown.Height.HeightTrack.Of(unit, Standing);
        return track;
    }

    /// <summary>What is known of a unit's height now.</summary>
    public HeightBelief Height(string unit)
    {
        if (!heightBeliefs.TryGetValue(unit, out var belief)) heightBeliefs[unit] = belief = HeightBelief.Of(HeightTrack(unit));
        return belief;
    }

    /// <summary>What is known of a unit's height when it is asked: a sitting that is over has its knocks, whether or not anything was entered since.</summary>
    public HeightBelief Height(string unit, DateTimeOffset now) => Height(unit).At(now);

    /// <summary>Weather that came in: days and plans are reckoned anew.</summary>
    public void AddWeather(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        weather.Add(entry);
        ledgers.Clear();
        plans.Clear();
    }

    /// <summary>Weather was put into the book by another program: it is read anew.</summary>
    public void WeatherChanged()
    {
        weather.Drop();
        ledgers.Clear();
        plans.Clear();
    }

    /// <summary>An area's turf; an unseen name starts one with default values.</summary>
    internal AreaLedger Ledger(string area)
    {
        if (!ledgers.TryGetValue(area, out var ledger))
            ledgers[area] = ledger = new(area, areas.Count == 0 || (areas.Count == 1 && areas.Contains(area)), Standing, weather.Of(area), u => HeightUnit.Of(u, Standing.Where(e => e.Unit == u && e.Is(UnitEntry.Kind))));
        return ledger;
    }

    /// <summary>A plan of an area, made once for each state of the book: several questions of one moment rest on it.</summary>
    internal AreaPlan Planned(string area, DateTimeOffset at, DateTimeOffset now, Func<AreaPlan> make)
    {
        const int most = 32;
        // Which day is today decides whether the person is there; the minute does not.
        var key = (area, at, Ledger(area).Track.Area.LocalDate(now));
        if (plans.TryGetValue(key, out var plan)) return plan;
        if (plans.Count >= most) plans.Clear();
        return plans[key] = make();
    }

    /// <summary>How a unit's steel went, walked through once for each state of the book.</summary>
    internal IReadOnlyList<SteelMoment> Went(string unit, int last, Func<IReadOnlyList<SteelMoment>> walk)
    {
        if (histories.TryGetValue((unit, last), out var went)) return went;
        return histories[(unit, last)] = walk();
    }

    /// <summary>Keeps the last advice given for a unit, so that a plan that goes on need not be reckoned again.</summary>
    internal void Remember(AdviceGiven given) => advised[given.Question.Unit] = given;

    /// <summary>The advice given for the same question when the book held these entries; null where it was another.</summary>
    internal StepAdvice? Remembered(NextQuestion question, AdviceSettings settings, BookState book) =>
        advised.TryGetValue(question.Unit, out var g) && g.Book == book && g.Settings == settings
            && g.Question with { Now = question.Now } == question && question.Now - g.Question.Now < TimeSpan.FromHours(6) ? g.Advice : null;

    /// <summary>When the advice that is kept for a unit was asked for.</summary>
    internal DateTimeOffset? RememberedAt(string unit) => advised.TryGetValue(unit, out var g) ? g.Question.Now : null;

    /// <returns>Whether it only adds to what is there: else tracks must be made anew.</returns>
    private bool Arrives(Entry entry, string hash)
    {
        arrived.Add(entry);
        hashes.Add(hash);
        if (entry.Unit is { } named) units.Add(named);
        if (entry.Area is { } place) areas.Add(place);
        unplaced |= OnlyArea.Unnamed(entry);
        beliefs.Clear();
        heightBeliefs.Clear();
        plans.Clear();
        histories.Clear();
        standing = null;
        var inOrder = latest is null || EntryOrder.Instance.Compare(latest, entry) < 0;
        if (inOrder) latest = entry;
        if (TimeUnconfirmed(entry) && (latestUnconfirmed is null || EntryOrder.Instance.Compare(latestUnconfirmed, entry) < 0)) latestUnconfirmed = entry;
        // A void may have arrived before what it takes out.
        var target = entry.Voids is not null || !inOrder || voided.Contains(entry.Id);
        if (entry.Voids is { } v) voided.Add(v);
        return !target && !UnitDescription.Describes(entry);
    }

    private static bool TimeUnconfirmed(Entry entry) => !entry.Confirmed.Contains("at");

    /// <summary>Makes everything anew from the entries when it is next asked for: after a fault that may have left a model half changed.</summary>
    public void StartOver()
    {
        Forget();
        beliefs.Clear();
        heightBeliefs.Clear();
        plans.Clear();
        histories.Clear();
        advised.Clear();
        weather.Drop();
        standing = null;
    }

    private void Forget()
    {
        tracks.Clear();
        earlier.Clear();
        heights.Clear();
        ledgers.Clear();
    }

    /// <summary>Readings of the turf go to their area; other entries to all, as any may change what a mower cuts.</summary>
    private double? TurfRead(Entry entry)
    {
        double? odd = null;
        foreach (var ledger in ledgers.Values) odd = ledger.Add(entry) ?? odd;
        if (ledgers.Count == 0 && (entry.Is(CanopyEntry.Kind) || entry.Is(ClippingsEntry.Kind) || entry.Is(LookEntry.Kind)))
        {
            var started = Ledger(entry.Area ?? areas.FirstOrDefault() ?? "turf");
            if (started.LastRead is { } read && read.Entry.Id == entry.Id) odd = read.P;
        }
        return odd;
    }

    /// <summary>A reading of the height goes to the units it may concern: its own, or all that mow, as only a unit's own record says what it mowed last.</summary>
    private ReadingSurprise? HeightReplayed(Entry wanted)
    {
        ReadingSurprise? found = null;
        var concerned = wanted.Is(GaugeEntry.Kind) ? wanted.Unit is { } own ? [own] : [] : Standing.Where(e => e.Is(MowEntry.Kind) && e.Unit is not null).Select(e => e.Unit!).ToHashSet();
        foreach (var (unit, known) in heights)
        {
            if (known.Add(wanted) is { } s && concerned.Contains(unit)) found ??= Reading(s);
        }
        foreach (var unit in concerned.Where(u => !heights.ContainsKey(u)))
        {
            var track = new HeightTrack(HeightUnit.Of(unit, Standing.Where(e => e.Unit == unit && e.Is(UnitEntry.Kind))));
            foreach (var e in Standing)
            {
                var s = track.Add(e);
                if (e.Id == wanted.Id && s is not null) found ??= Reading(s);
            }
            heights[unit] = track;
        }
        return found;

        static ReadingSurprise Reading(HeightSurprise s) => new([.. s.At.Select(a => (Stations.IndexOf(a.Station), a.P))], s.All);
    }

    private ReadingSurprise? Replayed(string unit, Entry wanted)
    {
        var track = new UnitTrack(UnitDescription.Of(unit, Standing.Where(e => e.Unit == unit && UnitDescription.Describes(e))), learning);
        ReadingSurprise? found = null;
        foreach (var e in Standing)
        {
            var s = track.Add(e);
            if (e.Id == wanted.Id) found = s;
        }
        tracks[unit] = track;
        return found;
    }
}
