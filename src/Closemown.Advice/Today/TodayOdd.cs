using System.Globalization;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>Something unusual that still stands today: a reading not like this mower and not read again, turf out of its pattern lately, or an entry of days to come.</summary>
/// <param name="Id">The reading.</param>
/// <param name="Surprise">How odd it was, 0 to 1; null where it is no reading that is odd.</param>
/// <param name="Say">It in words.</param>
public sealed record TodayOdd(Guid Id, double? Surprise, string Say)
{
    public string? Unit { get; init; }

    public string? Area { get; init; }

    /// <summary>What is unusual: entries of days to come first, as all answers rest on them, then units.</summary>
    public static IReadOnlyList<TodayOdd> Of(Desk desk, IReadOnlyList<AreaPlan> plans, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(plans);
        var odd = new List<TodayOdd>();
        if (ToCome(desk, now) is { } ahead) odd.Add(ahead);
        foreach (var unit in desk.Units)
        {
            var track = desk.Track(unit);
            if (track.Memory.Unusual is not { } u) continue;
            var causes = track.Unusual.LastOrDefault(o => o.Entry.Id == u.Entry.Id)?.Explanations is { } e && ExplanationSpeech.Sentence(e) is { } said ? " " + said : "";
            odd.Add(new(u.Entry.Id, u.Surprise, $"The last {KindWords.Reading(u.Entry.Kind)} is not like this mower (about 1 in {Math.Max(2, Math.Round(1 / Math.Max(u.Surprise, 1e-6))).ToString("0", CultureInfo.InvariantCulture)}).{causes}") { Unit = unit });
        }
        foreach (var plan in plans)
        {
            if (TurfSpeech.Unusual(plan.Today).FirstOrDefault() is { } say) odd.Add(new(plan.Today.Ledger.Track.Unusual[^1].Entry.Id, plan.Today.Ledger.Track.Unusual[^1].Surprise, say) { Area = plan.Today.AreaName });
        }
        return odd;
    }

    /// <summary>Entries of more than a day ahead whose time nobody stands by: they count already, before all that is still to be read.</summary>
    private static TodayOdd? ToCome(Desk desk, DateTimeOffset now)
    {
        var ahead = desk.Standing.Where(e => e.At - now > TimeSpan.FromDays(1) && !e.Confirmed.Contains("at")).ToList();
        if (ahead.Count == 0) return null;
        var (first, day) = (ahead[0], ahead[0].At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        var say = ahead.Count == 1
            ? $"An entry ({KindWords.Done(first.Kind)}) is of {day}, which is to come. It counts already: take it out, or enter it again with its right time."
            : $"{ahead.Count} entries are of days to come, the first ({KindWords.Done(first.Kind)}) of {day}. They count already: take them out, or enter them again with their right times.";
        return new(first.Id, null, say) { Unit = first.Unit, Area = first.Unit is null ? first.Area : null };
    }
}
