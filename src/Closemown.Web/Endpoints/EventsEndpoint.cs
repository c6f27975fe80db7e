using System.ComponentModel;
using System.Globalization;
using System.Threading.Channels;
using Closemown.Pages;

namespace Closemown.Web;

/// <summary>Tells a page that the book has changed, as server-sent events.</summary>
internal static class EventsEndpoint
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(15);

    public static void MapEvents(this IEndpointRouteBuilder app) =>
        app.MapGet("/events", Tell).WithName("events").WithSummary("Server-sent events: \"changed\" whenever the book changes.")
            .WithDescription("event: changed, data: {\"seq\":…}, id: the same number, that of the book's last entry. With Last-Event-ID of another number, or else seen=, the first event comes at once. Comments every 15 s keep the line open.")
            .WithMetadata(new ForPrograms()).Produces<string>(StatusCodes.Status200OK, "text/event-stream").Produces<string>(StatusCodes.Status401Unauthorized, "application/json");

    private static async Task Tell(HttpContext http, Workshop workshop, IHostApplicationLifetime lifetime, [Description("the number that the page already shows")] string? seen)
    {
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(http.RequestAborted, lifetime.ApplicationStopping);
        // Only the last number counts: a slow reader misses nothing that matters.
        var news = Channel.CreateBounded<long>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        void Heard(object? sender, BookChangedEventArgs e) => news.Writer.TryWrite(e.Sequence);
        workshop.Changed += Heard;
        try
        {
            http.Response.ContentType = "text/event-stream; charset=utf-8";
            var last = workshop.Stamp.Entries;
            await Write(http, string.Create(CultureInfo.InvariantCulture, $"retry: 2000\n: at {last}\n\n"), ends.Token);
            if ((http.Request.Headers["Last-Event-ID"].ToString() is { Length: > 0 } got ? got : seen) is { Length: > 0 } known && known != last.ToString(CultureInfo.InvariantCulture)) await Changed(http, last, ends.Token);
            while (!ends.IsCancellationRequested)
            {
                using var beat = CancellationTokenSource.CreateLinkedTokenSource(ends.Token);
                beat.CancelAfter(Beat);
                try
                {
                    await Changed(http, await news.Reader.ReadAsync(beat.Token), ends.Token);
                }
                catch (OperationCanceledException) when (!ends.IsCancellationRequested)
                {
                    await Write(http, ": still here\n\n", ends.Token);
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The page was left, or the server ends.
        }
        finally
        {
            workshop.Changed -= Heard;
        }
    }

    private static Task Changed(HttpContext http, long seq, CancellationToken stop) =>
        Write(http, string.Create(CultureInfo.InvariantCulture, $"event: changed\nid: {seq}\ndata: {{\"seq\":{seq}}}\n\n"), stop);

    private static async Task Write(HttpContext http, string text, CancellationToken stop)
    {
        await http.Response.WriteAsync(text, stop);
        await http.Response.Body.FlushAsync(stop);
    }
}
