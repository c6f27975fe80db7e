using Closemown.Advice;
using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>The area whose weather is meant.</summary>
internal static class WeatherAreas
{
    /// <summary>The one named, or the only one; an unknown name with near misses is questioned only where areas are known.</summary>
    public static TurfArea Of(Call call, Desk desk)
    {
        var name = call.Parsed.GetValue(CommonOptions.Area);
        if (name is null)
        {
            name = desk.Areas.Count switch
            {
                0 => "turf",
                1 => desk.Areas.First(),
                _ => throw CliFault.Refused($"The book has several areas: {string.Join(", ", desk.Areas)}.", "Say which with --area NAME."),
            };
        }
        else AreaTyped.Check(desk, name);
        var area = TurfArea.Of(name, desk.Standing.Where(e => e.Is(AreaEntry.Kind) && e.Area == name));
        if (area.Zone is { } zone && !CivilDay.Knows(zone))
        {
            var near = Spelling.Nearest(zone, CivilDay.Names);
            throw CliFault.Refused($"The area's zone \"{Spelling.Clip(zone)}\" is not known.", near is null ? "Enter one like Europe/London: closemown add area --zone Europe/London" : $"Did you mean \"{near}\"? closemown add area {name} --zone {near}");
        }
        return area;
    }
}
