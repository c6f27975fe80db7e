using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Closemown.Serving;
using Closemown.Tests.Book;
using Closemown.Tests.Web;
using Xunit;

namespace Closemown.Tests.Serving;

/// <summary>This machine's own authority, and the certificates it gives the server.</summary>
public sealed class AuthorityTests
{
    private static readonly DateTimeOffset Now = new(2026, 7, 1, 9, 0, 0, TimeSpan.Zero);
    private static readonly IPAddress Shed = IPAddress.Parse("192.168.1.20");

    [Fact]
    public void Its_key_is_the_owners_alone_and_stays_so()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("no modes there");
            return;
        }
        using var folder = new TempFolder();
        var settings = folder.At("settings");
        Authority.Open(settings, "shed", [Shed], Now).Dispose();
        var key = Path.Combine(settings, "authority.key");
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(key));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(settings));
        File.SetUnixFileMode(key, (UnixFileMode)0b110_100_100);
        Authority.Open(settings, "shed", [Shed], Now).Dispose();
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(key));
        var devices = new DeviceList(settings, new StillTime(Now));
        devices.Add("phone");
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(settings, "devices.json")));
        new PairingCode(settings, new StillTime(Now)).Make();
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(settings, "pairing.json")));
    }

    [Fact]
    public void It_is_made_once_and_again_only_where_it_nears_its_end()
    {
        using var folder = new TempFolder();
        using var first = Authority.Open(folder.Path, "shed", [Shed], Now);
        using var second = Authority.Open(folder.Path, "other-name", [Shed], Now.AddYears(5));
        Assert.Equal(first.Fingerprint, second.Fingerprint);
        Assert.Equal(32 * 3 - 1, first.Fingerprint.Length);
        using var late = Authority.Open(folder.Path, "shed", [Shed], Now + Authority.Life - TimeSpan.FromDays(29));
        Assert.NotEqual(first.Fingerprint, late.Fingerprint);
    }

    [Fact]
    public void Its_certificates_hold_for_this_machine_against_it()
    {
        using var folder = new TempFolder();
        using var authority = Authority.Open(folder.Path, "Shed.example", [Shed], Now);
        using var leaf = authority.Issue(["shed", "shed.local", "localhost"], [Shed, IPAddress.Loopback], Now);
        Assert.Equal([], Faults(authority, leaf, Now));
        foreach (var name in new[] { "shed", "shed.local", "localhost", "192.168.1.20", "127.0.0.1" }) Assert.True(leaf.MatchesHostname(name), name);
        foreach (var name in new[] { "other.local", "192.168.1.21", "example.com" }) Assert.False(leaf.MatchesHostname(name), name);
        Assert.True(leaf.HasPrivateKey);
        Assert.Equal(Now + TimeSpan.FromDays(30), new DateTimeOffset(leaf.NotAfter.ToUniversalTime()));
        Assert.NotEqual([], Faults(authority, leaf, Now.AddDays(31)));
        using var elsewhere = new TempFolder();
        using var another = Authority.Open(elsewhere.Path, "shed", [Shed], Now);
        Assert.NotEqual([], Faults(another, leaf, Now));
    }

    [Fact]
    public void Names_it_may_not_speak_for_are_left_out()
    {
        using var folder = new TempFolder();
        using var authority = Authority.Open(folder.Path, "shed", [Shed], Now);
        using var leaf = authority.Issue(["shed", "bank.example"], [Shed, IPAddress.Parse("93.184.216.34")], Now);
        var names = leaf.Extensions.OfType<X509SubjectAlternativeNameExtension>().Single();
        Assert.Equal(["shed"], names.EnumerateDnsNames());
        Assert.Equal([Shed], names.EnumerateIPAddresses());
    }

    [Theory]
    [InlineData("bank.example", null)]
    [InlineData("other.local", null)]
    [InlineData(null, "93.184.216.34")]
    [InlineData(null, "192.168.1.21")]
    [InlineData(null, "10.0.0.1")]
    public void F19_A_certificate_that_its_stolen_key_would_sign_for_another_machine_does_not_hold(string? name, string? address)
    {
        using var folder = new TempFolder();
        using var authority = Authority.Open(folder.Path, "shed", [Shed], Now);
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=forged", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        if (name is not null) names.AddDnsName(name);
        if (address is not null) names.AddIpAddress(IPAddress.Parse(address));
        request.CertificateExtensions.Add(names.Build());
        using var forged = request.Create(authority.Certificate, Now.AddDays(-1), Now.AddDays(20), [0x41, 1, 2, 3]);
        Assert.Contains(Faults(authority, forged, Now), f => f is X509ChainStatusFlags.HasNotPermittedNameConstraint or X509ChainStatusFlags.InvalidNameConstraints);
    }

    [Fact]
    public void F19_An_authority_that_could_speak_for_others_is_made_anew_and_says_so()
    {
        using var folder = new TempFolder();
        var key = folder.At("authority.key");
        var before = MakeBroad(folder);
        using var authority = Authority.Open(folder.Path, "shed", [Shed], Now);
        Assert.NotEqual(before, authority.Fingerprint);
        Assert.Equal(AuthorityNews.WasBroad, authority.News);
        Assert.Equal(["shed", "shed.local", "localhost"], NameLimits.NamesOf(authority.Certificate));
        Assert.Equal(["127.0.0.0/8", "::1/128", "192.168.1.20/32"], NameLimits.NetworksOf(authority.Certificate).Select(n => n.ToString()));
        using var again = Authority.Open(folder.Path, "shed", [Shed], Now);
        Assert.Equal((authority.Fingerprint, AuthorityNews.None), (again.Fingerprint, again.News));
        Assert.Contains("PRIVATE KEY", File.ReadAllText(key), StringComparison.Ordinal);
    }

    [Fact]
    public void F19_At_another_address_the_authority_is_made_anew_and_says_so()
    {
        using var folder = new TempFolder();
        using var first = Authority.Open(folder.Path, "shed", [Shed], Now);
        Assert.Equal(AuthorityNews.None, first.News);
        var moved = IPAddress.Parse("192.168.1.77");
        using var second = Authority.Open(folder.Path, "shed", [moved], Now);
        Assert.Equal(AuthorityNews.OtherAddress, second.News);
        Assert.NotEqual(first.Fingerprint, second.Fingerprint);
        using var leaf = second.Issue(["shed"], [moved, Shed], Now);
        Assert.Equal([], Faults(second, leaf, Now));
        Assert.Equal([moved], leaf.Extensions.OfType<X509SubjectAlternativeNameExtension>().Single().EnumerateIPAddresses());
    }

    [Theory]
    [InlineData("100.64.3.9", false)]
    [InlineData("100.127.255.1", false)]
    [InlineData("93.184.216.34", false)]
    [InlineData("192.168.1.20", true)]
    [InlineData("10.1.2.3", true)]
    public void F19_An_address_that_a_carriers_customers_share_is_not_private(string address, bool isPrivate) =>
        Assert.Equal(isPrivate, NameLimits.IsPrivate(IPAddress.Parse(address)));

    [Fact]
    public void A_certificate_near_its_end_is_renewed_while_the_server_runs()
    {
        using var folder = new TempFolder();
        var time = new StillTime(Now);
        using var keeper = new LeafKeeper(Authority.Open(folder.Path, "shed", [Shed], Now), ["shed"], [Shed], time);
        var first = keeper.Now.Thumbprint;
        time.Now = Now.AddDays(19.9);
        Assert.Equal(first, keeper.Now.Thumbprint);
        time.Now = Now.AddDays(20.1);
        var second = keeper.Now;
        Assert.NotEqual(first, second.Thumbprint);
        Assert.True(second.NotAfter.ToUniversalTime() > Now.AddDays(50).UtcDateTime);
        Assert.Equal(second.Thumbprint, keeper.Now.Thumbprint);
    }

    [Fact]
    public async Task The_server_gives_the_renewed_one_to_new_connections()
    {
        await using var bench = await ServerBench.Start(o => o with { Lan = true });
        async Task<DateTime> Ends()
        {
            using var handler = bench.DeviceHandler();
            DateTime? ends = null;
            handler.SslOptions.RemoteCertificateValidationCallback = (_, certificate, _, errors) =>
            {
                ends = ((X509Certificate2)certificate!).NotAfter.ToUniversalTime();
                return errors == System.Net.Security.SslPolicyErrors.None;
            };
            using var device = new HttpClient(handler) { BaseAddress = new(bench.Server.NetworkAddresses[0]) };
            Assert.Equal(HttpStatusCode.OK, (await device.GetAsync("/pair", TestContext.Current.CancellationToken)).StatusCode);
            return ends!.Value;
        }
        var before = await Ends();
        bench.Time.Now += TimeSpan.FromDays(25);
        Assert.Equal(before.AddDays(25), await Ends());
    }

    /// <summary>An authority as it was once made: for all of .local and whole private networks.</summary>
    private static string MakeBroad(TempFolder folder)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Closemown on shed", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        request.CertificateExtensions.Add(NameLimits.Make(["shed", "shed.local", "local", "localhost"], [Shed]));
        using var made = request.CreateSelfSigned(Now.AddDays(-1), Now.AddYears(5));
        File.WriteAllText(folder.At("authority.key"), key.ExportPkcs8PrivateKeyPem());
        File.WriteAllText(folder.At("authority.crt"), made.ExportCertificatePem());
        return string.Join(':', made.GetCertHash(HashAlgorithmName.SHA256).Select(b => b.ToString("X2", System.Globalization.CultureInfo.InvariantCulture)));
    }

    private static IReadOnlyList<X509ChainStatusFlags> Faults(Authority authority, X509Certificate2 leaf, DateTimeOffset at)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck, VerificationTime = at.UtcDateTime };
        chain.ChainPolicy.ApplicationPolicy.Add(new Oid("1.3.6.1.5.5.7.3.1"));
        using var root = X509CertificateLoader.LoadCertificate(authority.ForDevices);
        chain.ChainPolicy.CustomTrustStore.Add(root);
        return chain.Build(leaf) ? [] : [.. chain.ChainStatus.Select(s => s.Status)];
    }
}
