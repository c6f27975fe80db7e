using System.Net;
using System.Net.Sockets;
using System.Text;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Fetching from a server of our own on this machine, in the documented form, and with its faults.</summary>
public sealed class WeatherServiceTests
{
    private const string Whole = """{"daily_units":{"temperature_2m_max":"°C","precipitation_sum":"mm"},"daily":{"time":["2026-05-01","2026-05-02"],"temperature_2m_max":[15.1,null],"precipitation_sum":[0.0,2.4]}}""";

    [Fact]
    public async Task It_asks_in_the_documented_form_and_sends_no_more_than_it_must()
    {
        using var server = new LocalServer((_, _) => (200, Whole, 0));
        var days = await Fetch(server);
        Assert.Equal(2, days.Count);
        var query = Assert.Single(server.Asked);
        foreach (var part in (string[])["latitude=51.46", "longitude=-0.98", "timezone=Europe%2FLondon", "past_days=14", "forecast_days=10", "wind_speed_unit=ms", "temperature_2m_min", "precipitation_sum"])
            Assert.Contains(part, query, StringComparison.Ordinal);
        Assert.DoesNotContain("51.4567", query, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_fails_at_first_is_asked_again()
    {
        using var server = new LocalServer((n, _) => n < 3 ? (500, "busy", 0) : (200, Whole, 0));
        Assert.Equal(2, (await Fetch(server)).Count);
        Assert.Equal(3, server.Asked.Count);
    }

    [Fact]
    public async Task A_server_that_goes_on_failing_is_told_of()
    {
        using var server = new LocalServer((_, _) => (503, "", 0));
        var fault = await Assert.ThrowsAsync<WeatherException>(() => Fetch(server));
        Assert.Contains("503", fault.Message, StringComparison.Ordinal);
        Assert.Equal(1 + WeatherService.Retries, server.Asked.Count);
    }

    [Fact]
    public async Task A_slow_server_is_given_up()
    {
        using var server = new LocalServer((_, _) => (200, Whole, 5000));
        Assert.Contains("in time", (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server, tryMs: 100))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"daily_units":{"temperature_2m_max":"°C"},"daily":{"time":["2026-05-01","2026-05-02"],"temperature_2m_max":[15.1""", "cut off")]
    [InlineData("""{"daily_units":{"precipitation_sum":"pints"},"daily":{"time":["2026-05-01"],"precipitation_sum":[1]}}""", "pints")]
    [InlineData("""<html>""", "cut off")]
    public async Task An_answer_that_cannot_be_read_is_not_kept(string body, string says)
    {
        using var server = new LocalServer((_, _) => (200, body, 0));
        Assert.Contains(says, (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server))).Message, StringComparison.Ordinal);
        Assert.Single(server.Asked);
    }

    [Fact]
    public async Task A_refusal_in_words_is_passed_on_and_not_tried_again()
    {
        using var server = new LocalServer((_, _) => (400, """{"error":true,"reason":"Latitude must be in range"}""", 0));
        Assert.Contains("Latitude must be in range", (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server))).Message, StringComparison.Ordinal);
        Assert.Single(server.Asked);
    }

    [Fact]
    public async Task Nobody_at_home_is_told_of()
    {
        using var client = new HttpClient();
        var service = new WeatherService(client, TimeSpan.FromSeconds(5), TimeSpan.FromMilliseconds(1));
        var fault = await Assert.ThrowsAsync<WeatherException>(() => service.Fetch(new(new("http://127.0.0.1:1/v1/forecast"), 51, 0, null, 1, 1), TestContext.Current.CancellationToken));
        Assert.Contains("cannot be reached", fault.Message, StringComparison.Ordinal);
    }

    private static async Task<WeatherTable> Fetch(LocalServer server, int tryMs = 5000)
    {
        using var client = new HttpClient();
        var service = new WeatherService(client, TimeSpan.FromMilliseconds(tryMs), TimeSpan.FromMilliseconds(1));
        return await service.Fetch(new(server.Address, 51.4567, -0.98, "Europe/London", 14, 10), TestContext.Current.CancellationToken);
    }

    /// <summary>A few lines of HTTP on loopback.</summary>
    private sealed class LocalServer : IDisposable
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
                    int n;
                    lock (Asked)
                    {
                        Asked.Add(first);
                        n = Asked.Count;
                    }
                    var (status, body, delay) = answer(n, first);
                    await Task.Delay(delay, stop.Token);
                    var bytes = Encoding.UTF8.GetBytes(body);
                    await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes($"HTTP/1.1 {status} x\r\nContent-Type: application/json\r\nContent-Length: {bytes.Length}\r\nConnection: close\r\n\r\n"), stop.Token);
                    await client.GetStream().WriteAsync(bytes, stop.Token);
                }
                catch (Exception e) when (e is OperationCanceledException or IOException or ObjectDisposedException)
                {
                }
            }
        }
    }
}
