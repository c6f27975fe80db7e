using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Closemown.Book;
using Closemown.Serving;
using Closemown.Web;

namespace Closemown.Tests.Web;

/// <summary>A running server with a book and a folder of its own; 127.0.0.2 plays the local network.</summary>
internal sealed class ServerBench : IAsyncDisposable
{
    public const string NetworkAddress = "127.0.0.2";

    private ServerBench(string folder, StillTime time, WebServer server)
    {
        (Folder, Time, Server) = (folder, time, server);
        Machine = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new(server.Address) };
    }

    public string Folder { get; }

    public string Book => BookIn(Folder);

    public StillTime Time { get; }

    public WebServer Server { get; }

    /// <summary>A program at the machine.</summary>
    public HttpClient Machine { get; }

    /// <param name="told">Changes what is served.</param>
    /// <param name="entries">Lines that the book holds.</param>
    /// <param name="spoil">Does something to the book's file before it is served.</param>
    /// <param name="now">The time at which the server's clock stands; a browser that tells its own time needs the present one.</param>
    public static async Task<ServerBench> Start(Func<ServeOptions, ServeOptions>? told = null, IEnumerable<string>? entries = null, Action<string>? spoil = null, DateTimeOffset? now = null)
    {
        var folder = Directory.CreateTempSubdirectory("closemown-test-").FullName;
        if (entries is not null)
        {
            using var book = BookFile.Open(BookIn(folder));
            using var lines = new StringReader(string.Join('\n', entries));
            var report = Importer.Read(lines, book, new ImportOptions { AllOrNone = true });
            if (!report.Ok) throw new InvalidOperationException(report.Faults[0].ToString());
        }
        spoil?.Invoke(BookIn(folder));
        var options = new ServeOptions { Book = BookIn(folder), Folder = Path.Combine(folder, "settings"), Port = 0, Addresses = [NetworkAddress] };
        var time = new StillTime(now ?? new DateTimeOffset(2026, 7, 1, 9, 2, 0, TimeSpan.Zero));
        var server = WebHost.Build(told?.Invoke(options) ?? options, time);
        await server.Start();
        return new(folder, time, server);
    }

    /// <summary>A device on the network, which trusts this machine's authority and nothing else.</summary>
    /// <param name="from">Its own address, of 127.0.0.0/8; null for the usual one.</param>
    public HttpClient Device(string? from = null) => new(DeviceHandler(from)) { BaseAddress = new(Server.NetworkAddresses[0]) };

    public SocketsHttpHandler DeviceHandler(string? from = null)
    {
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() };
        if (from is not null)
        {
            handler.ConnectCallback = async (context, stop) =>
            {
                var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
                socket.Bind(new IPEndPoint(IPAddress.Parse(from), 0));
                await socket.ConnectAsync(context.DnsEndPoint, stop);
                return new NetworkStream(socket, ownsSocket: true);
            };
        }
        if (Server.TrustAddresses.Count > 0)
        {
            var authority = X509CertificateLoader.LoadCertificateFromFile(Path.Combine(Folder, "settings", "authority.crt"));
            handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck, VerificationTime = Time.Now.UtcDateTime };
            handler.SslOptions.CertificateChainPolicy.CustomTrustStore.Add(authority);
        }
        return handler;
    }

    /// <summary>Fills in the form at /pair.</summary>
    public static async Task<HttpResponseMessage> Pair(HttpClient device, string code, string name = "phone")
    {
        var page = await device.GetStringAsync("/pair");
        var token = page.Split("name=\"form\" value=\"")[1].Split('"')[0];
        return await device.PostAsync("/pair", new FormUrlEncodedContent([new("form", token), new("code", code), new("name", name)]));
    }

    public string NewCode() => new PairingCode(Path.Combine(Folder, "settings"), Time).Make();

    public Task<HttpResponseMessage> Enter(string lines, string type = "application/jsonl") => Machine.PostAsync("/entries", new StringContent(lines, Encoding.UTF8, type));

    public long Entries()
    {
        using var book = BookFile.Open(Book, new BookOptions { ReadOnly = true });
        return book.Count;
    }

    public async ValueTask DisposeAsync()
    {
        Machine.Dispose();
        await Server.App.StopAsync();
        await Server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }

    private static string BookIn(string folder) => Path.Combine(folder, "book.closemown");
}
