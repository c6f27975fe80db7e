using System.Globalization;
using System.Text;
using Closemown.Book;

namespace Closemown.Web;

/// <summary>The book to take away: its entries as JSON Lines, and a verified copy of its file.</summary>
internal static class BookFilesEndpoint
{
    public static void MapBookFiles(this IEndpointRouteBuilder app)
    {
        app.MapGet("/book.jsonl", Lines).WithName("book-lines").WithSummary("All entries, then the weather kept, as JSON Lines: an import makes the same book of them.")
            .WithMetadata(new ForPrograms()).Produces<string>(StatusCodes.Status200OK, "application/jsonl").Produces<string>(StatusCodes.Status401Unauthorized, "application/json");
        app.MapGet("/book.backup", Copy).WithName("book-backup").WithSummary("A copy of the book's file, made by the database's own backup call and verified.")
            .WithMetadata(new ForPrograms()).Produces<string>(StatusCodes.Status200OK, "application/vnd.sqlite3").Produces<string>(StatusCodes.Status400BadRequest, "application/json").Produces<string>(StatusCodes.Status401Unauthorized, "application/json");
    }

    private static async Task Lines(HttpContext http, Workshop workshop, TimeProvider clock)
    {
        using var text = new MemoryStream();
        await using (var writer = new StreamWriter(text, new UTF8Encoding(false), leaveOpen: true)) workshop.Export(writer);
        http.Response.ContentType = EntriesEndpoint.ContentType;
        // The lines are entries and nothing else: that they are not all is said beside them.
        if (workshop.Damage is { } damage) http.Response.Headers["Closemown-Damaged"] = damage.FromEntry is { } from ? $"from entry {from.ToString(CultureInfo.InvariantCulture)}" : "weather";
        http.Response.Headers.ContentDisposition = $"attachment; filename=\"closemown-{Day(clock)}.jsonl\"";
        http.Response.ContentLength = text.Length;
        text.Position = 0;
        await text.CopyToAsync(http.Response.Body, http.RequestAborted);
    }

    private static async Task Copy(HttpContext http, Workshop workshop, TimeProvider clock)
    {
        var folder = Directory.CreateTempSubdirectory("closemown-backup-");
        try
        {
            var target = Path.Combine(folder.FullName, "book.closemown");
            Backup.Make(workshop.Where, target, DateOnly.FromDateTime(clock.GetLocalNow().DateTime));
            http.Response.ContentType = "application/vnd.sqlite3";
            http.Response.Headers.ContentDisposition = $"attachment; filename=\"closemown-{Day(clock)}.closemown\"";
            await using var file = File.OpenRead(target);
            http.Response.ContentLength = file.Length;
            await file.CopyToAsync(http.Response.Body, http.RequestAborted);
        }
        catch (BookException e)
        {
            await http.Refuse(StatusCodes.Status400BadRequest, new("book", "", e.Message, e.Remedy));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Day(TimeProvider clock) => clock.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
