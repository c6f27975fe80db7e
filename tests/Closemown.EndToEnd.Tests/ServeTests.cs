using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The program serves: at an address, over the person's book, until it is told to end.</summary>
public sealed class ServeTests
{
    private const int Interrupt = 2;
    private const int Terminate = 15;
    private const string Position = """{"kind":"area","area":"green","m2":200,"lat":51.4321,"lon":-2.8765}""";

    private static void NotOnWindows() => Assert.SkipWhen(OperatingSystem.IsWindows(), "ended by signals here");

    [Theory]
    [InlineData(Interrupt)]
    [InlineData(Terminate)]
    public async Task It_says_where_it_is_answers_and_ends_when_told(int signal)
    {
        NotOnWindows();
        using var bench = new Bench();
        using var served = Served.Start(bench.Begin("serve", "--port", "0", "--json"));
        // Started in the background or under nohup, a program inherits that it does not hear SIGINT.
        Assert.SkipWhen(served.Ignores(signal), $"signal {signal} is ignored where the tests were started, and the server inherits that: it cannot be ended by it");
        Assert.Matches("^http://127.0.0.1:[0-9]+/$", (string)served.Said["address"]!);
        Assert.Equal(bench.Book, (string)served.Said["book"]!);
        var health = JsonNode.Parse(await served.Client.GetStringAsync("/health", TestContext.Current.CancellationToken))!;
        Assert.True((bool)health["ok"]!);
        // A page that is waiting for news does not keep it from ending.
        using var events = await served.Client.GetAsync("/events", HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        Assert.Equal((0, ""), served.End(signal));
        Assert.Equal(0, bench.Run("book", "verify").Exit);
    }

    [Fact]
    public async Task The_launcher_serves_as_well()
    {
        NotOnWindows();
        using var bench = new Bench();
        using var served = Served.Start(bench.BeginOther(Path.Combine(Bench.Root, "closemown"), "serve", "--port", "0", "--json"));
        Assert.Equal(HttpStatusCode.OK, (await served.Client.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Contains("<h1>", await served.Client.GetStringAsync("/", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(0, served.End(Terminate).Exit);
    }

    [Fact]
    public async Task A_command_beside_it_and_the_server_see_each_others_entries()
    {
        NotOnWindows();
        using var bench = new Bench();
        using var served = Served.Start(bench.Begin("serve", "--port", "0", "--json"));
        using var events = await served.Client.GetAsync("/events", HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        using var reader = new StreamReader(await events.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
        Assert.Equal(0, bench.Run("add", "contact", "none", "light", "--unit", "mower").Exit);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(30));
        while (await reader.ReadLineAsync(patience.Token) != "data: {\"seq\":1}")
        {
        }
        var entered = await served.Client.PostAsync("/entries", new StringContent("""{"kind":"mow","hours":0.4}""" + "\n", Encoding.UTF8, "application/jsonl"), TestContext.Current.CancellationToken);
        Assert.True((bool)JsonNode.Parse(await entered.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!["ok"]!);
        var book = JsonNode.Parse(await served.Client.GetStringAsync("/book.json", TestContext.Current.CancellationToken))!["book"]!["entries"]!.AsArray();
        Assert.Equal(["contact", "mow"], book.Select(e => (string)e!["entry"]!["kind"]!));
        Assert.Equal(2, bench.Run("book", "export").Lines.Length);
        Assert.Equal(0, served.End(Terminate).Exit);
    }

    [Fact]
    public async Task The_invented_book_is_served_too()
    {
        NotOnWindows();
        using var bench = new Bench();
        using var served = Served.Start(bench.Begin("demo", "--serve", "--port", "0", "--json"));
        Assert.NotEqual(bench.Book, (string)served.Said["book"]!);
        Assert.True((long)JsonNode.Parse(await served.Client.GetStringAsync("/health", TestContext.Current.CancellationToken))!["health"]!["entries"]! > 100);
        Assert.Equal(0, served.End(Terminate).Exit);
        Directory.Delete(Path.GetDirectoryName((string)served.Said["book"]!)!, recursive: true);
    }

    [Fact]
    public async Task On_the_network_a_device_pairs_and_is_revoked_and_the_log_tells_no_secret()
    {
        NotOnWindows();
        using var bench = new Bench();
        Assert.Equal(0, bench.Run(["pipe"], Position, null).Exit);
        using var served = Served.Start(bench.Begin("serve", "--port", "0", "--lan", "--http", "--address", "127.0.0.2", "--log", "--json"));
        var code = (string)served.Said["code"]!;
        Assert.Matches("^[0-9]{8}$", code);
        var cookies = new CookieContainer();
        using var device = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = cookies }) { BaseAddress = new((string)served.Said["network"]![0]!) };
        Assert.Equal(HttpStatusCode.Unauthorized, (await device.GetAsync("/today.json", TestContext.Current.CancellationToken)).StatusCode);
        var form = (await device.GetStringAsync("/pair", TestContext.Current.CancellationToken)).Split("name=\"form\" value=\"")[1].Split('"')[0];
        Assert.Equal(HttpStatusCode.SeeOther, (await device.PostAsync("/pair", new FormUrlEncodedContent([new("form", form), new("code", code), new("name", "shed phone")]), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await device.GetAsync("/turf.json?area=green", TestContext.Current.CancellationToken)).StatusCode);
        await device.PostAsync("/entries", new StringContent(Position + "\n" + Position.Replace("51.4321", "951.4321", StringComparison.Ordinal), Encoding.UTF8, "application/jsonl"), TestContext.Current.CancellationToken);
        await device.PostAsync("/ask", new StringContent("""{"ask":"turf","area":"51.4321"}""", Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken);
        await device.GetAsync("/nowhere/51.4321?lat=51.4321&lon=-2.8765", TestContext.Current.CancellationToken);
        Assert.Contains("shed phone", bench.Run("devices").Out, StringComparison.Ordinal);
        Assert.Equal("shed phone", (string)bench.Run("devices", "--json").Json["devices"]![0]!["name"]!);
        Assert.Equal(1, bench.Run("devices", "revoke", "phone").Exit);
        Assert.Equal(0, bench.Run("devices", "revoke", "shed phone").Exit);
        Assert.Equal(HttpStatusCode.Unauthorized, (await device.GetAsync("/today.json", TestContext.Current.CancellationToken)).StatusCode);
        var token = cookies.GetCookies(device.BaseAddress)["closemown-device"]!.Value;
        var (exit, log) = served.End(Terminate);
        Assert.Equal(0, exit);
        var lines = log.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!.AsObject()).ToList();
        Assert.Contains(lines, l => (string?)l["State"]?["Endpoint"] == "/turf.json" && (int?)l["State"]?["Status"] == 200);
        // The digits of a time of day may be anything.
        var told = Regex.Replace(log, @"\d\d:\d\d:\d\d\.\d+", "");
        foreach (var secret in new[] { "51.4", "2.87", token, code, form, "shed phone", bench.Folder }) Assert.DoesNotContain(secret, told, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_served_is_said()
    {
        NotOnWindows();
        using var bench = new Bench();
        using var taken = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port;
        var busy = bench.Run("serve", "--port", $"{port}");
        Assert.Equal((1, ""), (busy.Exit, busy.Out));
        Assert.Contains($"Port {port} is in use", busy.Error, StringComparison.Ordinal);
        Assert.Equal(2, bench.Run("serve", "--port", "70000").Exit);
        Assert.Equal(2, bench.Run("serve", "--http").Exit);
        var outside = bench.Run("serve", "--port", "0", "--lan", "--address", "93.184.216.34");
        Assert.Equal(1, outside.Exit);
        Assert.Contains("private network", outside.Error, StringComparison.Ordinal);
        File.WriteAllText(bench.Book, new string('x', 5000));
        var wrong = bench.Run("serve", "--port", "0", "--json");
        Assert.Equal(1, wrong.Exit);
        Assert.False((bool)wrong.Json["ok"]!);
        Assert.Contains("not a book", wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_code_and_no_devices()
    {
        using var bench = new Bench();
        Assert.Matches(": [0-9]{4} [0-9]{4}\n$", bench.Run("devices", "code").Out);
        Assert.NotEqual((string)bench.Run("devices", "code", "--json").Json["code"]!, (string)bench.Run("devices", "code", "--json").Json["code"]!);
        Assert.Contains("No device is paired", bench.Run("devices").Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Run("devices", "revoke", "all").Exit);
    }
}
