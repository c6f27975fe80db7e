using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Closemown.Serving;

/// <summary>Holds the server's certificate, and makes a new one when it nears its end: looked at with each new connection.</summary>
public sealed class LeafKeeper(Authority authority, IReadOnlyList<string> hosts, IReadOnlyList<IPAddress> addresses, TimeProvider time) : IDisposable
{
    /// <summary>How long before its end a certificate is renewed.</summary>
    public static readonly TimeSpan RenewBefore = TimeSpan.FromDays(10);

    private readonly Lock gate = new();
    private readonly List<X509Certificate2> made = [];

    /// <summary>The certificate to serve with now.</summary>
    public X509Certificate2 Now
    {
        get
        {
            lock (gate)
            {
                var now = time.GetUtcNow();
                // Older ones stay open: a connection that is just being made may hold one.
                if (made.Count == 0 || made[^1].NotAfter.ToUniversalTime() - RenewBefore <= now.UtcDateTime) made.Add(authority.Issue(hosts, addresses, now));
                return made[^1];
            }
        }
    }

    public void Dispose()
    {
        foreach (var certificate in made) certificate.Dispose();
        authority.Dispose();
    }
}
