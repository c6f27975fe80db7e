namespace Closemown.Bench.Green;

/// <summary>Fixed weekdays, two as a rule, as far apart as the usual days allow.</summary>
internal sealed class CalendarRule(HeightRule rule, double startMm, int count = CalendarRule.Usual) : GreenRules(rule, startMm)
{
    /// <summary>Mowings a week.</summary>
    public const int Usual = 2;

    private DayOfWeek[]? fixedDays;

    protected override bool Wants(GreenDay today) => (fixedDays ??= Days(today.Weekdays)).Contains(today.Date.DayOfWeek);

    private DayOfWeek[] Days(IReadOnlyList<DayOfWeek> usual)
    {
        DayOfWeek[] best = [.. usual];
        if (count >= usual.Count) return best;
        var most = 0;
        foreach (var some in Choose(usual, 0, count))
        {
            if (Apart(some) is var apart && apart > most) (best, most) = ([.. some], apart);
        }
        return best;
    }

    /// <summary>Every way to take so many of the days, the earliest first.</summary>
    private static IEnumerable<List<DayOfWeek>> Choose(IReadOnlyList<DayOfWeek> usual, int from, int count)
    {
        if (count == 0) return [[]];
        return Enumerable.Range(from, usual.Count - from)
            .SelectMany(i => Choose(usual, i + 1, count - 1).Select(rest => (List<DayOfWeek>)[usual[i], .. rest]));
    }

    /// <summary>The least wait from one of the days to the next, around the week.</summary>
    private static int Apart(List<DayOfWeek> days) => days.Select((d, i) => (((int)days[(i + 1) % days.Count] - (int)d + 6) % 7) + 1).Min();
}
