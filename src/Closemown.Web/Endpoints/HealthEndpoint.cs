using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Web;

/// <summary>Whether the server can do its work. Says nothing of what is in the book but how many entries there are.</summary>
internal static class HealthEndpoint
{
    public static void MapHealth(this IEndpointRouteBuilder app) =>
        app.MapGet("/health", Health).WithName("health").WithSummary("Whether the book was read, is whole, and is still the file that was opened: 200 or 503.").WithMetadata(new ForPrograms())
            .Produces<JsonObject>().Produces<JsonObject>(StatusCodes.Status503ServiceUnavailable);

    private static async Task Health(HttpContext http, Workshop workshop)
    {
        JsonObject answer;
        try
        {
            answer = new JsonObject { ["ok"] = true, ["health"] = new JsonObject { ["book"] = "readable", ["entries"] = (await workshop.Health(http.RequestAborted)).Entries } };
        }
        catch (BookException e)
        {
            http.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            answer = Conversation.Refused([new("book", "", $"The book cannot be read ({e.Trouble}).", "Run closemown check-up at the machine.")]);
        }
        http.Response.ContentType = JsonBody.ContentType;
        await http.Response.WriteAsync(Conversation.Text(answer), http.RequestAborted);
    }
}
