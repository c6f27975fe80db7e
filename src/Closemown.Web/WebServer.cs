using Closemown.Serving;

namespace Closemown.Web;

/// <summary>A server, put together; to be started, and to be disposed of.</summary>
public sealed class WebServer : IAsyncDisposable
{
    private readonly Workshop workshop;
    private readonly Listening listening;

    internal WebServer(WebApplication app, ServeOptions options, Workshop workshop, Network? network, Listening listening) =>
        (App, Options, this.workshop, Network, this.listening) = (app, options, workshop, network, listening);

    /// <summary>The application.</summary>
    public WebApplication App { get; }

    /// <summary>What it was told.</summary>
    public ServeOptions Options { get; }

    /// <summary>Its address on this machine, once it is started.</summary>
    public string Address => listening.Of(Door.Machine).First();

    /// <summary>Its addresses on the network.</summary>
    public IReadOnlyList<string> NetworkAddresses => [.. listening.Of(Door.Network)];

    /// <summary>Where devices learn to trust it.</summary>
    public IReadOnlyList<string> TrustAddresses => [.. listening.Of(Door.Trust)];

    internal Network? Network { get; }

    /// <summary>Starts it; it is ready when this is done. Today's answer is got ready meanwhile.</summary>
    /// <exception cref="IOException">A port is in use.</exception>
    public async Task Start(CancellationToken stop = default)
    {
        await App.StartAsync(stop);
        _ = Task.Run(Warm, CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        await App.DisposeAsync();
        workshop.Dispose();
        Network?.Dispose();
    }

    private async Task Warm()
    {
        try
        {
            await workshop.Ask("{\"ask\":\"today\"}", App.Lifetime.ApplicationStopping, VisitorStyle.Usual(Options));
        }
        catch (Exception e) when (e is OperationCanceledException or ObjectDisposedException or Book.BookException)
        {
            // Whoever asks first meets the same, and is told.
        }
    }
}
