using System.ComponentModel;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Web;

/// <summary>The .json twin of each page: the answer of the pipe to one question.</summary>
internal static class TwinEndpoints
{
    public static void MapTwins(this IEndpointRouteBuilder app)
    {
        Twin(app, "today", (HttpContext http, Workshop workshop) => Answer(http, workshop, "today"), "The one thing to do now, what comes next, what is unusual.");
        Twin(app, "steel", (HttpContext http, Workshop workshop, [Description("the cutting unit; may be left out while there is only one")] string? unit) =>
            Answer(http, workshop, "steel", ("unit", unit)), "Gap, edges and what is learned of a cutting unit.");
        Twin(app, "height", (HttpContext http, Workshop workshop, string? unit, [Description("the turf area")] string? area, [Description("a bench height to tell of, mm")] string? benchMm, [Description("a cut wished for, mm")] string? cutMm, [Description("true when it is wet")] string? wet) =>
            Answer(http, workshop, "height", ("unit", unit), ("area", area), ("benchMm", benchMm), ("cutMm", cutMm), ("wet", wet)), "Bench height, cut height, and what to set.");
        Twin(app, "turf", (HttpContext http, Workshop workshop, [Description("the turf area; may be left out while there is only one")] string? area, [Description("a day, 2026-05-03; else today")] string? date) =>
            Answer(http, workshop, "turf", ("area", area), ("date", date)), "What an area stands at, growth, stress, water, frost.");
        Twin(app, "plan", (HttpContext http, Workshop workshop, string? area, [Description("the first day, 2026-05-03; else today")] string? from, [Description("how many days, 1 to 60; else 28")] string? days, [Description("days off, 2026-05-03, with commas")] string? daysOff, [Description("days on which someone is there whatever the usual days, as daysOff")] string? daysOn) =>
            Answer(http, workshop, "plan", ("area", area), ("from", from), ("days", days), ("daysOff", daysOff), ("daysOn", daysOn)), "The mowings of the coming days.");
    }

    private static void Twin(IEndpointRouteBuilder app, string ask, Delegate answer, string says) =>
        app.MapGet($"/{ask}.json", answer).WithName(ask).WithSummary(says).WithDescription($"The answer of the pipe to {{\"ask\":\"{ask}\"}}; docs/entries.md has its shape.")
            .WithMetadata(new ForPrograms()).Produces<JsonObject>().Produces<JsonObject>(StatusCodes.Status400BadRequest).Produces<JsonObject>(StatusCodes.Status401Unauthorized);

    private static Task Answer(HttpContext http, Workshop workshop, string ask, params ReadOnlySpan<(string Name, string? Value)> told)
    {
        var question = new JsonObject { ["ask"] = ask };
        foreach (var (name, value) in told)
        {
            if (!string.IsNullOrEmpty(value)) question[name] = Typed(name, value);
        }
        return http.Answer(workshop, question);
    }

    /// <summary>Numbers and flags as such; what is none stays text, and the answer says what is wrong with it.</summary>
    private static JsonNode Typed(string name, string value) => name switch
    {
        "benchMm" or "cutMm" or "days" when double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) => JsonValue.Create(number),
        "daysOff" or "daysOn" => new JsonArray([.. value.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(d => (JsonNode)d)]),
        "wet" when value is "true" or "false" => JsonValue.Create(value == "true"),
        _ => JsonValue.Create(value),
    };
}

/// <summary>Answers questions over the web.</summary>
internal static class Answering
{
    private static readonly byte[] Ok = "{\"ok\":true"u8.ToArray();

    /// <summary>Writes the workshop's answer: 200, or 400 where the question has a fault.</summary>
    public static async Task Answer(this HttpContext http, Workshop workshop, JsonObject question)
    {
        var answer = await workshop.Ask(Conversation.Text(question), http.RequestAborted);
        http.Response.StatusCode = answer.AsSpan().StartsWith(Ok) ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest;
        http.Response.ContentType = JsonBody.ContentType;
        http.Response.ContentLength = answer.Length;
        if (!HttpMethods.IsHead(http.Request.Method)) await http.Response.Body.WriteAsync(answer, http.RequestAborted);
    }

    /// <summary>A fault in a parameter.</summary>
    public static EntryFault Bad(string field, string value, string remedy) => new(FaultCodes.BadValue, field, $"{Spelling.Clip(value)} cannot be.", remedy);
}
