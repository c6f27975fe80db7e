using System.Net;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Somebody with a browser's cookies, who fills in forms.</summary>
internal sealed class Visitor : IDisposable
{
    private static readonly CancellationToken Stop = TestContext.Current.CancellationToken;
    private readonly SocketsHttpHandler handler = new() { AllowAutoRedirect = false, CookieContainer = new CookieContainer() };

    public Visitor(ServerBench bench) => Client = new(handler) { BaseAddress = new(bench.Server.Address) };

    public HttpClient Client { get; }

    public CookieContainer Cookies => handler.CookieContainer;

    /// <summary>The token of a form, as the page carries it.</summary>
    public async Task<string> Token() => Between(await Client.GetStringAsync("/look", Stop), "name=\"form\" value=\"", "\"");

    /// <summary>Sends a form with its token.</summary>
    public async Task<HttpResponseMessage> Send(string path, bool json, params (string Name, string Value)[] fields)
    {
        var token = await Token();
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)).Prepend(KeyValuePair.Create("form", token))) };
        request.Headers.Add("Accept", json ? "application/json" : "text/html");
        return await Client.SendAsync(request, Stop);
    }

    /// <summary>Enters as the script does; the answer.</summary>
    public async Task<JsonNode> Enter(params (string Name, string Value)[] fields)
    {
        using var answer = await Send("/enter", true, fields);
        return JsonNode.Parse(await answer.Content.ReadAsStringAsync(Stop))!;
    }

    /// <summary>Enters without script; the page that is shown in the end, its marks as a reader sees them.</summary>
    public async Task<(HttpStatusCode Status, string Page, string? Went)> Write(params (string Name, string Value)[] fields)
    {
        using var answer = await Send("/enter", false, fields);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop), answer.Headers.Location?.OriginalString);
    }

    /// <summary>A page.</summary>
    public Task<string> Page(string path) => Client.GetStringAsync(path, Stop);

    public void Dispose()
    {
        Client.Dispose();
        handler.Dispose();
    }

    private static string Between(string text, string start, string end) => text.Split(start)[1].Split(end)[0];
}
