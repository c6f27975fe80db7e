using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The plan of an area's coming weeks, with what it is for.</summary>
/// <param name="Today">The area on the first day.</param>
/// <param name="Plan">The plan; days beyond those asked are looked at but not told.</param>
/// <param name="Told">Days asked for.</param>
/// <param name="Minutes">Minutes a mowing takes; null where not known.</param>
public sealed record AreaPlan(AreaToday Today, MowingPlan Plan, int Told, double? Minutes)
{
    /// <summary>Days looked at, at the least: a short look ahead puts off what a longer one does today.</summary>
    public const int LeastDays = 24;

    /// <summary>Days asked for, at the most.</summary>
    public const int MostDays = 60;

    private const int Traces = 200, UsualOf = 9;
    private const double LoweredMm = 0.1;

    /// <summary>Makes the plan.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="area">The area.</param>
    /// <param name="at">The time of the first day.</param>
    /// <param name="days">Days asked for, 1 to 60.</param>
    public static AreaPlan Of(Desk desk, string area, DateTimeOffset at, int days)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var today = AreaToday.Of(desk, area, at);
        var (ledger, wish) = (today.Ledger, today.Ledger.Wish);
        var n = Math.Clamp(days, LeastDays, MostDays);
        var traces = PlanTraces.Of(ledger.Belief, at, n, Traces);
        var cut = today.CutMm ?? (wish.CutMm ?? today.CanopyMm.Mean * 0.75, AreaDefaults.ToldCutSdMm, null);
        var seen = AreaToday.Seen(AreaToday.LookOf(ledger, today.Date)).Any(s => s != "footprints stay");
        for (var s = 0; s < Traces; s++)
        {
            if (seen) traces.Off[s * n] = true;
            if (today.Wilting) traces.Wilting[s * n] = true;
        }
        var noise = new Estimation.SeededNormal(97);
        var minutes = MinutesOf(ledger);
        var problem = new PlanProblem
        {
            First = today.Date,
            Days = n,
            Traces = Traces,
            GrowthMm = traces.GrowthMm,
            Off = traces.Off,
            Wilting = traces.Wilting,
            Stress = traces.Stress,
            CanopyMm = traces.CanopyMm,
            CutOffMm = [.. Enumerable.Range(0, Traces).Select(_ => cut.Sd * noise.Next())],
            CutMm = Math.Max(1, cut.Mean),
            WishMm = wish.CutMm ?? Math.Max(1, cut.Mean),
            By = wish.ByDate,
            MowingsSinceLowering = SinceLowering(ledger.Track),
            Free = PersonDays.Free(wish, today.Date, n, minutes),
            NoChange = PersonDays.NoChange(wish, today.Date, n),
            Fixture = PersonDays.Fixtures(wish, today.Date, n),
            BaseMm = ledger.Track.Base.Mm,
            KeptMm = ledger.Track.Base.KeptMm ?? today.CanopyMm.Mean,
        };
        return new(today, MowingPlanner.Plan(problem), days, minutes);
    }

    /// <summary>Minutes of a usual mowing here: the middle of the last ones.</summary>
    private static double? MinutesOf(AreaLedger ledger)
    {
        var hours = ledger.Track.Cuts.TakeLast(UsualOf).Select(c => c.Mowing.Number("hours")).OfType<double>().Order().ToList();
        return hours.Count == 0 ? null : 60 * hours[hours.Count / 2];
    }

    private static int SinceLowering(AreaTrack track)
    {
        for (var i = track.Cuts.Count - 1; i > 0; i--)
        {
            if (track.Cuts[i].CutMm < track.Cuts[i - 1].CutMm - LoweredMm) return track.Cuts.Count - 1 - i;
        }
        return PlanRules.MowingsApart;
    }
}
