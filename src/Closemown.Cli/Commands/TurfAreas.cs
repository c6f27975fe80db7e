using System.CommandLine;
using System.Globalization;
using Closemown.Advice;

namespace Closemown.Cli;

/// <summary>The area and the time a question about turf means.</summary>
internal static class TurfAreas
{
    /// <summary>The one named, or the only one.</summary>
    public static string Of(Call call, Desk desk)
    {
        var name = call.Parsed.GetValue(CommonOptions.Area);
        AreaTyped.Check(desk, name);
        return name ?? desk.Areas.Count switch
        {
            0 => throw CliFault.Refused("The book names no turf area yet.", $"Start with {call.Around.Called} add area green --grass cool --m2 200 --lat 51.5, then a mowing, or what it stands at: add canopy 5mm."),
            1 => desk.Areas.First(),
            _ => throw CliFault.Refused($"The book has several areas: {string.Join(", ", desk.Areas)}.", "Say which with --area NAME."),
        };
    }

    /// <summary>The day it is there.</summary>
    public static DateOnly Today(OpenBook open, string area) => AreaToday.Of(open.Desk, area, open.Talk.AskedAt).Date;

    /// <summary>Now, or noon of the day told.</summary>
    public static DateTimeOffset At(Call call, OpenBook open, string area, Option<string> day)
    {
        if (call.Parsed.GetValue(day) is not { } text) return AreaToday.Moment(open.Desk, area, open.Talk.AskedAt);
        if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) throw CliFault.Usage($"{day.Name} {text} is no date.", "Write it like 2026-05-03.");
        return AreaToday.AtNoon(open.Desk, area, date, open.Talk.AskedAt);
    }
}
