using System.ComponentModel;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Closemown.Advice;
using Closemown.Calendars;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Web;

/// <summary>The mowings of the coming weeks as a calendar file.</summary>
internal static class PlanCalendarEndpoint
{
    private const int Span = 28;

    public static void MapPlanCalendar(this IEndpointRouteBuilder app) =>
        app.MapGet("/plan.ics", File).WithName("plan-calendar").WithSummary("The mowings of the coming four weeks as a calendar file (RFC 5545).")
            .WithDescription("All-day events; a later plan's event of the same area and day takes the place of an earlier one.")
            .WithMetadata(new ForPrograms()).Produces<string>(StatusCodes.Status200OK, "text/calendar").Produces<string>(StatusCodes.Status400BadRequest, "application/json").Produces<string>(StatusCodes.Status401Unauthorized, "application/json");

    private static async Task File(HttpContext http, Workshop workshop, WritingStyle style, TimeProvider clock, [Description("the turf area; may be left out while there is only one")] string? area, [Description("days off, 2026-05-03, with commas")] string? daysOff, [Description("days on which someone is there whatever the usual days, as daysOff")] string? daysOn)
    {
        if (!Days(daysOff, "daysOff", out var off, out var fault) || !Days(daysOn, "daysOn", out var on, out fault) || (fault = DaysAsked.Both(off, on)) is not null)
        {
            await http.Refuse(StatusCodes.Status400BadRequest, fault);
            return;
        }
        // A calendar has no place to say that it rests on half a book.
        if (workshop.Damage is { } damage)
        {
            await http.Refuse(StatusCodes.Status503ServiceUnavailable, new("book", "", damage.Warning, damage.Remedy));
            return;
        }
        var (file, name) = await workshop.LookUp(talk =>
        {
            var areas = talk.Desk.Areas;
            var one = string.IsNullOrEmpty(area) ? areas.Count == 1 ? areas.First() : null : areas.Contains(area) ? area : null;
            return one is null ? (null, string.Join(", ", areas)) : (PlanCalendarFile.Of(AreaPlan.Of(talk.Desk, one, AreaToday.Moment(talk.Desk, one, talk.AskedAt), Span, talk.AskedAt, new(off, on, DaysAsked.None.OverThird)), one, new Phrasing(style), clock.GetUtcNow()), one);
        }, http.RequestAborted);
        if (file is null)
        {
            await http.Refuse(StatusCodes.Status400BadRequest, new(FaultCodes.Missing, "area", "The address does not say which area of the book.", name.Length > 0 ? $"Add ?area= and one of {name}." : "The book names no area yet."));
            return;
        }
        http.Response.ContentType = "text/calendar; charset=utf-8";
        http.Response.Headers.ContentDisposition = "attachment; filename=\"mowing.ics\"";
        await http.Response.WriteAsync(file, http.RequestAborted);
    }

    private static bool Days(string? told, string name, out HashSet<DateOnly> days, [NotNullWhen(false)] out EntryFault? fault)
    {
        (days, fault) = ([], null);
        foreach (var text in (told ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                days.Add(day);
                continue;
            }
            fault = Answering.Bad(name, text, "Write days as 2026-05-03, with commas between.");
            return false;
        }
        return true;
    }
}
