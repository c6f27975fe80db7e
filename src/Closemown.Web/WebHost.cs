using Closemown.Pages;
using Closemown.Pipe;
using Closemown.Serving;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.Logging.Console;

namespace Closemown.Web;

/// <summary>Puts the server together.</summary>
/// <remarks>Nothing is taken from configuration files or the environment: what it listens on and lets in is told by the options alone.</remarks>
public static class WebHost
{
    /// <summary>Builds a server that is not started yet.</summary>
    /// <param name="options">What to serve, and to whom.</param>
    /// <param name="time">The clock; null for the system's.</param>
    /// <exception cref="Book.BookException">The book cannot be used.</exception>
    /// <exception cref="IOException">The authority or its folder cannot be used.</exception>
    public static WebServer Build(ServeOptions options, TimeProvider? time = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        time ??= TimeProvider.System;
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ApplicationName = "Closemown.Web", ContentRootPath = AppContext.BaseDirectory, EnvironmentName = Environments.Production });
        var network = options.Lan ? Network.Open(options, time) : null;
        var workshop = new Workshop(options, time);
        var listening = new Listening();
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel => listening.Open(kestrel, options, network));
        if (network is not null) builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.UseStaticWebAssets();
        // As built is as published: an asset by its fingerprint never changes.
        (builder.Configuration["ReloadStaticAssetsAtRuntime"], builder.Configuration["EnableStaticAssetsDevelopmentCaching"]) = ("false", "true");
        AddLog(builder.Logging, options.Log);
        AddServices(builder.Services, options, time, workshop);
        var app = builder.Build();
        var log = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Closemown");
        workshop.BugMet = bug => log.LogError("{Asked} {Where}", bug.Asked, BugFault.Trace(bug.Exception));
        Use(app, network, listening);
        Map(app, network);
        return new WebServer(app, options, workshop, network, listening);
    }

    private static void AddServices(IServiceCollection services, ServeOptions options, TimeProvider time, Workshop workshop)
    {
        services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromSeconds(5));
        services.AddRoutingCore();
        services.AddSingleton(time);
        services.AddSingleton(options.Limits);
        services.AddSingleton(workshop);
        services.AddSingleton<EventStreams>();
        services.AddHttpContextAccessor();
        services.AddScoped(s => LookCookie.Read(s.GetRequiredService<IHttpContextAccessor>().HttpContext?.Request, VisitorStyle.Usual(options)));
        services.AddScoped(s => s.GetRequiredService<VisitorLook>().WritingStyle);
        services.AddScoped<FormInHand>();
        services.AddSingleton<IBlankForms, BlankForms>();
        services.AddScoped<IWorkshop, VisitorWorkshop>();
        services.AddHostedService<Lookout>();
        services.AddRazorComponents();
        services.AddPacking();
        services.AddOpenApi(o => o.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new() { Title = "Closemown", Version = "1", Description = "Entries, questions and answers in the shapes of docs/entries.md. Faults come as {\"ok\":false,\"error\":{code, field, message, remedy}}." };
            return Task.CompletedTask;
        }));
        services.AddAntiforgery(o =>
        {
            o.Cookie = new() { Name = "closemown-form", HttpOnly = true, SameSite = SameSiteMode.Strict, SecurePolicy = CookieSecurePolicy.SameAsRequest, IsEssential = true };
            o.FormFieldName = "form";
        });
        services.AddPace(options.Limits);
        var keys = services.AddDataProtection().SetApplicationName("closemown");
        if (options.Folder is { } folder)
        {
            // A form that was open while the server was started anew stays good.
            var kept = Path.Combine(folder, "form-keys");
            PrivateFile.MakeFolder(folder);
            PrivateFile.MakeFolder(kept);
            keys.PersistKeysToFileSystem(new DirectoryInfo(kept));
        }
        else
        {
            keys.UseEphemeralDataProtectionProvider();
        }
    }

    /// <summary>The guards, in the order in which they look at a request; docs/decisions/0014 says why this one.</summary>
    private static void Use(WebApplication app, Network? network, Listening listening)
    {
        app.Use(Caller.Answered);
        app.UseRequestLog();
        app.UseSafetyHeaders();
        app.Use(HeadGuard.Invoke);
        app.Use(Unforeseen.Invoke);
        app.Use(Nowhere.Invoke);
        app.Use(new HostGuard(network?.Hosts ?? []).Invoke);
        app.Use(CrossSiteGuard.Invoke);
        app.UseRateLimiter();
        app.UseResponseCompression();
        if (network?.Leaf is not null) app.UseTrustDoor(network, () => listening.Of(Door.Network).First());
        app.UseRouting();
        app.Use(new DeviceGuard(network?.Devices).Invoke);
        app.Use(ContentGuard.Invoke);
        app.UseAntiforgery();
    }

    private static void Map(WebApplication app, Network? network)
    {
        app.MapStaticAssets().WithMetadata(new OpenToAll(true));
        app.MapTwins();
        app.MapBook();
        app.MapPlanCalendar();
        app.MapBookFiles();
        app.MapEntries();
        app.MapEnter();
        app.MapFormToken();
        app.MapLook();
        app.MapAsk();
        app.MapEvents();
        app.MapHealth();
        app.MapOpenApi("/openapi.json").WithMetadata(new ForPrograms());
        app.MapRazorComponents<App>();
        if (network is not null) app.MapPair(network, app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Closemown.Pair"));
    }

    private static void AddLog(ILoggingBuilder log, bool asked)
    {
        log.SetMinimumLevel(asked ? LogLevel.Information : LogLevel.Warning);
        log.AddFilter("Microsoft", LogLevel.Warning);
        // What these two say at a fault holds the exception's text, which may hold what a person typed; Unforeseen says it without.
        log.AddFilter("Microsoft.AspNetCore.Server.Kestrel", LogLevel.Critical);
        log.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Critical);
        log.AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Critical);
        log.AddJsonConsole(o => o.UseUtcTimestamp = true);
        log.Services.Configure<JsonConsoleFormatterOptions>(o => (o.TimestampFormat, o.IncludeScopes) = ("O", false));
        log.Services.Configure<ConsoleLoggerOptions>(o => o.LogToStandardErrorThreshold = LogLevel.Trace);
    }
}
