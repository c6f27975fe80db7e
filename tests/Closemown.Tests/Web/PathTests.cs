using System.Net.Sockets;
using System.Text;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>A path leads to a page, an asset or nothing, never to a file of the machine.</summary>
public sealed class PathTests
{
    [Theory]
    [InlineData("/../../../../etc/passwd")]
    [InlineData("/..%2f..%2f..%2f..%2fetc%2fpasswd")]
    [InlineData("/%2e%2e/%2e%2e/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/site.css/../../../../etc/passwd")]
    [InlineData("/..%5c..%5c..%5cetc%5cpasswd")]
    [InlineData("//etc/passwd")]
    [InlineData("/site.css%00.html")]
    [InlineData("/book.closemown")]
    [InlineData("/settings/devices.json")]
    public async Task A_path_that_climbs_finds_nothing(string path)
    {
        await using var bench = await ServerBench.Start();
        var answer = await Raw(bench, path);
        Assert.Matches("^HTTP/1.1 40[04] ", answer);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("SQLite", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_way_of_asking_finds_what_is_there()
    {
        await using var bench = await ServerBench.Start();
        Assert.StartsWith("HTTP/1.1 200 ", await Raw(bench, "/site.css"), StringComparison.Ordinal);
    }

    /// <summary>As it stands, which a client's own tidying of paths would not let through.</summary>
    private static async Task<string> Raw(ServerBench bench, string path)
    {
        using var socket = new TcpClient("127.0.0.1", new Uri(bench.Server.Address).Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
    }
}
