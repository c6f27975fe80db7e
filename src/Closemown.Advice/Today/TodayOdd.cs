using System.Globalization;

namespace Closemown.Advice;

/// <summary>Something unusual that still stands today: a reading not like this mower and not read again, or turf out of its pattern lately.</summary>
/// <param name="Id">The reading.</param>
/// <param name="Surprise">How odd it was, 0 to 1.</param>
/// <param name="Say">It in words.</param>
public sealed record TodayOdd(Guid Id, double Surprise, string Say)
{
    public string? Unit { get; init; }

    public string? Area { get; init; }

    /// <summary>What is unusual, units first.</summary>
    public static IReadOnlyList<TodayOdd> Of(Desk desk, IReadOnlyList<AreaPlan> plans)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(plans);
        var odd = new List<TodayOdd>();
        foreach (var unit in desk.Units)
        {
            var track = desk.Track(unit);
            if (track.Memory.Unusual is not { } u) continue;
            var causes = track.Unusual.LastOrDefault(o => o.Entry.Id == u.Entry.Id)?.Explanations is { } e && ExplanationSpeech.Sentence(e) is { } said ? " " + said : "";
            odd.Add(new(u.Entry.Id, u.Surprise, $"The last {u.Entry.Kind.Name} is not like this mower (about 1 in {Math.Max(2, Math.Round(1 / Math.Max(u.Surprise, 1e-6))).ToString("0", CultureInfo.InvariantCulture)}).{causes}") { Unit = unit });
        }
        foreach (var plan in plans)
        {
            if (TurfSpeech.Unusual(plan.Today).FirstOrDefault() is { } say) odd.Add(new(plan.Today.Ledger.Track.Unusual[^1].Entry.Id, plan.Today.Ledger.Track.Unusual[^1].Surprise, say) { Area = plan.Today.AreaName });
        }
        return odd;
    }
}
