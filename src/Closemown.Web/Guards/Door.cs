using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Closemown.Web;

/// <summary>Through which socket a visitor came. The socket is bound to one address, so the kernel has settled where they can be.</summary>
internal enum Door
{
    /// <summary>127.0.0.1: only programs of this machine come through.</summary>
    Machine,

    /// <summary>An address on the local network: devices, which must be paired.</summary>
    Network,

    /// <summary>Plain http on the local network: only how to trust this machine.</summary>
    Trust,
}

/// <summary>Marks connections with the door they came through.</summary>
internal static class DoorMarks
{
    public static void Mark(this ListenOptions listen, Door door)
    {
        var mark = new DoorMark(door);
        listen.Use(next => connection =>
        {
            connection.Features.Set(mark);
            return next(connection);
        });
    }

    /// <summary>The door of a request; one that is not marked is treated as the network's.</summary>
    public static Door Door(this HttpContext http) => http.Features.Get<DoorMark>()?.Door ?? Web.Door.Network;

    private sealed record DoorMark(Door Door);
}
