using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Closemown.Bench.Serving;

/// <summary>Idle and slow connections beside the load, to this machine's own server only; one that is closed is opened anew.</summary>
/// <remarks>
/// Slow ones are of four kinds in turn: a header that comes a character a second, a body in chunks that stops after five bytes, a body a byte a
/// second, and an answer that is read a byte a second.
/// </remarks>
internal sealed class Siege : IDisposable
{
    private const int Kinds = 4;
    private readonly CancellationTokenSource ends = new();
    private readonly List<Task> all = [];
    private int opened;
    private int refused;

    private Siege()
    {
    }

    /// <summary>Connections made so far, those opened anew included.</summary>
    public int Opened => opened;

    /// <summary>Times that no connection could be made.</summary>
    public int Refused => refused;

    public static Siege Of(Uri server, int idle, int slow)
    {
        if (!server.IsLoopback) throw new ArgumentException("Only a server of this machine is besieged.", nameof(server));
        var siege = new Siege();
        for (var n = 0; n < idle; n++) siege.all.Add(siege.Again(server, Idle));
        for (var n = 0; n < slow; n++) siege.all.Add(siege.Again(server, SlowOf(n % Kinds, server)));
        return siege;
    }

    public void Dispose()
    {
        ends.Cancel();
        Task.WaitAll([.. all], TimeSpan.FromSeconds(10));
        ends.Dispose();
    }

    private async Task Again(Uri server, Func<Socket, CancellationToken, Task> sit)
    {
        while (!ends.IsCancellationRequested)
        {
            try
            {
                using var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { ReceiveBufferSize = 2048 };
                await socket.ConnectAsync(IPAddress.Loopback, server.Port, ends.Token);
                Interlocked.Increment(ref opened);
                await sit(socket, ends.Token);
            }
            catch (SocketException e)
            {
                if (e.SocketErrorCode == SocketError.ConnectionRefused) Interlocked.Increment(ref refused);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            // Not as fast as it can: it is slow and idle connections that are tried here.
            await Task.Delay(200, CancellationToken.None);
        }
    }

    /// <summary>Until the server closes it.</summary>
    private static async Task Idle(Socket socket, CancellationToken stop)
    {
        var rest = new byte[256];
        while (await socket.ReceiveAsync(rest, stop) > 0)
        {
        }
    }

    private static Func<Socket, CancellationToken, Task> SlowOf(int kind, Uri server)
    {
        var host = $"Host: 127.0.0.1:{server.Port}\r\n";
        var entries = $"POST /entries HTTP/1.1\r\n{host}Content-Type: application/jsonl\r\n";
        return kind switch
        {
            0 => (socket, stop) => Drip(socket, "", $"GET / HTTP/1.1\r\n{host}X-Slow: {new string('x', 10_000)}", stop),
            1 => (socket, stop) => Stops(socket, entries + "Transfer-Encoding: chunked\r\n\r\n5\r\n{\"kin", stop),
            2 => (socket, stop) => Drip(socket, entries + "Content-Length: 50000\r\n\r\n", new string(' ', 50_000), stop),
            _ => (socket, stop) => ReadSlowly(socket, $"GET /book.jsonl HTTP/1.1\r\n{host}\r\n", stop),
        };
    }

    private static async Task Stops(Socket socket, string said, CancellationToken stop)
    {
        await Send(socket, said, stop);
        await Idle(socket, stop);
    }

    private static async Task ReadSlowly(Socket socket, string asked, CancellationToken stop)
    {
        await Send(socket, asked, stop);
        var one = new byte[1];
        while (await socket.ReceiveAsync(one, stop) > 0) await Task.Delay(1000, stop);
    }

    private static async Task Drip(Socket socket, string atOnce, string slowly, CancellationToken stop)
    {
        await Send(socket, atOnce, stop);
        foreach (var character in slowly)
        {
            await Send(socket, $"{character}", stop);
            await Task.Delay(1000, stop);
            if (socket.Poll(0, SelectMode.SelectRead)) return;
        }
    }

    private static async Task Send(Socket socket, string text, CancellationToken stop)
    {
        var bytes = Encoding.ASCII.GetBytes(text);
        if (bytes.Length > 0) await socket.SendAsync(bytes, stop);
    }
}
