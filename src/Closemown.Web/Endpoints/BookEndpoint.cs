using System.ComponentModel;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Web;

/// <summary>The entries of the book, by arrival, so many at a time.</summary>
internal static class BookEndpoint
{
    private const int Usual = 100;
    private const int Most = 1000;

    public static void MapBook(this IEndpointRouteBuilder app) =>
        app.MapGet("/book.json", Slice).WithName("book").WithSummary("Entries by arrival, so many at a time.")
            .WithDescription("{\"ok\":true,\"book\":{\"entries\":[{\"seq\":…,\"entry\":{…}}],\"next\":…,\"last\":…}}: ask again with after=next while next is not null; last is the number of the book's last entry. Weather is not among them.")
            .WithMetadata(new ForPrograms()).Produces<JsonObject>().Produces<JsonObject>(StatusCodes.Status400BadRequest).Produces<JsonObject>(StatusCodes.Status401Unauthorized);

    private static async Task Slice(HttpContext http, Workshop workshop, [Description("the number after which to begin; else 0")] string? after, [Description("one kind of entry only")] string? kind, [Description("how many, 1 to 1000; else 100")] string? limit)
    {
        var (from, count) = (0L, Usual);
        EntryFault? fault = null;
        if (!string.IsNullOrEmpty(after) && !long.TryParse(after, NumberStyles.None, CultureInfo.InvariantCulture, out from)) fault = Answering.Bad("after", after, "Give the number of an entry, 0 or more.");
        else if (!string.IsNullOrEmpty(limit) && (!int.TryParse(limit, NumberStyles.None, CultureInfo.InvariantCulture, out count) || count is < 1 or > Most)) fault = Answering.Bad("limit", limit, $"Give a number, 1 to {Most}.");
        else if (!string.IsNullOrEmpty(kind) && Kinds.Find(kind) is null) fault = Answering.Bad("kind", kind, Spelling.Nearest(kind, Kinds.All.Select(k => k.Name)) is { } near ? $"Did you mean \"{near}\"?" : "docs/entries.md lists the kinds.");
        if (fault is not null)
        {
            await http.Refuse(StatusCodes.Status400BadRequest, fault);
            return;
        }
        var slice = workshop.Read(from, string.IsNullOrEmpty(kind) ? null : kind, count, http.RequestAborted);
        http.Response.ContentType = JsonBody.ContentType;
        var answer = new JsonObject
        {
            ["ok"] = true,
            ["book"] = new JsonObject { ["entries"] = new JsonArray([.. slice.Entries]), ["next"] = slice.Next, ["last"] = slice.Last },
        };
        if (Conversation.Damaged(workshop.Damage) is { } damaged) answer["damaged"] = damaged;
        await http.Response.WriteAsync(Conversation.Text(answer), http.RequestAborted);
    }
}
