using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using Closemown.Serving;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Slow and idle connections shut nobody out.</summary>
public sealed class DoorTests
{
    private static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    private static ServeOptions Fast(ServeOptions o) => o with { Limits = new ServeLimits { RequestsPerSecond = 10_000 } };

    private static async Task<Socket> Begin(Uri at, string said)
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        await socket.ConnectAsync(at.Host, at.Port, Stop);
        if (said.Length > 0) await socket.SendAsync(Encoding.ASCII.GetBytes(said), Stop);
        return socket;
    }

    private static async Task<List<Socket>> Many(int count, string address, string said)
    {
        var sockets = new List<Socket>();
        for (var n = 0; n < count; n++) sockets.Add(await Begin(new(address), said));
        return sockets;
    }

    private static void Close(List<Socket> sockets) => sockets.ForEach(s => s.Dispose());

    private static HttpClient Fresh(string address) => new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new(address), Timeout = TimeSpan.FromSeconds(20) };

    [Theory]
    [InlineData("")]
    [InlineData("GET / HTTP/1.1\r\nHost: localh")]
    public async Task F11_Half_open_connections_do_not_fill_the_machines_own_door(string said)
    {
        await using var bench = await ServerBench.Start(Fast);
        var held = await Many(300, bench.Server.Address, said);
        using var owner = Fresh(bench.Server.Address);
        Assert.Equal(HttpStatusCode.OK, (await owner.GetAsync("/health", Stop)).StatusCode);
        Close(held);
    }

    [Fact]
    public async Task F11_A_connection_kept_between_two_pages_does_not_make_way_for_half_open_ones()
    {
        await using var bench = await ServerBench.Start(Fast);
        var port = new Uri(bench.Server.Address).Port;
        using var kept = await Begin(new Uri(bench.Server.Address), "");
        kept.ReceiveTimeout = 10_000;
        var ask = Encoding.ASCII.GetBytes($"GET /health HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n");
        async Task<string> Asked()
        {
            await kept.SendAsync(ask, Stop);
            var answer = await Task.Run(() => Read(kept), Stop);
            for (; kept.Available > 0; await Task.Delay(100, Stop)) answer += Read(kept);
            return answer;
        }
        Assert.StartsWith("HTTP/1.1 200", await Asked(), StringComparison.Ordinal);
        var held = await Many(400, bench.Server.Address, "GET / HT");
        // Something of the first answer may have come late.
        Assert.Contains("HTTP/1.1 200", await Asked(), StringComparison.Ordinal);
        Close(held);
    }

    [Fact]
    public async Task F11_Bodies_that_stop_hold_no_thread_and_delay_nobody()
    {
        await using var bench = await ServerBench.Start(Fast);
        Assert.Equal(HttpStatusCode.OK, (await bench.Machine.GetAsync("/health", Stop)).StatusCode);
        var port = new Uri(bench.Server.Address).Port;
        var held = await Many(150, bench.Server.Address, $"POST /entries HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nContent-Type: application/jsonl\r\nTransfer-Encoding: chunked\r\n\r\n5\r\n{{\"kin");
        var start = Stopwatch.GetTimestamp();
        using var owner = Fresh(bench.Server.Address);
        Assert.Equal(HttpStatusCode.OK, (await owner.GetAsync("/health", Stop)).StatusCode);
        // A pool whose threads are held grows by about two a second: behind 150 of them the owner would wait for a minute and more.
        Assert.InRange(Stopwatch.GetElapsedTime(start).TotalSeconds, 0, 10);
        // The server itself breaks them off.
        held[0].ReceiveTimeout = 20_000;
        await Task.Run(() => Assert.StartsWith("HTTP/1.1 408", Read(held[0]), StringComparison.Ordinal), Stop);
        Close(held);
    }

    private static string Read(Socket socket)
    {
        var got = new byte[400];
        return Encoding.ASCII.GetString(got, 0, socket.Receive(got));
    }

    [Fact]
    public async Task F11_One_address_has_sixteen_connections_on_the_network_and_others_come_in()
    {
        await using var bench = await ServerBench.Start(o => Fast(o) with { Lan = true, PlainHttp = true });
        var address = bench.Server.NetworkAddresses[0];
        var held = await Many(40, address, "");
        using (var other = bench.Device("127.0.0.9")) Assert.Equal(HttpStatusCode.OK, (await other.GetAsync("/pair", Stop)).StatusCode);
        using (var same = bench.Device()) Assert.Equal(HttpStatusCode.OK, (await same.GetAsync("/pair", Stop)).StatusCode);
        // Of the forty the first made way.
        held[0].ReceiveTimeout = 10_000;
        Assert.True(await Task.Run(() => Ended(held[0]), Stop));
        Close(held);
    }

    private static bool Ended(Socket socket)
    {
        try
        {
            return socket.Receive(new byte[1]) == 0;
        }
        catch (SocketException e)
        {
            return e.SocketErrorCode == SocketError.ConnectionReset;
        }
    }

    [Fact]
    public async Task F11_A_device_has_eight_event_streams_and_its_pages_go_on()
    {
        await using var bench = await ServerBench.Start(o => Fast(o) with { Lan = true, PlainHttp = true });
        using var device = bench.Device();
        await ServerBench.Pair(device, bench.NewCode());
        var open = new List<HttpResponseMessage>();
        for (var n = 0; n < 8; n++) open.Add(await device.GetAsync("/events", HttpCompletionOption.ResponseHeadersRead, Stop));
        Assert.All(open, o => Assert.Equal(HttpStatusCode.OK, o.StatusCode));
        using var more = await device.GetAsync("/events", HttpCompletionOption.ResponseHeadersRead, Stop);
        Assert.Equal(HttpStatusCode.TooManyRequests, more.StatusCode);
        Assert.Equal("too-fast", (string)JsonNode.Parse(await more.Content.ReadAsStringAsync(Stop))!["error"]!["code"]!);
        Assert.Equal(HttpStatusCode.OK, (await device.GetAsync("/today.json", Stop)).StatusCode);
        open.ForEach(o => o.Dispose());
    }

    [Fact]
    public async Task F11_Lines_that_come_in_pieces_are_taken_as_they_come()
    {
        await using var bench = await ServerBench.Start(Fast);
        var at = new Uri(bench.Server.Address);
        using var socket = await Begin(at, $"POST /entries HTTP/1.1\r\nHost: 127.0.0.1:{at.Port}\r\nContent-Type: application/jsonl\r\nTransfer-Encoding: chunked\r\n\r\n");
        var body = Encoding.UTF8.GetBytes("\uFEFF" + Lines.Mow(0) + "\r\n\n" + Lines.Mow(1) + "\n" + new string('x', 300_000) + "\n" + Lines.Mow(2));
        foreach (var piece in body.Chunk(7001))
        {
            await socket.SendAsync(Encoding.ASCII.GetBytes($"{piece.Length:x}\r\n"), Stop);
            await socket.SendAsync(piece, Stop);
            await socket.SendAsync("\r\n"u8.ToArray(), Stop);
        }
        await socket.SendAsync("0\r\n\r\n"u8.ToArray(), Stop);
        socket.ReceiveTimeout = 30_000;
        var answer = await Task.Run(
            () =>
            {
                var all = new StringBuilder();
                while (!all.ToString().EndsWith("\r\n0\r\n\r\n", StringComparison.Ordinal)) all.Append(Read(socket));
                return all.ToString();
            },
            Stop);
        Assert.Equal(3, answer.Split("\"ok\":true").Length - 1);
        Assert.Contains("longer than", answer, StringComparison.Ordinal);
        Assert.Equal(3, bench.Entries());
    }
}
