using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using Closemown.Web;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>What is not there, is asked oddly, or goes wrong, is said to people on a page and to programs in the one shape.</summary>
public sealed class TroubleTests
{
    private static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    private static async Task<(HttpResponseMessage Answer, string Text)> Asked(ServerBench bench, HttpMethod method, string path, string accept)
    {
        using var request = new HttpRequestMessage(method, path);
        request.Headers.TryAddWithoutValidation("Accept", accept);
        var answer = await bench.Machine.SendAsync(request, Stop);
        return (answer, await answer.Content.ReadAsStringAsync(Stop));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/steel")]
    [InlineData("/enter")]
    [InlineData("/today.json")]
    [InlineData("/book.json")]
    [InlineData("/book.jsonl")]
    [InlineData("/book.backup")]
    [InlineData("/plan.ics")]
    [InlineData("/health")]
    [InlineData("/form-token")]
    [InlineData("/openapi.json")]
    [InlineData("/site.css")]
    [InlineData("/nothing-here")]
    public async Task F20_Head_is_answered_as_get_is_without_the_body(string path)
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        var (got, _) = await Asked(bench, HttpMethod.Get, path, "text/html");
        var (head, text) = await Asked(bench, HttpMethod.Head, path, "text/html");
        Assert.Equal((got.StatusCode, ""), (head.StatusCode, text));
        Assert.Equal($"{got.Content.Headers.ContentType}", $"{head.Content.Headers.ContentType}");
        // And the connection can be used again.
        Assert.Equal(HttpStatusCode.OK, (await bench.Machine.GetAsync("/health", Stop)).StatusCode);
    }

    [Fact]
    public async Task F20_Head_of_the_events_ends()
    {
        await using var bench = await ServerBench.Start();
        var (head, text) = await Asked(bench, HttpMethod.Head, "/events", "text/event-stream");
        Assert.Equal((HttpStatusCode.OK, "text/event-stream", ""), (head.StatusCode, head.Content.Headers.ContentType!.MediaType, text));
    }

    [Fact]
    public async Task F20_A_chunk_larger_than_any_number_is_a_bad_request_in_the_one_shape()
    {
        await using var bench = await ServerBench.Start();
        var at = new Uri(bench.Server.Address);
        using var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { ReceiveTimeout = 20_000 };
        await socket.ConnectAsync(at.Host, at.Port, Stop);
        await socket.SendAsync(Encoding.ASCII.GetBytes($"POST /ask HTTP/1.1\r\nHost: 127.0.0.1:{at.Port}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\nFFFFFFFFFFFFFFFFF\r\n{{"), Stop);
        var answer = new byte[4000];
        var text = await Task.Run(() => Encoding.UTF8.GetString(answer, 0, socket.Receive(answer)), Stop);
        Assert.StartsWith("HTTP/1.1 400", text, StringComparison.Ordinal);
        Assert.Contains("\"code\":\"bad-value\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task F20_Nothing_there_is_said_to_people_and_to_programs()
    {
        await using var bench = await ServerBench.Start();
        var (page, html) = await Asked(bench, HttpMethod.Get, "/no<b>where", "text/html,*/*");
        Assert.Equal((HttpStatusCode.NotFound, "text/html"), (page.StatusCode, page.Content.Headers.ContentType!.MediaType));
        Assert.Contains("<h1>Nothing here</h1>", html, StringComparison.Ordinal);
        Assert.Contains("href=\"/\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        var (json, fault) = await Asked(bench, HttpMethod.Get, "/nowhere", "*/*");
        Assert.Equal((HttpStatusCode.NotFound, "not-found"), (json.StatusCode, (string)JsonNode.Parse(fault)!["error"]!["code"]!));
        var (put, said) = await Asked(bench, HttpMethod.Put, "/health", "*/*");
        Assert.Equal((HttpStatusCode.MethodNotAllowed, "not-allowed"), (put.StatusCode, (string)JsonNode.Parse(said)!["error"]!["code"]!));
    }

    [Theory]
    [InlineData("text/html")]
    [InlineData("application/json")]
    public async Task F2_A_fault_of_the_program_is_said_and_logged_without_what_was_typed(string accept)
    {
        using var log = new Kept();
        await using var services = new ServiceCollection().AddLogging(l => l.AddProvider(log)).BuildServiceProvider();
        using var body = new MemoryStream();
        var http = new DefaultHttpContext { RequestServices = services };
        http.Request.Headers.Accept = accept;
        http.Request.Path = "/turf/secret";
        http.Response.Body = body;
        await Unforeseen.Invoke(http, _ => throw new FormatException("what was typed: secret"));
        var text = WebUtility.HtmlDecode(Encoding.UTF8.GetString(body.ToArray()));
        Assert.Equal(500, http.Response.StatusCode);
        Assert.Contains("The program met a fault of its own", text, StringComparison.Ordinal);
        Assert.Contains("The book is whole.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", text, StringComparison.Ordinal);
        if (accept == "application/json") Assert.Equal("bug", (string)JsonNode.Parse(text)!["error"]!["code"]!);
        else Assert.Contains("<h1>A fault of the program</h1>", text, StringComparison.Ordinal);
        var line = Assert.Single(log.Said);
        Assert.Contains("FormatException", line, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", line, StringComparison.Ordinal);
    }

    private sealed class Kept : ILoggerProvider, ILogger
    {
        public List<string> Said { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Said.Add(formatter(state, exception));

        public void Dispose()
        {
        }
    }
}
