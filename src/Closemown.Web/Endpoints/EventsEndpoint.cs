using System.ComponentModel;
using System.Diagnostics;
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
            .WithMetadata(new ForPrograms()).Produces<string>(StatusCodes.Status200OK, "text/event-stream").Produces<string>(StatusCodes.Status401Unauthorized, "application/json")
            .Produces<string>(StatusCodes.Status429TooManyRequests, "application/json");

    private static async Task Tell(HttpContext http, Workshop workshop, EventStreams streams, IHostApplicationLifetime lifetime, [Description("the number that the page already shows")] string? seen)
    {
        http.Response.ContentType = "text/event-stream; charset=utf-8";
        if (HeadGuard.AsksForHead(http)) return;
        using var open = streams.Open(http);
        if (open is null)
        {
            http.Response.Headers.RetryAfter = "15";
            await http.Refuse(StatusCodes.Status429TooManyRequests, new("too-fast", "", "Too many pages of this device wait for news.", "Close some; what is open goes on without."));
            return;
        }
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(http.RequestAborted, lifetime.ApplicationStopping);
        // Only the last number counts: a slow reader misses nothing that matters.
        var news = Channel.CreateBounded<long>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        void Heard(object? sender, BookChangedEventArgs e) => news.Writer.TryWrite(e.Sequence);
        workshop.Changed += Heard;
        try
        {
            var last = workshop.Stamp.Entries;
            await Write(http, string.Create(CultureInfo.InvariantCulture, $"retry: 2000\n: at {last}\n\n"), ends.Token);
            if ((http.Request.Headers["Last-Event-ID"].ToString() is { Length: > 0 } got ? got : seen) is { Length: > 0 } known && known != last.ToString(CultureInfo.InvariantCulture)) await Changed(http, last, ends.Token);
            await GoOn(http, news.Reader, ends.Token);
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

    /// <summary>Tells of each change, and beats between; ends when the device is no longer paired.</summary>
    private static async Task GoOn(HttpContext http, ChannelReader<long> news, CancellationToken stop)
    {
        var device = http.Features.Get<PairedDevice>();
        var beaten = Stopwatch.GetTimestamp();
        while (true)
        {
            var changed = await Next(news, device is null ? Beat : PairedDevice.LookAgain, stop);
            if (device?.IsPaired() == false) return;
            if (changed is { } seq) await Changed(http, seq, stop);
            else if (device is null || Stopwatch.GetElapsedTime(beaten) >= Beat) await Write(http, ": still here\n\n", stop);
            else continue;
            beaten = Stopwatch.GetTimestamp();
        }
    }

    /// <summary>The next news; null where there is none for so long.</summary>
    private static async Task<long?> Next(ChannelReader<long> news, TimeSpan wait, CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(wait);
        try
        {
            return await news.ReadAsync(patience.Token);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return null;
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
