namespace Closemown.Web;

/// <summary>What browsers are told to forbid; and that private pages are kept nowhere.</summary>
internal static class SafetyHeaders
{
    /// <summary>Nothing inline, nothing from elsewhere, no framing.</summary>
    public const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; form-action 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; frame-ancestors 'none'";

    private const string Permissions = "accelerometer=(), autoplay=(self), camera=(self), display-capture=(), geolocation=(), gyroscope=(), microphone=(self), midi=(), payment=(), screen-wake-lock=(self), usb=()";

    public static void UseSafetyHeaders(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        http.Response.OnStarting(Set, http);
        return next(http);
    });

    private static Task Set(object state)
    {
        var http = (HttpContext)state;
        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy = ContentSecurityPolicy;
        headers.XContentTypeOptions = "nosniff";
        // Nothing to others. To this server itself it must be told: without it a browser sends a form's Origin as null, which another site can do too.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = Permissions;
        // Assets carry their own rule: they are the program's, not the person's.
        if (http.GetEndpoint()?.Metadata.GetMetadata<OpenToAll>() is not { IsAsset: true } || http.Response.StatusCode >= 400) headers.CacheControl = "no-store";
        return Task.CompletedTask;
    }
}

/// <summary>Marks what a device may have before it is paired.</summary>
/// <param name="IsAsset">A file of the program, which browsers may keep.</param>
internal sealed record OpenToAll(bool IsAsset);

/// <summary>Marks what speaks JSON.</summary>
internal sealed record ForPrograms;
