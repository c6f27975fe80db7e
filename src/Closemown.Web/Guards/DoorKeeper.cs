using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Closemown.Web;

/// <summary>How many connections a door holds at once.</summary>
/// <param name="Most">Of all visitors together.</param>
/// <param name="MostAnAddress">Of one address; <see cref="int.MaxValue"/> where all come from one.</param>
internal sealed record DoorRoom(int Most, int MostAnAddress);

/// <summary>Keeps a door from being filled: where there is no room, the connection that has been quiet the longest makes way for the new one; first those that never asked for anything.</summary>
/// <remarks>
/// A connection is quiet while none of its requests is being answered: idle, with half a header, or still agreeing on keys. Whoever fills a door
/// with such connections drops their own, and not one that somebody keeps open between two pages. Where all are busy, one that has been so for longer than any page takes makes way; else the new one is refused.
/// </remarks>
internal sealed class DoorKeeper(DoorRoom room, TimeProvider time)
{
    /// <summary>No page takes so long; what does is a long download, an event stream, or a body that does not come.</summary>
    public static readonly TimeSpan LongRequest = TimeSpan.FromSeconds(10);

    private readonly Lock gate = new();
    private readonly List<Caller> callers = [];

    /// <summary>The room of each door.</summary>
    public static DoorRoom RoomOf(Door door) => door switch
    {
        // All come from this machine: a limit of an address would be the door's.
        Door.Machine => new(256, int.MaxValue),
        Door.Network => new(256, 16),
        _ => new(64, 16),
    };

    /// <summary>Connections held now.</summary>
    public int Count
    {
        get
        {
            lock (gate) return callers.Count;
        }
    }

    /// <summary>Looks at each connection of a socket before anything is read of it.</summary>
    public void Watch(ListenOptions listen) => listen.Use(next => async connection =>
    {
        if (Enter(connection) is not { } caller)
        {
            connection.Abort(new ConnectionAbortedException("The door is full."));
            return;
        }
        connection.Features.Set(caller);
        try
        {
            await next(connection);
        }
        finally
        {
            lock (gate) callers.Remove(caller);
        }
    });

    private Caller? Enter(ConnectionContext connection)
    {
        var caller = new Caller(connection, (connection.RemoteEndPoint as IPEndPoint)?.Address, time);
        Caller? leaves = null;
        lock (gate)
        {
            var alike = callers.Where(c => Equals(c.Address, caller.Address)).ToList();
            if (alike.Count >= room.MostAnAddress) leaves = Leaves(alike);
            else if (callers.Count >= room.Most) leaves = Leaves(callers);
            else
            {
                callers.Add(caller);
                return caller;
            }
            if (leaves is null) return null;
            callers.Remove(leaves);
            callers.Add(caller);
        }
        leaves.Leave();
        return caller;
    }

    private Caller? Leaves(List<Caller> among)
    {
        var now = time.GetTimestamp();
        return among.Where(c => !c.Busy && !c.Served).MinBy(c => c.Since)
            ?? among.Where(c => !c.Busy).MinBy(c => c.Since)
            ?? among.Where(c => time.GetElapsedTime(c.Since, now) > LongRequest).MinBy(c => c.Since);
    }
}

/// <summary>A connection, and since when it is quiet or busy.</summary>
internal sealed class Caller(ConnectionContext connection, IPAddress? address, TimeProvider time)
{
    private int requests;
    private bool served;
    private long since = time.GetTimestamp();

    public IPAddress? Address { get; } = address;

    /// <summary>Whether a request of it is being answered.</summary>
    public bool Busy => Volatile.Read(ref requests) > 0;

    /// <summary>Whether a request of it was ever answered.</summary>
    public bool Served => Volatile.Read(ref served);

    /// <summary>When it last began to be quiet or busy, in the clock's ticks.</summary>
    public long Since => Volatile.Read(ref since);

    /// <summary>Marks the connection busy while a request is answered.</summary>
    public static async Task Answered(HttpContext http, RequestDelegate next)
    {
        var caller = http.Features.Get<Caller>();
        caller?.Turn(1);
        try
        {
            await next(http);
        }
        finally
        {
            caller?.Turn(-1);
        }
    }

    /// <summary>Closes it.</summary>
    public void Leave() => connection.Abort(new ConnectionAbortedException("It made way for a new one."));

    private void Turn(int by)
    {
        if (by < 0) Volatile.Write(ref served, true);
        var now = Interlocked.Add(ref requests, by);
        if (now == 0 || (by > 0 && now == 1)) Volatile.Write(ref since, time.GetTimestamp());
    }
}
