using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The plan of an area's coming weeks, with what it is for.</summary>
/// <param name="Today">The area on the first day.</param>
/// <param name="Plan">The plan.</param>
public sealed record AreaPlan(AreaToday Today, MowingPlan Plan)
{
    /// <summary>The height that the turf is used to, mm; null where nothing is known.</summary>
    public double? UsedMm => Today.HeightKnown ? Used(Today.Ledger, Today).Mm : null;

    /// <summary>
    /// The day by which the wished height is reached with 80 in 100; null where no year is enough: past that the pace may go on or not, and
    /// no date is told.
    /// </summary>
    public DateOnly? Reached => Plan.Wish is { Extrapolated: false } wish ? wish.Earliest : null;

    /// <summary>All days that were planned, shown or not.</summary>
    public IReadOnlyList<PlanDay> Whole { get; private init; } = Plan.Days;

    /// <summary>Two more days a week with which a wished date would be met that is not as it is; null for none.</summary>
    public MoreDays? WithMoreDays { get; init; }

    /// <summary>The height wished, mm; null where none is.</summary>
    public double? WishMm => Today.Ledger.Wish.CutMm;

    private const int Futures = 200, UsualOf = 9, AfterWorkDays = 7;
    private const double UntoldMinutes = 30, LoweredMm = 0.1, LeastMm = 0.6, MostMm = 90;

