using System.ComponentModel;
using System.Globalization;
using Closemown.Advice;
using Closemown.Calendars;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Web;

/// <summary>The mowings of the coming weeks as a calendar file.</summary>
internal static class PlanCalendarEndpoint
{
    private const int Days = 28;

    public static void MapPlanCalendar(this IEndpointRouteBuilder app) =>
        app.MapGet("/plan.ics", File).WithName("plan-calendar").WithSummary("The mowings of the coming four weeks as a calendar file (RFC 5545).")
            .WithDescription("All-day events; a later plan's event of the same area and day takes the place of an earlier one.")
            .WithMetadata(new ForPrograms()).Produces<string>(StatusCodes.Status200OK, "text/calendar").Produces<string>(StatusCodes.Status400BadRequest, "application/json").Produces<string>(StatusCodes.Status401Unauthorized, "application/json");

    private static async Task File(HttpContext http, Workshop workshop, WritingStyle style, TimeProvider clock, [Description("the turf area; may be left out while there is only one")] string? area, [Description("days off, 2026-05-03, with commas")] string? daysOff)
    {
        var off = new HashSet<DateOnly>();
        foreach (var text in (daysOff ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                await http.Refuse(StatusCodes.Status400BadRequest, Answering.Bad("daysOff", text, "Write days as 2026-05-03, with commas between."));
                return;
            }
            off.Add(day);
        }
        var (file, name) = await workshop.LookUp(talk =>
        {
            var areas = talk.Desk.Areas;
            var one = string.IsNullOrEmpty(area) ? areas.Count == 1 ? areas.First() : null : areas.Contains(area) ? area : null;
            return one is null ? (null, string.Join(", ", areas)) : (PlanCalendarFile.Of(AreaPlan.Of(talk.Desk, one, talk.AskedAt, Days, talk.AskedAt, off), one, new Phrasing(style), clock.GetUtcNow()), one);
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
}
