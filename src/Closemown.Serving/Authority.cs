using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace Closemown.Serving;

/// <summary>This machine's own certificate authority: made once, trusted by the person's own devices, and only for this machine's names and addresses.</summary>
public sealed class Authority : IDisposable
{
    /// <summary>How long the authority holds.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromDays(3650);

    /// <summary>How long a server's certificate holds.</summary>
    public static readonly TimeSpan LeafLife = TimeSpan.FromDays(30);

    // A phone whose clock is slow shall not find the certificate too young.
    private static readonly TimeSpan Before = TimeSpan.FromDays(1);
    private static readonly OidCollection ServerOnly = [new("1.3.6.1.5.5.7.3.1")];
    private readonly IReadOnlyList<string> names;
    private readonly IReadOnlyList<IPNetwork> networks;

    private Authority(X509Certificate2 certificate, AuthorityNews news)
    {
        (Certificate, News) = (certificate, news);
        (names, networks) = (NameLimits.NamesOf(certificate), NameLimits.NetworksOf(certificate));
    }

    /// <summary>Whether it was made anew, and why: then each device must trust the new one.</summary>
    public AuthorityNews News { get; }

    /// <summary>Its certificate, with its key.</summary>
    public X509Certificate2 Certificate { get; }

    /// <summary>The certificate without the key, as devices are given it.</summary>
    public byte[] ForDevices => Certificate.Export(X509ContentType.Cert);

    /// <summary>SHA-256 of the certificate, to be compared by eye: pairs of hexadecimal digits.</summary>
    public string Fingerprint => string.Join(':', Certificate.GetCertHash(HashAlgorithmName.SHA256).Select(b => b.ToString("X2", System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>
    /// Opens the authority in a folder. Made where there is none; made anew where it ends within a leaf's life, may speak for others than this
    /// machine, or may not speak for an address that is served at.
    /// </summary>
    /// <param name="folder">The folder of <c>authority.key</c> (mode 0600) and <c>authority.crt</c>.</param>
    /// <param name="hostName">This machine's name.</param>
    /// <param name="addresses">The addresses of this machine that are served at.</param>
    /// <param name="now">The time.</param>
    /// <exception cref="IOException">The files are there and cannot be read as an authority.</exception>
    public static Authority Open(string folder, string hostName, IReadOnlyList<IPAddress> addresses, DateTimeOffset now) => PrivateFile.Alone(folder, () =>
    {
        var news = AuthorityNews.None;
        var (keyPath, certificatePath) = (Path.Combine(folder, "authority.key"), Path.Combine(folder, "authority.crt"));
        if (File.Exists(keyPath) && File.Exists(certificatePath))
        {
            PrivateFile.Tighten(keyPath);
            try
            {
                var kept = X509Certificate2.CreateFromPemFile(certificatePath, keyPath);
                news = Trouble(kept, addresses, now);
                if (news == AuthorityNews.None) return new Authority(kept, news);
                kept.Dispose();
            }
            catch (CryptographicException e)
            {
                throw new IOException($"the authority in {folder} (authority.key, authority.crt) cannot be read; move both files away, and each device must trust the new one", e);
            }
        }
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var made = Make(key, hostName, addresses, now);
        PrivateFile.Write(keyPath, Encoding.ASCII.GetBytes(key.ExportPkcs8PrivateKeyPem() + "\n"));
        PrivateFile.Write(certificatePath, Encoding.ASCII.GetBytes(made.ExportCertificatePem() + "\n"));
        return new Authority(made, news);
    });

    /// <summary>Makes a certificate for the server; its key is in memory only.</summary>
    /// <param name="hosts">Names it shall hold for; those the authority may not speak for are left out.</param>
    /// <param name="addresses">Addresses it shall hold for; the same.</param>
    /// <param name="now">The time.</param>
    public X509Certificate2 Issue(IEnumerable<string> hosts, IEnumerable<IPAddress> addresses, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Closemown", key, HashAlgorithmName.SHA256);
        var alternatives = new SubjectAlternativeNameBuilder();
        foreach (var host in hosts.Where(h => NameLimits.Permits(names, h)).Distinct(StringComparer.OrdinalIgnoreCase)) alternatives.AddDnsName(host);
        foreach (var address in addresses.Where(a => NameLimits.Permits(networks, a)).Distinct()) alternatives.AddIpAddress(address);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension(ServerOnly, critical: false));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(Certificate, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        request.CertificateExtensions.Add(alternatives.Build());
        using var bare = request.Create(Certificate, now - Before, now + LeafLife, Serial());
        using var whole = bare.CopyWithPrivateKey(key);
        if (!OperatingSystem.IsWindows()) return new X509Certificate2(whole);
        // Windows serves only with keys that it has taken in.
        return X509CertificateLoader.LoadPkcs12(whole.Export(X509ContentType.Pkcs12), null);
    }

    public void Dispose() => Certificate.Dispose();

    private static AuthorityNews Trouble(X509Certificate2 kept, IReadOnlyList<IPAddress> addresses, DateTimeOffset now)
    {
        if (NameLimits.IsBroad(kept)) return AuthorityNews.WasBroad;
        if (kept.NotAfter.ToUniversalTime() <= (now + LeafLife).UtcDateTime) return AuthorityNews.Ended;
        var networks = NameLimits.NetworksOf(kept);
        return addresses.All(a => NameLimits.Permits(networks, a)) ? AuthorityNews.None : AuthorityNews.OtherAddress;
    }

    private static X509Certificate2 Make(ECDsa key, string hostName, IReadOnlyList<IPAddress> addresses, DateTimeOffset now)
    {
        string[] names = [.. LanNames.Of(hostName), "localhost"];
        var request = new CertificateRequest($"CN=Closemown on {LanNames.Plain(hostName)}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, pathLengthConstraint: 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension(ServerOnly, critical: false));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(NameLimits.Make(names.Distinct(StringComparer.OrdinalIgnoreCase), addresses));
        return request.CreateSelfSigned(now - Before, now + Life);
    }

    private static byte[] Serial()
    {
        var serial = RandomNumberGenerator.GetBytes(16);
        serial[0] = (byte)(serial[0] & 0x7F | 0x40);       // positive, and without a leading zero
        return serial;
    }
}

/// <summary>Why an authority was made anew.</summary>
public enum AuthorityNews
{
    /// <summary>It was not, or there was none before.</summary>
    None,

    /// <summary>The one before came to its end.</summary>
    Ended,

    /// <summary>The one before could speak for others than this machine.</summary>
    WasBroad,

    /// <summary>This machine has an address now that the one before may not speak for.</summary>
    OtherAddress,
}