    /// <summary>Makes the plan.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="area">The area.</param>
    /// <param name="at">The time of the first day.</param>
    /// <param name="days">Days to show, 1 to <see cref="MostShown"/>.</param>
    /// <param name="now">When it is asked.</param>
    /// <param name="asked">What is said of single days; null for nothing.</param>
    public static AreaPlan Of(Desk desk, string area, DateTimeOffset at, int days, DateTimeOffset now, DaysAsked? asked = null)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var whole = asked is { IsNone: false } ? Made(desk, area, at, now, asked) : desk.Planned(area, at, now, () => Made(desk, area, at, now, DaysAsked.None));
        return whole.First(days);
    }

    /// <summary>The one plan of a state of the book, an area and a moment: how many days are shown changes nothing in it.</summary>
    private static AreaPlan Made(Desk desk, string area, DateTimeOffset at, DateTimeOffset now, DaysAsked asked)
    {
        var today = AreaToday.Of(desk, area, at, now, asked.Dry);
        if (!today.HeightKnown) return new(today, NothingKnown.Plan(today.Date, MostShown));
        var plan = Make(desk, today, MostShown, now, asked);
        // A wish that takes longer is followed until it is reached, for a year at most.
        var year = today.Ledger.Wish.CutMm is not null && plan.Wish is { Earliest: null } or { Extrapolated: true };
        if (year) plan = Make(desk, today, PlanLimits.MostDays, now, asked);
        if (plan.Wish.CanMeetDate != false || !asked.IsNone) return new(today, plan);
        MowingPlan With(TurfWish wish) => Make(desk, today, year ? PlanLimits.MostDays : MostShown, now, asked, wish);
        return new(today, plan) { WithMoreDays = MoreDays.Of(today, plan.Wish.Earliest, With) };
    }

    /// <summary>Its first days; what follows from the whole (when the wish is reached, what it costs) stays.</summary>
    private AreaPlan First(int days)
    {
        if (days >= Plan.Days.Count) return this;
        var end = Today.Date.AddDays(days - 1);
        return this with { Plan = Plan with { Days = [.. Plan.Days.Take(days)], Notes = [.. Plan.Notes.Where(n => n.Date <= end)] } };
    }

    /// <summary>How many days are shown where none are named.</summary>
    public const int UsualDays = 28;

    /// <summary>The most days that are shown.</summary>
    public const int MostShown = 60;

    private static MowingPlan Make(Desk desk, AreaToday today, int days, DateTimeOffset now, DaysAsked asked, TurfWish? other = null)
    {
        var (ledger, wish, at) = (today.Ledger, other ?? today.Ledger.Wish, today.At);
        var n = Math.Max(days, PlanLimits.LeastSolvedDays);
        var traces = TurfFutures.Of(ledger.Belief, at, n, Futures, asked.Dry ? null : today.Waters, today.Days);
        // What was seen today beats what the weather says of today.
        var seen = AreaToday.Seen(DayLook.On(ledger, today.Date, at)).Any(s => s != "footprints stay");
        for (var s = 0; s < Futures; s++)
        {
            if (seen) traces.KeepOff[s, 0] = true;
            if (today.Wilting) traces.Wilting[s, 0] = true;
        }
        var cut = today.CutMm ?? (wish.CutMm ?? today.CanopyMm.Mean * 0.75, AreaDefaults.ToldCutSdMm, null);
        var cutMm = Math.Clamp(cut.Mean, LeastMm, MostMm);
        var used = Used(ledger, today);
        // Where no height is wished, it is the one that the machine is set to; raised by so much that only the third asked for it, the one of before.
        var raised = used.DaysSinceRaised is not null && cutMm > UsedHeight.Far * used.Mm;
        var wishMm = Math.Clamp(wish.CutMm ?? (raised || ledger.Track.Cuts.Count == 0 ? used.Mm : cutMm), LeastMm, MostMm);
        var minutes = Minutes(ledger);
        var free = PersonDays.Free(wish, today.Date, n);
        // Who asks on a usual day is there.
        if (free[0] == PersonDays.UsualDay && today.Date == ledger.Track.Area.LocalDate(now)) free[0] = 1;
        for (var d = 0; d < n; d++)
        {
            var date = today.Date.AddDays(d);
            if (asked.On.Contains(date)) free[d] = 1;
            else if (asked.Off.Contains(date)) free[d] = 0;
        }
        var problem = new PlanProblem
        {
            From = today.Date,
            Days = days,
            Traces = traces,
            CanopyMm = new(Math.Clamp(today.CanopyMm.Mean, 0.5, 400), Math.Min(today.CanopyMm.Sd, 90)),
            CeilingMm = ledger.Track.Area.CeilingMm,
            Stress = new(Math.Clamp(today.Stress.Mean, 0, StressSources.Severe), Math.Min(today.Stress.Sd, StressSources.Severe)),
            CutMm = new(cutMm, Math.Min(4, Math.Sqrt((cut.Sd * cut.Sd) + (AreaDefaults.CutMm * AreaDefaults.CutMm)))),
            UsedMm = Math.Clamp(used.Mm, LeastMm, MostMm),
            DaysSinceRaised = used.DaysSinceRaised,
            OverThirdOn = asked.OverThird,
            GreenBaseMm = ledger.Track.Base.At(at, today.CanopyMm.Mean) is { } b ? new(Math.Clamp(b.Mean, 0, 90), Math.Min(b.Sd, 9)) : null,
            WishMm = wishMm,
            WishBy = wish.ByDate,
            LowestMm = Math.Min(2, Math.Min(cutMm, wishMm)),
            HighestMm = Math.Max(25, Math.Max(cutMm, wishMm) + 5),
            Free = free,
            AwayBegins = PersonDays.AwayBegins,
            FreeMinutes = wish.MinutesADay is { } m ? [.. Enumerable.Repeat(m, n)] : [],
            MowingMinutes = minutes,
            Fixtures = wish.Fixtures,
            NoHeightChangeDays = wish.NoHeightChangeDays,
            MowingsSinceLowering = SinceLowering(ledger.Track),
            NoLoweringDays = NoLoweringDays(ledger, today),
            GrowingOn = GrowingMonths.On(today.Days, today.Date, n),
        };
        return MowingPlanner.Plan(problem);
    }

    /// <summary>What the turf is used to, with what it has said of the cuts since.</summary>
    /// <remarks>Never mown in the book: a height read after mowing, else the lowest that stood there lately.</remarks>
    private static UsedHeight Used(AreaLedger ledger, AreaToday today)
    {
        var offset = ledger.Belief.CutOffsetMm.Mean;
        var mown = ledger.Track.Cuts.Where(c => c.Mowing.At <= today.At).Select(c => (ledger.Track.Area.LocalDate(c.Mowing.At), c.CutMm + offset));
        if (UsedHeight.Of(mown, today.CanopyMm.Mean, today.Date) is { } told) return told;
        var after = ledger.Heard.LastOrDefault(e => e.Is(CanopyEntry.Kind) && e.At <= today.At && e[CanopyEntry.When] == "after");
        bool Lately(Entry e) => e.Is(CanopyEntry.Kind) && e.At <= today.At && (today.At - e.At).TotalDays <= PlanLimits.UsedDays;
        var heard = after is not null ? [after] : ledger.Heard.Where(Lately);
        var read = heard.Select(e => e[CanopyEntry.Mm]).Where(mm => mm is { Count: > 0 });
        return new(read.Select(mm => mm!.Average()).Append(today.CanopyMm.Mean).Min(), null);
    }

    /// <summary>Minutes of a usual mowing here: the middle of the last ones.</summary>
    private static double Minutes(AreaLedger ledger)
    {
        var hours = ledger.Track.Cuts.TakeLast(UsualOf).Select(c => c.Mowing[MowEntry.Hours]).OfType<double>().Order().ToList();
        return hours.Count == 0 ? UntoldMinutes : Math.Round(60 * hours[hours.Count / 2]);
    }

    /// <summary>Days until the turf has got over sand, verticutting or coring. Common practice, no source.</summary>
    private static int NoLoweringDays(AreaLedger ledger, AreaToday today)
    {
        var work = ledger.Heard.LastOrDefault(e => e.At <= today.At && e.Is(WorkEntry.Kind) && e[WorkEntry.What] is "topdress" or "verticut" or "aerate");
        return work is null ? 0 : Math.Max(0, ledger.Track.Area.LocalDate(work.At).DayNumber + AfterWorkDays - today.Date.DayNumber);
    }

    private static int? SinceLowering(AreaTrack track)
    {
        for (var i = track.Cuts.Count - 1; i > 0; i--)
        {
            if (track.Cuts[i].CutMm < track.Cuts[i - 1].CutMm - LoweredMm) return track.Cuts.Count - 1 - i;
        }
        // The first mowing of a book may have been a step down as well.
        return track.Cuts.Count > 0 ? track.Cuts.Count - 1 : null;
    }
}
