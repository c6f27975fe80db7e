using System.IO.Pipelines;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Serving;

namespace Closemown.Web;

/// <summary>Entries as JSON Lines, each answered by a line as the pipe answers.</summary>
internal static class EntriesEndpoint
{
    private const string BookFails = $"{{\"ok\":false,\"error\":{{\"code\":\"{Conversation.BookCode}\"";

    public const string ContentType = "application/jsonl; charset=utf-8";

    public static void MapEntries(this IEndpointRouteBuilder app) =>
        app.MapPost("/entries", Take).WithName("entries").WithSummary("Puts entries into the book: one JSON object a line, one line of answer each.")
            .WithDescription("A line that fails is answered by its fault, and the others still enter. Bring an id (UUID version 7) with each entry: the same entry sent twice is one entry. More lines than the setting requestLines: 413, nothing enters; where the length was not told beforehand, the answer ends with that fault.")
            .Accepts<string>("application/jsonl", "application/x-ndjson", "text/plain").WithMetadata(new ForPrograms())
            .Produces<string>(StatusCodes.Status200OK, "application/jsonl").Produces<string>(StatusCodes.Status401Unauthorized, "application/json")
            .Produces<string>(StatusCodes.Status403Forbidden, "application/json").Produces<string>(StatusCodes.Status413PayloadTooLarge, "application/json")
            .Produces<string>(StatusCodes.Status415UnsupportedMediaType, "application/json").Produces<string>(StatusCodes.Status429TooManyRequests, "application/json");

    private static async Task Take(HttpContext http, Workshop workshop, ServeLimits limits, ILoggerFactory logs)
    {
        var body = http.Request.BodyReader;
        var toldLength = http.Request.ContentLength is not null;
        if (toldLength)
        {
            // Its length is told: read whole, within the limit of bytes, so that too many lines are refused before one is taken.
            var whole = new MemoryStream();
            await http.Request.Body.CopyToAsync(whole, http.RequestAborted);
            if (Count(whole.GetBuffer().AsSpan(0, (int)whole.Length)) > limits.RequestLines)
            {
                await http.Refuse(StatusCodes.Status413PayloadTooLarge, TooMany(limits));
                return;
            }
            whole.Position = 0;
            body = PipeReader.Create(whole);
        }
        http.Response.ContentType = ContentType;
        var lines = new BodyLines(body, EntryReader.MaxLineLength);
        var taken = 0;
        string? trouble = null;
        while (await lines.Next(http.RequestAborted) is { } line)
        {
            if (line.Fault is null && string.IsNullOrWhiteSpace(line.Text)) continue;
            if (++taken > limits.RequestLines)
            {
                await http.Response.WriteAsync(Refused(TooMany(limits)) + "\n", http.RequestAborted);
                break;
            }
            // Once the book cannot be written, it is not asked again for each of the lines: each is handed back with the same fault.
            var answer = line.Fault is not null ? Refused(line.Fault)
                : trouble is not null ? HandedBack(trouble, line.Text!)
                : await Said(workshop, line.Text!, logs, http.RequestAborted);
            if (answer.StartsWith(BookFails, StringComparison.Ordinal)) trouble ??= answer;
            await http.Response.WriteAsync(answer + "\n", http.RequestAborted);
            if (!toldLength) await http.Response.Body.FlushAsync(http.RequestAborted);
        }
    }

    /// <summary>The answer to a line; where the book itself fails, it hands the entry back.</summary>
    private static async Task<string> Said(Workshop workshop, string line, ILoggerFactory logs, CancellationToken stop)
    {
        try
        {
            return await workshop.Say(line, stop);
        }
        catch (BookException e)
        {
            return Conversation.Text(Conversation.Refused(e, line));
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            // One line's trouble is not the others'.
            logs.CreateLogger("Closemown").LogError("{Bug}", BugFault.Trace(e));
            return Refused(BugFault.Of("a line of /entries"));
        }
    }

    private static string Refused(EntryFault fault) => Conversation.Text(Conversation.Refused([fault]));

    private static string HandedBack(string trouble, string line)
    {
        var error = JsonNode.Parse(trouble)!["error"]!;
        return Conversation.Text(Conversation.Refused(new BookException(BookTrouble.Stopped, (string)error["message"]!, (string)error["remedy"]!), line));
    }

    private static long Count(ReadOnlySpan<byte> lines)
    {
        var count = 0L;
        foreach (var line in lines.Split((byte)'\n'))
        {
            if (lines[line].ContainsAnyExcept(" \t\r"u8)) count++;
        }
        return count;
    }

    private static EntryFault TooMany(ServeLimits limits) =>
        new("too-large", "", $"More than {limits.RequestLines} lines in one request.", "Send them in parts; the setting is requestLines.");
}
