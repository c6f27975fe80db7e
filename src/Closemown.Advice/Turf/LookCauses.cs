using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What was seen on the turf and what the weather makes likely behind it.</summary>
/// <param name="Seen">What was seen.</param>
/// <param name="Likely">The likely cause.</param>
/// <param name="Why">What speaks for it.</param>
public sealed record LookCause(string Seen, string Likely, string Why);

/// <summary>Causes behind the last look: common practice, no source.</summary>
public static class LookCauses
{
    private const int Back = 5, TipsDays = 3;
    private const double Cold = 0.3, WarmC = 18;

    /// <summary>Causes, the likeliest first; empty where nothing out of the ordinary was seen in the last days.</summary>
    public static IReadOnlyList<LookCause> Of(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        var track = t.Ledger.Track;
        if (track.LastLook is not { } look || track.Area.LocalDate(look.At) < t.Date.AddDays(-Back)) return [];
        var date = track.Area.LocalDate(look.At);
        var days = Enumerable.Range(0, Back).Select(k => track.Days.On(date.AddDays(-k))).ToList();
        var causes = new List<LookCause>();
        switch (look.Word("colour"))
        {
            case "purple":
                var cold = days.Any(d => d.Weather.TMinC < 2) || days.Average(d => d.Stress.Cold) > Cold || Season(track.Area, date);
                causes.Add(cold ? new("purple", "cold", "from autumn to spring, after cold nights, purple is mostly cold and passes with warmth") : new("purple", "phosphorus, or the kind of grass", "it is warm: a soil test tells"));
                if (cold) causes.Add(new("purple", "phosphorus (rarely)", "only a soil test tells"));
                break;
            case "blue-grey":
                causes.Add(days[0].Weather.MeanC >= WarmC || days[0].Ks < 0.9 || look.Flag("footprints") == true
                    ? new("blue-grey", "drought today", "warm weather, and leaves that have lost their spring: water before mowing, do not lower")
                    : new("blue-grey", "frost or wet leaves", "it is not warm: look again at noon"));
                break;
            case "yellow" or "pale":
                causes.Add(days[0].NitrogenGm2 < 0.3 ? new(look.Word("colour")!, "hungry", "no nitrogen is at work by the record") : new(look.Word("colour")!, "wet roots, or slow growth in cold", "nitrogen is at work by the record"));
                break;
            case "straw":
                causes.Add(days.Min(d => d.Ks) < 0.6 ? new("straw", "drought", "the root zone ran dry by the record") : new("straw", "scalped, or dead leaf after cold", "look whether the green base shows"));
                break;
        }
        if (look.Word("tips") is "white" or "ragged" && track.LastMowing is { } mown && (look.At - mown.At).TotalDays <= TipsDays)
        {
            causes.Add(new(look.Word("tips") + " tips", "a blunt edge or a wide gap", "a day or two after mowing: feel and paper at the bench"));
            causes.Add(new(look.Word("tips") + " tips", "wet grass, seed heads or drought", "these mimic a blunt edge"));
        }
        if (look.Number("scalpPct") is > 0) causes.Add(new("scalped", "cut below the green base", "puffy or soft turf, or a step down too fast: raise, then come down in steps"));
        return causes;
    }

    private static bool Season(TurfArea area, DateOnly date)
    {
        var month = area.Latitude < 0 ? ((date.Month + 5) % 12) + 1 : date.Month;
        return month is >= 10 or <= 4;
    }
}
