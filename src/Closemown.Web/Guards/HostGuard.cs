namespace Closemown.Web;

/// <summary>Takes only requests that name this server as it may be named at the door they came through.</summary>
/// <remarks>A page of another site whose name is made to point here (DNS rebinding) sends its own name, and is refused before anything else is looked at.</remarks>
/// <param name="network">Names and addresses on the local network.</param>
internal sealed class HostGuard(IEnumerable<string> network)
{
    private static readonly HashSet<string> Machine = new(StringComparer.OrdinalIgnoreCase) { "localhost", "127.0.0.1", "[::1]" };
    private readonly HashSet<string> network = new(network, StringComparer.OrdinalIgnoreCase);

    public Task Invoke(HttpContext http, RequestDelegate next)
    {
        var host = http.Request.Host.Host;
        var known = http.Door() == Door.Machine ? Machine : network;
        return known.Contains(host)
            ? next(http)
            : http.Refuse(StatusCodes.Status400BadRequest, new("unknown-host", "", "This server does not go by that name.", "Open the address that it printed when it started."));
    }
}
