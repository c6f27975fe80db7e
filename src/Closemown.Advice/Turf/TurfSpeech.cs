using System.Globalization;
using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What is known of the turf, in sentences a person would say; {mm:…} stands for a height in their own units.</summary>
public static class TurfSpeech
{
    private const int FreshDays = 10, HeatDays = 5, LearnedFrom = 4;
    private const double HeatFelt = 0.6;
    private static readonly string[] Levels = ["no stress", "slight stress", "marked stress", "severe stress"];

    /// <summary>The sentences, the weightiest first.</summary>
    public static IReadOnlyList<string> Of(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        var says = new List<string>();
        if (t.Off.Count > 0) says.Add($"Keep off today: {string.Join(", ", t.Off)}.");
        says.Add(Height(t));
        if (t.HeightKnown && t.CutMm is { } cut && t.ShareIfMown is { } share)
            says.Add(share.P95 < 0.02 ? $"Mown now at {HeightSpeech.Near(cut.Mean)} almost nothing would come off."
                : $"Mown now at {HeightSpeech.Near(cut.Mean)} about {Percent(share.Mean)} % would come off; it is {Quantities.Chances.ToBe(share.OverThird)} more than a third.");
        says.Add(Stress(t));
        if (t.Wilting) says.Add("It wilts: water before mowing, and never lower now.");
        if (Water(t) is { } water) says.Add(water);
        if (Heat(t) is { } heat) says.Add(heat);
        if (Frost(t) is { } frost) says.Add(frost);
        if (NoForecast(t) is { } usual) says.Add(usual);
        if (t.WateredUntil && Watered(t) is { } watered) says.Add(watered);
        if (Teaches(t) is { } teaches) says.Add(teaches);
        return says;
    }

    /// <summary>How it stands, in the fewest sentences.</summary>
    public static IReadOnlyList<string> Standing(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        return [Height(t), Stress(t)];
    }

    /// <summary>Coming nights of frost; null where none is likely.</summary>
    public static string? Frost(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        return t.Frosts.Count == 0 ? null
            : $"Frost on the grass is possible in the night to {Day(t.Frosts[0].Date)} ({StepSpeech.Chance(t.Frosts[0].Probability)}){(t.Frosts.Count > 1 ? $" and in {(t.Frosts.Count - 1).ToString(CultureInfo.InvariantCulture)} more of the next {FrostOutlook.Nights}" : "")}.";
    }

    /// <summary>That the standing height is not known, and what to read; null where it is known.</summary>
    public static string? NotKnown(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        if (t.HeightKnown) return null;
        var weeks = t.News is { } news ? Math.Floor((t.At - news).TotalDays / 7) : 0;
        var since = t.News is null ? "it was never read or mown" : $"it was not read or mown for {(weeks < 104 ? $"{N(weeks)} weeks" : $"{N(Math.Floor(weeks / 52))} years")}";
        return $"What the turf stands at is not known: {since}. Read it at five spots before anything is mown.";
    }

    /// <summary>That no forecast is in the book, and how to give one; null where there is one.</summary>
    public static string? NoForecast(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        return t.ForecastKnown ? null
            : $"No forecast is in the book, so the coming days are taken as usual "
                + $"{(t.Ledger.Track.Days.Record.Count > 0 ? "here" : "for the latitude")}"
                + $"{Phrasing.Typed("; give tomorrow's with closemown add weather tomorrow 3..9 dry")}.";
    }

    /// <summary>How it is taken to be watered on; null where no habit shows.</summary>
    public static string? Watered(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        return t.Waters is not { } habit ? null
            : $"It is taken to be watered on as lately, {Water(habit.Mm)} about every "
                + $"{(habit.EveryDays < 1.5 ? "day" : $"{N(habit.EveryDays)} days")}{Phrasing.Typed("; without: closemown plan --dry")}.";
    }

    /// <summary>Heat that is forecast, and what to do before it; null where none is. Common practice, no source.</summary>
    public static string? Heat(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        var days = t.Ledger.Track.Days;
        for (var k = 0; k < HeatDays; k++)
        {
            if (days.On(t.Date.AddDays(k)) is not { Weather: { Read: not null } sky, Stress.Heat: >= HeatFelt }) continue;
            var when = k == 0 ? "today" : $"on {Day(t.Date.AddDays(k))}";
            return $"Heat {when} ({{degrees:{sky.TMaxC.ToString("R", CultureInfo.InvariantCulture)}}}): raise the cut by half a millimetre, or skip a mowing and roll in its place; a longer leaf shades its roots. Nothing is lowered in it.";
        }
        return null;
    }

