using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Closemown.Tests.Weather;

/// <summary>A few lines of HTTP on loopback.</summary>
internal sealed class LocalServer : IDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly Func<int, string, (int Status, string Body, int DelayMs)> answer;

    public LocalServer(Func<int, string, (int, string, int)> answer)
    {
        this.answer = answer;
        listener.Start();
        _ = Serve();
    }

    public List<string> Asked { get; } = [];

    /// <summary>The length it announces; null for the true one.</summary>
    public int? Announced { get; init; }

    /// <summary>Bytes of a piece where the answer comes in pieces, without a length; 0 for whole.</summary>
    public int Pieces { get; init; }

    public Uri Address => new($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}/v1/forecast");

    public void Dispose()
    {
        stop.Cancel();
        listener.Dispose();
        stop.Dispose();
    }

    private async Task Serve()
    {
        while (!stop.IsCancellationRequested)
        {
            TcpClient client;
            try
            {
                client = await listener.AcceptTcpClientAsync(stop.Token);
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
            _ = Answer(client);
        }
    }

    private async Task Answer(TcpClient client)
    {
        using (client)
        {
            try
            {
                using var reader = new StreamReader(client.GetStream(), Encoding.ASCII, leaveOpen: true);
                var first = await reader.ReadLineAsync(stop.Token) ?? "";
                while (await reader.ReadLineAsync(stop.Token) is { Length: > 0 })
                {
                }
                int count;
                lock (Asked)
                {
                    Asked.Add(first);
                    count = Asked.Count;
                }
                var (status, body, delay) = answer(count, first);
                await Task.Delay(delay, stop.Token);
                var bytes = Encoding.UTF8.GetBytes(body);
                var length = Pieces > 0 ? "Transfer-Encoding: chunked" : $"Content-Length: {Announced ?? bytes.Length}";
                var stream = client.GetStream();
                await stream.WriteAsync(Encoding.ASCII.GetBytes($"HTTP/1.1 {status} x\r\nContent-Type: application/json\r\n{length}\r\nConnection: close\r\n\r\n"), stop.Token);
                if (Pieces == 0)
                {
                    await stream.WriteAsync(bytes, stop.Token);
                    return;
                }
                foreach (var piece in bytes.Chunk(Pieces).Append([]))
                {
                    await stream.WriteAsync((byte[])[.. Encoding.ASCII.GetBytes($"{piece.Length:x}\r\n"), .. piece, .. "\r\n"u8], stop.Token);
                }
            }
            catch (Exception e) when (e is OperationCanceledException or IOException or ObjectDisposedException)
            {
            }
        }
    }
}
