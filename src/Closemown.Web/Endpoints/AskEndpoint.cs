using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Web;

/// <summary>One question, any that the pipe knows.</summary>
internal static class AskEndpoint
{
    public static void MapAsk(this IEndpointRouteBuilder app) =>
        app.MapPost("/ask", Ask).WithName("ask").WithSummary("Asks one question, any that the pipe knows.").WithDescription("The body is one object, {\"ask\":\"next\",…}; docs/questions.md lists the questions.")
            .Accepts<JsonObject>("application/json").WithMetadata(new ForPrograms())
            .Produces<JsonObject>().Produces<JsonObject>(StatusCodes.Status400BadRequest).Produces<JsonObject>(StatusCodes.Status401Unauthorized)
            .Produces<JsonObject>(StatusCodes.Status403Forbidden).Produces<JsonObject>(StatusCodes.Status413PayloadTooLarge).Produces<JsonObject>(StatusCodes.Status415UnsupportedMediaType);

    private static async Task Ask(HttpContext http, Workshop workshop)
    {
        JsonNode? body;
        try
        {
            body = await JsonNode.ParseAsync(http.Request.Body, documentOptions: new JsonDocumentOptions { MaxDepth = 16 }, cancellationToken: http.RequestAborted);
        }
        catch (JsonException)
        {
            await http.Refuse(StatusCodes.Status400BadRequest, new(FaultCodes.BadJson, "", "The body is no JSON.", "Send one object, {\"ask\":\"today\"}."));
            return;
        }
        if (body is not JsonObject question || !question.ContainsKey("ask") || question.ContainsKey("kind"))
        {
            await http.Refuse(StatusCodes.Status400BadRequest, VisitorWorkshop.NoQuestion);
            return;
        }
        await http.Answer(workshop, question);
    }
}
