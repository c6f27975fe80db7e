using Closemown.Entries;

namespace Closemown.Turf;

/// <summary>An area's days from its first entry on, with what each brought; days beyond the record come out as forecast, then as usual.</summary>
public sealed class TurfDays
{
    /// <summary>Days before the first entry from which the water and the soil's warmth are run in.</summary>
    private const int RunIn = 45;

    private readonly List<TurfDay> days = [];
    private readonly List<TurfRun> after = [];
    private readonly Dictionary<DateOnly, Care> care = [];
    private readonly DateOnly first;
    private readonly (WaterHabit Habit, DateOnly From)? goesOn;
    private TurfRun run;
    private bool watered;
    private readonly List<DateOnly> byHabit = [];

    /// <summary>Starts an area's days.</summary>
    /// <param name="area">The area.</param>
    /// <param name="record">Its weather.</param>
    /// <param name="entries">Its standing entries, in order: waterings, feeds and treatments count.</param>
    /// <param name="from">The first day that matters.</param>
    public TurfDays(TurfArea area, WeatherRecord record, IEnumerable<Entry> entries, DateOnly from)
    {
        ArgumentNullException.ThrowIfNull(entries);
        (Area, Record) = (area, record);
        Usual = Climatology.Of(record, area.Latitude);
        first = from.AddDays(-Math.Min(RunIn, from.DayNumber));
        run = new(area, watered: false);
        foreach (var e in entries) Add(e);
    }

    /// <summary>Days watered on by habit after one of them.</summary>
    private TurfDays(TurfDays known, WaterHabit habit, DateOnly after)
    {
        known.On(after);
        (Area, Record, Usual, first, watered) = (known.Area, known.Record, known.Usual, known.first, known.watered);
        (goesOn, care) = ((habit, after), new(known.care));
        byHabit.Add(habit.Last);
        var keep = Math.Clamp(after.DayNumber - first.DayNumber + 1, 0, known.days.Count);
        days.AddRange(known.days.Take(keep));
        this.after.AddRange(known.after.Take(keep));
        run = keep > 0 ? this.after[^1] : new(Area, watered);
    }

    public TurfArea Area { get; }

    public WeatherRecord Record { get; }

    /// <summary>What is usual by day of the year.</summary>
    public Climatology Usual { get; }

    /// <summary>The same days, watered on as lately after one of them; what is entered later changes nothing in them.</summary>
    /// <param name="habit">How it is watered.</param>
    /// <param name="after">The last day that is as the record says.</param>
    public TurfDays WateredOn(WaterHabit habit, DateOnly after) => new(this, habit, after);

    /// <summary>Days from the last watering, entered or taken to follow by habit, to a day.</summary>
    internal int DryDays(WaterHabit habit, DateOnly date)
    {
        On(date);
        return date.DayNumber - (goesOn is null ? habit.Last : byHabit.FindLast(d => d <= date || d == habit.Last)).DayNumber;
    }

    /// <summary>Takes in what a person did; days from it on are reckoned anew.</summary>
    public void Add(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        var done = e.Kind.Name switch
        {
            WaterEntry.Name => new Care(e[WaterEntry.Mm] ?? 0, 0, false),
            FeedEntry.Name => new Care(0, e[FeedEntry.NGm2] ?? 0, false),
            TreatEntry.Name when e[TreatEntry.What]?.Contains("regulator", StringComparison.OrdinalIgnoreCase) == true => new Care(0, 0, true),
            _ => default,
        };
        if (done == default) return;
        var date = Area.LocalDate(e.At);
        if (done.WaterMm > 0 && !watered)
        {
            watered = true;
            Reckon(first);
        }
        var known = care.GetValueOrDefault(date);
        care[date] = new(known.WaterMm + done.WaterMm, known.NGm2 + done.NGm2, known.Regulator || done.Regulator);
        Reckon(date);
    }

    /// <summary>Forgets the days from one on, so that they are reckoned anew.</summary>
    private void Reckon(DateOnly from)
    {
        var keep = Math.Max(0, from.DayNumber - first.DayNumber);
        if (keep >= days.Count && keep > 0) return;
        days.RemoveRange(keep, days.Count - keep);
        after.RemoveRange(keep, after.Count - keep);
        run = keep > 0 ? after[keep - 1] : new(Area, watered);
    }

    /// <summary>A day; before the first one the first one's.</summary>
    public TurfDay On(DateOnly date)
    {
        var i = Math.Max(0, date.DayNumber - first.DayNumber);
        while (days.Count <= i)
        {
            var next = first.AddDays(days.Count);
            var usual = Usual.On(next);
            var sky = FilledDay.Of(Record.On(next), usual);
            days.Add(run.Next(next, sky, usual, Done(next, sky)));
            after.Add(run);
        }
        return days[i];
    }

    private Care Done(DateOnly date, in FilledDay sky)
    {
        var done = care.GetValueOrDefault(date);
        if (goesOn is not var (habit, from) || date <= from || days.Count == 0) return done;
        if (!habit.Due(date.DayNumber - byHabit[^1].DayNumber, sky.RainMm + days[^1].Weather.RainMm)) return done;
        byHabit.Add(date);
        return done with { WaterMm = done.WaterMm + habit.Mm };
    }

    /// <summary>The clock at the end of a day, to try futures from.</summary>
    public TurfRun RunAfter(DateOnly date)
    {
        On(date);
        return after[Math.Max(0, date.DayNumber - first.DayNumber)];
    }
}
