namespace Closemown.Web;

/// <summary>How many event streams are open: each holds a connection for as long as its page is looked at.</summary>
internal sealed class EventStreams
{
    /// <summary>The most from one address on the network.</summary>
    public const int MostADevice = 8;

    /// <summary>The most at this machine, of all its browsers together.</summary>
    public const int MostAtTheMachine = 32;

    private readonly Dictionary<string, int> open = new(StringComparer.Ordinal);
    private readonly Lock gate = new();

    /// <summary>Opens one.</summary>
    /// <returns>To be disposed of when it ends; null where there are as many as may be.</returns>
    public IDisposable? Open(HttpContext http)
    {
        var (whose, most) = http.Door() == Door.Machine ? ("", MostAtTheMachine) : ($"{http.Connection.RemoteIpAddress}", MostADevice);
        lock (gate)
        {
            var now = open.GetValueOrDefault(whose);
            if (now >= most) return null;
            open[whose] = now + 1;
            return new Ended(this, whose);
        }
    }

    private void Close(string whose)
    {
        lock (gate)
        {
            if (open[whose] > 1) open[whose]--;
            else open.Remove(whose);
        }
    }

    private sealed class Ended(EventStreams streams, string whose) : IDisposable
    {
        public void Dispose() => streams.Close(whose);
    }
}
