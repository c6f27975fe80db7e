using System.Globalization;
using Closemown.Advice;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace Closemown.Calendars;

/// <summary>A plan's mowings as all-day events of a calendar file (RFC 5545).</summary>
public static class PlanCalendarFile
{
    /// <summary>The file's text.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="area">The area: with the date it names the event, so that a later plan's event of that day takes its place.</param>
    /// <param name="words">The person's words.</param>
    /// <param name="now">When it is made.</param>
    public static string Of(AreaPlan plan, string area, Phrasing words, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(area);
        ArgumentNullException.ThrowIfNull(words);
        var calendar = new Ical.Net.Calendar { ProductId = "-//Closemown//Mowing plan//EN" };
        foreach (var day in plan.Plan.Days.Where(d => d.Mow))
        {
            var next = day.Date.AddDays(1);
            calendar.Events.Add(new CalendarEvent
            {
                Uid = $"{Uri.EscapeDataString(area)}-{day.Date.ToString("yyyyMMdd", CultureInfo.InvariantCulture)}@closemown",
                DtStamp = new CalDateTime(now.UtcDateTime, "UTC"),
                Start = new CalDateTime(day.Date.Year, day.Date.Month, day.Date.Day),
                End = new CalDateTime(next.Year, next.Month, next.Day),
                Summary = $"Mow {area} at {words.Say(HeightSpeech.Mm(day.CutMm))}",
                Description = words.Say($"{string.Join(' ', PlanSpeech.StandOnIt)} {PlanSpeech.Why(day)}"),
            });
        }
        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }
}