    /// <summary>What would teach most about turf of which little was read; null where enough was.</summary>
    public static string? Teaches(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        return t.Ledger.Track.HeightReadings >= LearnedFrom || !t.HeightKnown ? null
            : "How fast it grows is hardly known yet. What teaches most: its height before and after one mowing, at five spots each; or the litres in the box.";
    }

    private static string N(double x) => x.ToString("0", CultureInfo.InvariantCulture);

    private static string Height(AreaToday t) => NotKnown(t) ?? $"The turf stands at about {HeightSpeech.Stands(t.CanopyMm.Mean)}, give or take {HeightSpeech.Stands(Math.Max(0.1, t.CanopyMm.Sd))}, and grows about {Per(t.GrowthMm.Mean)} a day.";

    private static string Stress(AreaToday t)
    {
        var level = Array.IndexOf(t.StressLevels, t.StressLevels.Max());
        return level == 0 ? "It shows no stress." : $"It is under {Levels[level]}{(Source(t) is { } source ? $", mostly {source}" : "")}{(t.Stress.Mean >= PlanLimits.StressedFrom ? ": no lowering" : "")}.";
    }

    /// <summary>When it wants water, and how much; null where none is wanted within the days looked at.</summary>
    public static string? Water(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        if (t.Water.On is not { } on) return null;
        var fill = $"about {Water(t.Water.Mm)} fill the root zone";
        var say = on == t.Date ? $"By the weather it wants water today: {fill}{(t.Ledger.Heard.Any(e => e.Is(WaterEntry.Kind)) ? "" : " (no watering is in the record)")}" : $"It will want water by {Day(on)}: {fill} then, if the rain comes as expected";
        return t.WateringEvenness is { } even ? $"{say}; give {Water(t.Water.GrossMm(even))} so that the driest quarter gets it too (by the catch cans, evenness {Phrasing.Number(even, "0.00")})." : say + ".";
    }

    /// <summary>The last reading out of the pattern, where it is fresh.</summary>
    public static IEnumerable<string> Unusual(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        if (t.Ledger.Track.Unusual.Count == 0 || t.Ledger.Track.Unusual[^1] is not { } odd || (t.At - odd.Entry.At).TotalDays > FreshDays) yield break;
        yield return $"Not like this turf: it stood {(odd.Under == true ? "lower" : "higher")} than its growth made likely ({StepSpeech.Chance(odd.Surprise)}). Likely: {string.Join("; ", odd.Likely.Select(c => Cause(c, odd.Under == true)))}.";
    }

    /// <summary>The rules behind them.</summary>
    public static IEnumerable<Rule> Rules(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        yield return TurfRules.Growth;
        yield return TurfRules.Et;
        yield return TurfRules.Water;
        yield return TurfRules.Feed;
        if (t.Day.RegulatorCDays is not null) yield return TurfRules.Regulator;
        if (DiseaseRisk.DollarSpotOf(t.Ledger.Track.Days, t.Date) is not null) yield return TurfRules.DollarSpot;
        if (t.Off.Count > 0 || t.Frosts.Count > 0) yield return TurfRules.Frost;
        if (t.ShareIfMown is not null) yield return TurfRules.Third;
        if (t.Ledger.Track.Base.Looks > 0) yield return TurfRules.Scalp;
    }

    /// <summary>A cause behind growth out of its pattern.</summary>
    public static string Cause(GrowthCause cause, bool under) => cause switch
    {
        GrowthCause.Drought => "the roots ran dry",
        GrowthCause.Cold => "cold",
        GrowthCause.Heat => "heat",
        GrowthCause.Hungry => "no nitrogen at work",
        GrowthCause.Fed => "fed lately",
        GrowthCause.Regulator => under ? "a growth regulator at work" : "a growth regulator that ran out",
        GrowthCause.MownUnsaid => "mown and not entered",
        GrowthCause.CutOtherwise => under ? "the last mowing cut lower than thought" : "the last mowing cut higher than thought",
        _ => "the reading itself",
    };

    /// <summary>What the stress mostly comes from; null where the weather says nothing.</summary>
    private static string? Source(AreaToday t)
    {
        var s = t.Day.Stress;
        return s.Greatest < 0.3 ? null : s.Greatest == s.Cold ? "cold" : s.Greatest == s.Heat ? "heat" : "drought";
    }

    /// <summary>A day as a person says it.</summary>
    public static string Day(DateOnly d) => d.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    private static string Per(double mm) => $"{{grown:{mm.ToString("R", CultureInfo.InvariantCulture)}}}";

    /// <summary>Water, to a whole millimetre or a tenth of an inch.</summary>
    private static string Water(double mm) => $"{{water:{Math.Round(mm).ToString(CultureInfo.InvariantCulture)}}}";

    private static string Percent(double share) => Math.Round(100 * share).ToString(CultureInfo.InvariantCulture);
}
