using System.Net;
using Closemown.Serving;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>A device on the network comes in with a code from the machine, once, and is out when it is revoked.</summary>
public sealed class PairingTests
{
    private static ServeOptions OnLan(ServeOptions o) => o with { Lan = true };

    private static string Wrong(string code) => code[0] == '1' ? "2" + code[1..] : "1" + code[1..];

    [Fact]
    public async Task A_device_that_is_not_paired_sees_the_form_and_nothing_else()
    {
        await using var bench = await ServerBench.Start(OnLan, Lines.All);
        using var device = bench.Device();
        var page = await device.GetAsync("/", TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.Redirect, "/pair"), (page.StatusCode, page.Headers.Location!.ToString()));
        foreach (var path in new[] { "/today.json", "/steel.json", "/height.json", "/turf.json", "/plan.json", "/book.json", "/events", "/health", "/openapi.json" })
            Assert.Equal((path, HttpStatusCode.Unauthorized), (path, (await device.GetAsync(path, TestContext.Current.CancellationToken)).StatusCode));
        Assert.Equal(HttpStatusCode.Unauthorized, (await device.PostAsync("/entries", new StringContent(Lines.Mow(50), null, "application/jsonl"), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await device.PostAsync("/ask", new StringContent("{\"ask\":\"today\"}", null, "application/json"), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await device.GetAsync("/site.css", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(Lines.Count, bench.Entries());
    }

    [Fact]
    public async Task The_right_code_gives_a_cookie_that_scripts_and_other_sites_cannot_use()
    {
        await using var bench = await ServerBench.Start(OnLan, Lines.All);
        using var device = bench.Device();
        var paired = await ServerBench.Pair(device, bench.NewCode(), "shed <b>phone");
        Assert.Equal((HttpStatusCode.SeeOther, "/"), (paired.StatusCode, paired.Headers.Location!.ToString()));
        var cookie = paired.Headers.GetValues("Set-Cookie").Single(c => c.Contains("device", StringComparison.Ordinal));
        Assert.Matches("^__Host-closemown-device=[0-9a-f]{64}; ", cookie);
        Assert.All(new[] { "httponly", "samesite=strict", "secure", "path=/", "max-age=34560000" }, flag => Assert.Contains("; " + flag, cookie, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, (await device.GetAsync("/today.json", TestContext.Current.CancellationToken)).StatusCode);
        var kept = await File.ReadAllTextAsync(Path.Combine(bench.Folder, "settings", "devices.json"), TestContext.Current.CancellationToken);
        Assert.DoesNotContain(cookie.Split('=')[1].Split(';')[0], kept, StringComparison.Ordinal);
        Assert.Contains("shed bphone", kept, StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_plain_http_the_cookie_has_the_same_flags_but_secure()
    {
        await using var bench = await ServerBench.Start(o => o with { Lan = true, PlainHttp = true });
        using var device = bench.Device();
        Assert.Equal("http", device.BaseAddress!.Scheme);
        Assert.Empty(bench.Server.TrustAddresses);
        var paired = await ServerBench.Pair(device, bench.NewCode());
        var cookie = paired.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("closemown-device=", StringComparison.Ordinal));
        Assert.Contains("; httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("; samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("; secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, (await device.GetAsync("/today.json", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused_and_counts_as_no_try()
    {
        await using var bench = await ServerBench.Start(OnLan);
        using var device = bench.Device();
        var given = (await device.GetAsync("/pair", TestContext.Current.CancellationToken)).Headers.GetValues("Set-Cookie").Single();
        Assert.All(new[] { "closemown-form=", "; httponly", "; samesite=strict", "; secure" }, flag => Assert.Contains(flag, given, StringComparison.OrdinalIgnoreCase));
        var code = bench.NewCode();
        for (var n = 0; n < 6; n++)
        {
            var answer = await device.PostAsync("/pair", new FormUrlEncodedContent([new("code", n == 0 ? code : Wrong(code))]), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }
        // A token of the form without its cookie is none either.
        var page = await device.GetStringAsync("/pair", TestContext.Current.CancellationToken);
        using var other = bench.Device();
        Assert.Equal(HttpStatusCode.BadRequest, (await other.PostAsync("/pair", new FormUrlEncodedContent([new("form", page.Split("name=\"form\" value=\"")[1].Split('"')[0]), new("code", code)]), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await ServerBench.Pair(device, code)).StatusCode);
    }

    [Fact]
    public async Task Four_wrong_codes_shut_out_whoever_gave_them_and_nobody_else()
    {
        await using var bench = await ServerBench.Start(OnLan);
        var code = bench.NewCode();
        using var guesser = bench.Device("127.0.0.9");
        using var device = bench.Device();
        for (var n = 0; n < 6; n++)
        {
            var wrong = await ServerBench.Pair(guesser, Wrong(code));
            Assert.Equal(HttpStatusCode.Forbidden, wrong.StatusCode);
            var said = await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Equal(n >= 3, said.Contains("Too many wrong codes from this device", StringComparison.Ordinal));
        }
        // Not even with the right one.
        Assert.Equal(HttpStatusCode.Forbidden, (await ServerBench.Pair(guesser, code)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await ServerBench.Pair(device, Wrong(code))).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await ServerBench.Pair(device, code)).StatusCode);
    }

    [Fact]
    public void Twenty_wrong_codes_over_all_devices_lock_it_until_a_new_one_is_asked_for()
    {
        using var folder = new Book.TempFolder();
        var codes = new PairingCode(folder.Path, new StillTime(new DateTimeOffset(2026, 7, 1, 9, 0, 0, TimeSpan.Zero)));
        var code = codes.Make();
        for (var n = 0; n < 20; n++) Assert.NotEqual(PairingOutcome.Right, codes.Try(Wrong(code), $"192.168.1.{n / 4}"));
        Assert.Equal(PairingOutcome.Locked, codes.Try(code, "192.168.1.200"));
        Assert.Equal(PairingOutcome.Right, codes.Try(codes.Make(), "192.168.1.0"));
    }

    [Fact]
    public async Task Three_wrong_codes_do_not()
    {
        await using var bench = await ServerBench.Start(OnLan);
        var code = bench.NewCode();
        using var device = bench.Device();
        for (var n = 0; n < 3; n++) Assert.Equal(HttpStatusCode.Forbidden, (await ServerBench.Pair(device, Wrong(code))).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await ServerBench.Pair(device, $" {code[..4]} {code[4..]} ")).StatusCode);
    }

    [Fact]
    public async Task A_code_holds_ten_minutes_and_once()
    {
        await using var bench = await ServerBench.Start(OnLan);
        using var device = bench.Device();
        var code = bench.NewCode();
        bench.Time.Now += TimeSpan.FromMinutes(10);
        Assert.Equal(HttpStatusCode.Forbidden, (await ServerBench.Pair(device, code)).StatusCode);
        code = bench.NewCode();
        bench.Time.Now += TimeSpan.FromMinutes(9.9);
        Assert.Equal(HttpStatusCode.SeeOther, (await ServerBench.Pair(device, code)).StatusCode);
        using var second = bench.Device();
        Assert.Equal(HttpStatusCode.Forbidden, (await ServerBench.Pair(second, code)).StatusCode);
    }

    [Fact]
    public async Task A_device_revoked_while_the_server_runs_is_out_and_the_others_stay()
    {
        await using var bench = await ServerBench.Start(OnLan);
        using var lost = bench.Device();
        using var kept = bench.Device();
        await ServerBench.Pair(lost, bench.NewCode(), "phone");
        await ServerBench.Pair(kept, bench.NewCode(), "phone");
        var list = new DeviceList(Path.Combine(bench.Folder, "settings"), bench.Time);       // as the command has it
        Assert.Equal(["phone", "phone 2"], list.All().Select(d => d.Name));
        Assert.Equal(HttpStatusCode.OK, (await lost.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
        Assert.True(list.Revoke("PHONE"));
        Assert.Equal(HttpStatusCode.Unauthorized, (await lost.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await kept.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(1, list.RevokeAll());
        Assert.Equal(HttpStatusCode.Unauthorized, (await kept.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task F13_A_revoked_device_is_out_of_its_stream_at_once()
    {
        await using var bench = await ServerBench.Start(OnLan);
        using var lost = bench.Device();
        using var kept = bench.Device();
        await ServerBench.Pair(lost, bench.NewCode(), "lost");
        await ServerBench.Pair(kept, bench.NewCode(), "kept");
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(60));
        using var goes = await Stream(lost);
        using var stays = await Stream(kept);
        Assert.True(new DeviceList(Path.Combine(bench.Folder, "settings"), bench.Time).Revoke("lost"));
        // Before any beat (fifteen seconds) and without any news its stream has ended; the entry after it is told to the other only.
        var rest = await goes.ReadToEndAsync(patience.Token);
        Assert.DoesNotContain("event: changed", rest, StringComparison.Ordinal);
        Assert.DoesNotContain("still here", rest, StringComparison.Ordinal);
        await bench.Enter(Lines.Mow(0));
        while (await stays.ReadLineAsync(patience.Token) != "event: changed")
        {
        }

        async Task<StreamReader> Stream(HttpClient device)
        {
            var answer = await device.GetAsync("/events", HttpCompletionOption.ResponseHeadersRead, patience.Token);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            return new StreamReader(await answer.Content.ReadAsStreamAsync(patience.Token));
        }
    }

    [Fact]
    public async Task A_made_up_cookie_lets_nobody_in()
    {
        await using var bench = await ServerBench.Start(OnLan);
        using var device = bench.Device();
        await ServerBench.Pair(device, bench.NewCode());
        var digest = new DeviceList(Path.Combine(bench.Folder, "settings"), bench.Time).All()[0].Token;
        foreach (var token in new[] { new string('0', 64), digest, "", "x" })
        {
            using var other = bench.Device();
            using var request = new HttpRequestMessage(HttpMethod.Get, "/health");
            request.Headers.Add("Cookie", $"__Host-closemown-device={token}");
            Assert.Equal(HttpStatusCode.Unauthorized, (await other.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
        }
    }

    [Fact]
    public async Task The_door_without_https_shows_how_to_trust_and_nothing_else()
    {
        await using var bench = await ServerBench.Start(OnLan, Lines.All);
        using var plain = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new(bench.Server.TrustAddresses[0]) };
        var trust = await plain.GetStringAsync("/trust", TestContext.Current.CancellationToken);
        Assert.Contains(bench.Server.NetworkAddresses[0], trust, StringComparison.Ordinal);
        var certificate = await plain.GetAsync("/closemown-authority.crt", TestContext.Current.CancellationToken);
        Assert.Equal("application/x-x509-ca-cert", certificate.Content.Headers.ContentType!.ToString());
        using var authority = System.Security.Cryptography.X509Certificates.X509CertificateLoader.LoadCertificate(await certificate.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.False(authority.HasPrivateKey);
        Assert.StartsWith("text/css", (await plain.GetAsync("/site.css", TestContext.Current.CancellationToken)).EnsureSuccessStatusCode().Content.Headers.ContentType!.ToString(), StringComparison.Ordinal);
        foreach (var path in new[] { "/pair", "/today.json", "/events", "/health", "/authority.key" }) Assert.Equal((path, HttpStatusCode.NotFound), (path, (await plain.GetAsync(path, TestContext.Current.CancellationToken)).StatusCode));
        Assert.Equal(HttpStatusCode.NotFound, (await plain.PostAsync("/entries", new StringContent(Lines.Mow(50), null, "application/jsonl"), TestContext.Current.CancellationToken)).StatusCode);
    }
}
