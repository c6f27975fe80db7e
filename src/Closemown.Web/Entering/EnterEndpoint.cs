using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pages;
using Closemown.Pipe;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Closemown.Web;

/// <summary>Takes an entry from a form: with script and without.</summary>
internal static class EnterEndpoint
{
    public static void MapEnter(this IEndpointRouteBuilder app) => app.MapPost("/enter", Take).BeforeThePage().ExcludeFromDescription();

    private static async Task<IResult> Take(HttpContext http, IAntiforgery forms, Workshop workshop, VisitorLook look, FormInHand inHand)
    {
        if (await FormBody.Read(http) is not { } body) return Results.Empty;
        var form = new EnteredForm(body);
        var back = LocalPath.Of(form["back"]);
        if (back is null) return Refused(http, form, inHand, [new(LocalPath.Elsewhere, [])]);
        if (!await forms.IsRequestValidAsync(http)) return Refused(http, form, inHand, [new(FormBody.Stale, [])]);
        var today = EntryTime.TryRead(form["at"] ?? "", out var at) ? at : workshop.AskedAt;
        if (new FormReader(form, look.WritingStyle, DateOnly.FromDateTime(today.DateTime)).Read(out var faults) is not { } entry) return Refused(http, form, inHand, faults);
        SayWho(entry, look);
        // A correction stays at the time of what it corrects.
        if (workshop.TimeOfTheBook && !entry.ContainsKey("voids")) ByTheBook(workshop, entry);
        var answer = JsonNode.Parse(await workshop.Say(Conversation.Text(entry), http.RequestAborted))!.AsObject();
        if (!(bool)answer["ok"]!) return Refused(http, form, inHand, [.. Faults(answer, form)]);
        var id = Guid.Parse((string)answer["id"]!);
        if (!WantsJson(http.Request))
        {
            http.SeeOther(LocalPath.With(back, id));
            return Results.Empty;
        }
        var told = await workshop.Tell(id, look.WritingStyle, http.RequestAborted);
        answer["said"] = told?.Said;
        if (told?.OddOneIn is { } odd) answer["oddOneIn"] = odd;
        answer["back"] = back;
        return Json(answer, StatusCodes.Status200OK);
    }

    /// <summary>Who enters here, where the form says nothing of it. A correction says who read it, not who mends it.</summary>
    private static void SayWho(JsonObject entry, VisitorLook look)
    {
        if (look.By is { } by && !entry.ContainsKey("by") && (!entry.ContainsKey("voids") || (string?)entry["kind"] == "void")) entry["by"] = by;
    }

    /// <summary>In an invented book, whose time is its own, what the visitor's clock says is left out; sent twice it stays one entry.</summary>
    private static void ByTheBook(Workshop workshop, JsonObject entry)
    {
        entry.Remove("at");
        if (Guid.TryParse((string?)entry["id"], out var id) && workshop.At(id) is { } at) entry["at"] = EntryTime.Write(at);
    }

    private static IEnumerable<FormFault> Faults(JsonObject answer, EnteredForm form) =>
        (answer["errors"] as JsonArray ?? [answer["error"]!.DeepClone()]).Select(e => new FormFault(new((string)e!["code"]!, FormReader.InForm(form, (string)e["field"]!), (string)e["message"]!, (string)e["remedy"]!), []));

    private static IResult Refused(HttpContext http, EnteredForm form, FormInHand inHand, IReadOnlyList<FormFault> faults)
    {
        if (WantsJson(http.Request)) return Json(FaultJson(faults), StatusCodes.Status400BadRequest);
        inHand.Form = Mending.Of(form, faults);
        return new RazorComponentResult<App> { StatusCode = StatusCodes.Status400BadRequest };
    }

    private static JsonObject FaultJson(IReadOnlyList<FormFault> faults)
    {
        var answer = Conversation.Refused([.. faults.Select(f => f.Fault)]);
        AddChoices(answer["error"]!, faults[0]);
        for (var i = 0; i < (answer["errors"] as JsonArray ?? []).Count; i++) AddChoices(answer["errors"]![i]!, faults[i]);
        return answer;
    }

    private static void AddChoices(JsonNode error, FormFault fault)
    {
        if (fault.Choices.Count > 0) error["choices"] = new JsonArray([.. fault.Choices.Select(c => (JsonNode)new JsonObject { ["instead"] = c.Instead, ["written"] = c.Written, ["reading"] = c.Reading })]);
    }

    private static IResult Json(JsonObject answer, int status) => Results.Text(Conversation.Text(answer), JsonBody.ContentType, statusCode: status);

    private static bool WantsJson(HttpRequest request) => request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase);
}
