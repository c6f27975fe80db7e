using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What was seen on the turf and what the weather makes likely behind it.</summary>
/// <param name="Seen">What was seen.</param>
/// <param name="Likely">The likely cause.</param>
/// <param name="Why">What speaks for it.</param>
public sealed record LookCause(string Seen, string Likely, string Why);

/// <summary>Causes behind what was seen last: the season comes before the sign. Common practice, no source.</summary>
public static class LookCauses
{
    private const int Back = 5, TipsDays = 3, WetDays = 2;
    private const double Cold = 0.3, WarmC = 18, CoolC = 14, ColdNightC = 2, LittleGrowth = 0.25, WetMm = 1;
    private const string Doctor = "the label, local law and licensed practice decide about any treatment";

    /// <summary>Causes, the likeliest first; empty where nothing out of the ordinary was seen in the last days.</summary>
    public static IReadOnlyList<LookCause> Of(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        var track = t.Ledger.Track;
        if (DayLook.Last(t.Ledger, t.At) is not { } look || look.Date < t.Date.AddDays(-Back)) return [];
        var days = Enumerable.Range(0, Back).Select(k => track.Days.On(look.Date.AddDays(-k))).ToList();
        var causes = new List<LookCause>();
        if (look[LookEntry.Colour] is { } colour) causes.AddRange(OfColour(colour, new(days, track.Area, look)));
        if (look[LookEntry.Tips] is "white" or "ragged" && track.LastMowing is { } mown && (look.At - mown.At).TotalDays <= TipsDays)
        {
            causes.Add(new(look[LookEntry.Tips] + " tips", "a blunt edge or a wide gap", "a day or two after mowing: feel and paper at the bench"));
            causes.Add(new(look[LookEntry.Tips] + " tips", "wet grass, seed heads or drought", "these mimic a blunt edge"));
        }
        if (look[LookEntry.ScalpPct] is > 0) causes.Add(new("scalped", "cut below the green base", "puffy or soft turf, or a step down too fast: raise, then come down in steps"));
        return causes;
    }

    private static IEnumerable<LookCause> OfColour(string colour, Conditions c)
    {
        switch (colour)
        {
            case "purple" when c.Cold || c.Winter:
                yield return new("purple", "cold", "from autumn to spring, after cold nights, purple is mostly cold and passes with warmth");
                yield return new("purple", "phosphorus (rarely)", "only a soil test tells");
                break;
            case "purple":
                yield return new("purple", "phosphorus, or the kind of grass", "it is warm: a soil test tells");
                break;
            case "blue-grey" when c.Dry && c.MeanC >= CoolC:
                yield return new("blue-grey", "drought today", "warm weather, and leaves that have lost their spring: water before mowing, do not lower");
                break;
            case "blue-grey":
                yield return new("blue-grey", "frost or wet leaves", "it is not warm: look again at noon");
                break;
            case "yellow" or "pale":
                if (c.LittleGrows) yield return new(colour, "cold", "little grows at this warmth, so little green is made: feed waits for growth");
                if (c.NitrogenGm2 < 0.3) yield return new(colour, "hungry", "no nitrogen is at work by the record");
                else if (!c.LittleGrows) yield return new(colour, "wet roots", "nitrogen is at work by the record");
                break;
            case "patches" when c.Winter && c.Wet:
                yield return new("patches", "disease", $"in cool wet months patches are a disease first: look for a rim in the morning dew ({Doctor})");
                yield return new("patches", "wear, or scalped high spots", "where people walk, or where the mower turns");
                break;
            case "patches" when c.Dry && c.MeanC >= CoolC:
                yield return new("patches", "dry spots", "the root zone is dry by the record, and water runs off some spots");
                yield return new("patches", "disease", $"look for a rim in the morning dew ({Doctor})");
                break;
            case "patches":
                yield return new("patches", "disease", $"look for a rim in the morning dew ({Doctor})");
                yield return new("patches", "dry spots, or spilt fuel or feed", "dig a hand deep: dry or not");
                break;
            case "straw" when c.RootsDry && c.MeanC >= CoolC:
                yield return new("straw", "drought", "the root zone ran dry by the record");
                break;
            case "straw" when c.Winter:
                yield return new("straw", "dead leaf after cold", "it grows out with warmth");
                yield return new("straw", "scalped", "look whether the green base shows");
                break;
            case "straw":
                yield return new("straw", "scalped, or dead leaf", "look whether the green base shows");
                break;
        }
    }

    /// <summary>The weather of the days before a look.</summary>
    private readonly record struct Conditions(List<TurfDay> Days, TurfArea Area, DayLook Look)
    {
        public double MeanC => Days.Average(d => d.Weather.MeanC);

        public bool Cold => Days.Any(d => d.Weather.TMinC < ColdNightC) || Days.Average(d => d.Stress.Cold) > LookCauses.Cold;

        public bool LittleGrows => Days.Average(d => d.Potential) < LittleGrowth;

        public bool Wet => Look[LookEntry.Wet] == true || Days.Count(d => d.Weather.RainMm > WetMm) >= WetDays || Days.Any(d => d.DrainedMm > 0);

        public bool Dry => Days[0].Weather.MeanC >= WarmC || Days[0].Ks < 0.9 || Look[LookEntry.Footprints] == true;

        public bool RootsDry => Days.Min(d => d.Ks) < 0.6;

        public double NitrogenGm2 => Days[0].NitrogenGm2;

        /// <summary>From autumn to spring.</summary>
        public bool Winter
        {
            get
            {
                var month = Area.Latitude < 0 ? ((Look.Date.Month + 5) % 12) + 1 : Look.Date.Month;
                return month is >= 10 or <= 4;
            }
        }
    }
}
