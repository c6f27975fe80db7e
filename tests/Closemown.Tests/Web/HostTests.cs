using System.Net;
using Closemown.Serving;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>A request that names another host is refused, whatever else it is.</summary>
public sealed class HostTests
{
    [Theory]
    [InlineData("attacker.example", 400)]
    [InlineData("attacker.example:5180", 400)]
    [InlineData("127.0.0.1.attacker.example", 400)]
    [InlineData("localhost.attacker.example", 400)]
    [InlineData("127.0.0.2", 400)]
    [InlineData("192.168.1.20", 400)]
    [InlineData("localhost", 200)]
    [InlineData("LOCALHOST:1", 200)]
    [InlineData("127.0.0.1", 200)]
    public async Task At_the_machine_only_its_own_names_are_known(string host, int status)
    {
        await using var bench = await ServerBench.Start();
        Assert.Equal(status, (int)(await Asked(bench.Machine, host, "/today.json")).StatusCode);
        Assert.Equal(status, (int)(await Asked(bench.Machine, host, "/site.css")).StatusCode);
    }

    [Fact]
    public async Task On_the_network_only_the_names_it_has_there()
    {
        await using var bench = await ServerBench.Start(o => o with { Lan = true, PlainHttp = true });
        using var device = bench.Device();
        foreach (var name in LanNames.Of(Environment.MachineName).Append(ServerBench.NetworkAddress)) Assert.Equal(HttpStatusCode.OK, (await Asked(device, name, "/pair")).StatusCode);
        // What only this machine may be called, and a name that points here.
        foreach (var name in new[] { "localhost", "127.0.0.1", "attacker.example", "local" }) Assert.Equal(HttpStatusCode.BadRequest, (await Asked(device, name, "/pair")).StatusCode);
    }

    [Fact]
    public async Task A_rebound_name_changes_nothing_though_its_page_is_of_the_same_origin()
    {
        await using var bench = await ServerBench.Start();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/entries") { Content = new StringContent(Lines.Mow(1), null, "application/jsonl") };
        request.Headers.Host = "attacker.example";
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        request.Headers.Add("Origin", "http://attacker.example");
        Assert.Equal(HttpStatusCode.BadRequest, (await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(0, bench.Entries());
    }

    private static async Task<HttpResponseMessage> Asked(HttpClient client, string host, string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Host = host;
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
