using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The plan of an area's coming weeks, with what it is for.</summary>
/// <param name="Today">The area on the first day.</param>
/// <param name="Plan">The plan.</param>
public sealed record AreaPlan(AreaToday Today, MowingPlan Plan)
{
    /// <summary>The height wished, mm; null where none is.</summary>
    public double? WishMm => Today.Ledger.Wish.CutMm;

    private const int Futures = 200, UsualOf = 9;
    private const double UntoldMinutes = 30, LoweredMm = 0.1, LeastMm = 0.6, MostMm = 90;

    /// <summary>Makes the plan.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="area">The area.</param>
    /// <param name="at">The time of the first day.</param>
    /// <param name="days">Days asked for, 1 to <see cref="PlanLimits.MostDays"/>.</param>
    /// <param name="now">When it is asked.</param>
    /// <param name="asked">What is said of single days; null for nothing.</param>
    public static AreaPlan Of(Desk desk, string area, DateTimeOffset at, int days, DateTimeOffset now, DaysAsked? asked = null)
    {
        ArgumentNullException.ThrowIfNull(desk);
        // One plan for everyone who asks at that moment: how many days are shown changes nothing in it, up to the usual ones.
        var made = days <= UsualDays ? UsualDays : PlanLimits.MostDays;
        var whole = asked is { IsNone: false } ? Make(desk, area, at, made, now, asked) : desk.Planned(area, at, made, now, () => Make(desk, area, at, made, now, DaysAsked.None));
        return whole.First(days);
    }

    /// <summary>Its first days; what follows from the whole (when the wish is reached, what it costs) stays.</summary>
    private AreaPlan First(int days)
    {
        if (days >= Plan.Days.Count) return this;
        var end = Today.Date.AddDays(days - 1);
        return this with { Plan = Plan with { Days = [.. Plan.Days.Take(days)], Notes = [.. Plan.Notes.Where(n => n.Date <= end)] } };
    }

    /// <summary>How many days are planned where none are named.</summary>
    public const int UsualDays = 28;

    private static AreaPlan Make(Desk desk, string area, DateTimeOffset at, int days, DateTimeOffset now, DaysAsked asked)
    {
        var today = AreaToday.Of(desk, area, at);
        var (ledger, wish) = (today.Ledger, today.Ledger.Wish);
        var n = Math.Max(days, PlanLimits.LeastSolvedDays);
        var traces = TurfFutures.Of(ledger.Belief, at, n, Futures);
        // What was seen today beats what the weather says of today.
        var seen = AreaToday.Seen(AreaToday.LookOf(ledger, today.Date)).Any(s => s != "footprints stay");
        for (var s = 0; s < Futures; s++)
        {
            if (seen) traces.KeepOff[s, 0] = true;
            if (today.Wilting) traces.Wilting[s, 0] = true;
        }
        var cut = today.CutMm ?? (wish.CutMm ?? today.CanopyMm.Mean * 0.75, AreaDefaults.ToldCutSdMm, null);
        var cutMm = Math.Clamp(cut.Mean, LeastMm, MostMm);
        var kept = Kept(ledger, today.Date);
        // Where no height is wished, turf on the way down after overgrowth goes back to the one it was kept at.
        var wishMm = Math.Clamp(wish.CutMm ?? (kept is { DaysSinceComingDown: not null } way ? way.Mm : cutMm), LeastMm, MostMm);
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
            LastCutMm = kept is { } last ? Math.Clamp(last.Mm, LeastMm, MostMm) : null,
            GreenBaseMm = ledger.Track.Base.At(at, today.CanopyMm.Mean) is { } b ? new(Math.Clamp(b.Mean, 0, 90), Math.Min(b.Sd, 9)) : null,
            WishMm = wishMm,
            WishBy = wish.ByDate,
            LowestMm = Math.Min(2, Math.Min(cutMm, wishMm)),
            HighestMm = Math.Max(25, Math.Max(cutMm, wishMm) + 5),
            Free = free,
            FreeMinutes = wish.MinutesADay is { } m ? [.. Enumerable.Repeat(m, n)] : [],
            MowingMinutes = minutes,
            Fixtures = wish.Fixtures,
            NoHeightChangeDays = wish.NoHeightChangeDays,
            MowingsSinceLowering = SinceLowering(ledger.Track),
            DaysSinceComingDown = kept?.DaysSinceComingDown,
        };
        return new(today, MowingPlanner.Plan(problem));
    }

    /// <summary>The cut that is kept, with what the turf has said of the last one since.</summary>
    private static KeptCut? Kept(AreaLedger ledger, DateOnly today)
    {
        var offset = ledger.Belief.CutOffsetMm.Mean;
        return KeptCut.Of(ledger.Track.Cuts.Select(c => (ledger.Track.Area.LocalDate(c.Mowing.At), c.CutMm + offset)), ledger.Wish.CutMm, today);
    }

    /// <summary>Minutes of a usual mowing here: the middle of the last ones.</summary>
    private static double Minutes(AreaLedger ledger)
    {
        var hours = ledger.Track.Cuts.TakeLast(UsualOf).Select(c => c.Mowing.Number("hours")).OfType<double>().Order().ToList();
        return hours.Count == 0 ? UntoldMinutes : Math.Round(60 * hours[hours.Count / 2]);
    }

    private static int? SinceLowering(AreaTrack track)
    {
        for (var i = track.Cuts.Count - 1; i > 0; i--)
        {
            if (track.Cuts[i].CutMm < track.Cuts[i - 1].CutMm - LoweredMm) return track.Cuts.Count - 1 - i;
        }
        return null;
    }
}
