using Closemown.Serving;

namespace Closemown.Web;

/// <summary>Lets devices on the network in only when they are paired; whoever is at the machine needs no pairing.</summary>
internal sealed class DeviceGuard(DeviceList? devices)
{
    /// <summary>A cookie with this beginning is taken by browsers over https only, for this host and the whole of it.</summary>
    private const string HostPrefix = "__Host-";
    private const string CookieName = "closemown-device";
    private static readonly TimeSpan CookieLife = TimeSpan.FromDays(400);      // the longest that browsers keep one

    public Task Invoke(HttpContext http, RequestDelegate next)
    {
        if (http.Door() == Door.Machine) return next(http);
        var endpoint = http.GetEndpoint();
        if (endpoint?.Metadata.GetMetadata<OpenToAll>() is not null) return next(http);
        if (devices?.Find(http.Request.Cookies[NameOf(http.Request)]) is { } device)
        {
            devices.Saw(device);
            http.Features.Set(new PairedDevice(device, devices));
            return next(http);
        }
        if (endpoint?.Metadata.GetMetadata<ForPrograms>() is null && HttpMethods.IsGet(http.Request.Method))
        {
            http.Response.Redirect("/pair");
            return Task.CompletedTask;
        }
        return http.Refuse(StatusCodes.Status401Unauthorized, new("not-paired", "", "This device is not paired, or was revoked.", "Open /pair and enter the code from the machine that serves."));
    }

    /// <summary>Gives a device its cookie.</summary>
    public static void Give(HttpContext http, string token) => http.Response.Cookies.Append(NameOf(http.Request), token, new CookieOptions
    {
        HttpOnly = true,
        Secure = http.Request.IsHttps,
        SameSite = SameSiteMode.Strict,
        Path = "/",
        MaxAge = CookieLife,
        IsEssential = true,
    });

    private static string NameOf(HttpRequest request) => request.IsHttps ? HostPrefix + CookieName : CookieName;
}

/// <summary>The device that a request comes from, on the network.</summary>
internal sealed class PairedDevice(Device device, DeviceList devices)
{
    /// <summary>How long a device that was revoked may go on reading an answer that is being written.</summary>
    public static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(1);

    /// <summary>What the person called it.</summary>
    public string Name { get; } = device.Name;

    /// <summary>Whether it is paired still; asked of the file, as for each request.</summary>
    public bool IsPaired()
    {
        try
        {
            return devices.Has(device);
        }
        catch (IOException)
        {
            return false;
        }
    }
}
