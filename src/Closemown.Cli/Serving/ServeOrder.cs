using System.CommandLine;
using System.Globalization;
using Closemown.Book;
using Closemown.Serving;

namespace Closemown.Cli;

/// <summary>What is typed to start the server, and the handing over to it.</summary>
internal sealed record ServeOrder(ServeOptions Options)
{
    private static readonly Option<int> Port = new("--port") { Description = "the port; 0 takes a free one", HelpName = "N", DefaultValueFactory = _ => 5180 };
    private static readonly Option<bool> Open = new("--open") { Description = "open a browser when ready" };
    private static readonly Option<bool> Lan = new("--lan") { Description = "serve devices on the local network too: with https on the next port, and a code to pair each" };
    private static readonly Option<bool> Http = new("--http") { Description = "with --lan: without https" };
    private static readonly Option<string[]> Address = new("--address") { Description = "with --lan: the address to serve at; else all private ones of this machine", HelpName = "ADDRESS" };
    private static readonly Option<bool> Log = new("--log") { Description = "a line of JSON on standard error for each request" };

    public static void AddTo(CliCommand command)
    {
        foreach (var option in (Option[])[Port, Open, Lan, Http, Address, Log]) command.Options.Add(option);
    }

    /// <exception cref="CliFault">A value cannot be, or two do not go together.</exception>
    public static ServeOrder Of(Call call, string book, bool timeOfTheBook = false)
    {
        var parsed = call.Parsed;
        var (port, lan, http, addresses) = (parsed.GetValue(Port), parsed.GetValue(Lan), parsed.GetValue(Http), parsed.GetValue(Address) ?? []);
        var last = lan ? 65533 : 65535;
        if (port < 0 || port > last) throw CliFault.Usage($"There is no port {port} to serve at.", $"Give one from 1024 to {last}, or 0 for a free one.");
        if (http && !lan) throw CliFault.Usage("--http goes with --lan: on this machine alone it is http anyway.", "Leave it out, or add --lan.");
        if (addresses.Length > 0 && !lan) throw CliFault.Usage("--address goes with --lan.", "Leave it out, or add --lan.");
        var (has, called) = (call.Preferences, call.Around.Called);
        int Whole(Setting setting) => int.Parse(has.Value(setting), CultureInfo.InvariantCulture);
        return new(new ServeOptions
        {
            Book = book,
            Folder = Folder(call),
            Port = port,
            Open = parsed.GetValue(Open),
            Lan = lan,
            PlainHttp = http,
            Addresses = addresses,
            Log = parsed.GetValue(Log),
            Json = call.Json,
            TimeOfTheBook = timeOfTheBook,
            SoundPart = call.SoundPart,
            Called = called,
            PriceOfMinute = has.PriceOfMinute,
            Words = has.Value(Setting.Words),
            Gap = has.Value(Setting.Gap),
            Height = has.Value(Setting.Height),
            DecimalSign = has.Value(Setting.Decimal),
            Limits = new ServeLimits
            {
                RequestBytes = Whole(Setting.RequestBytes),
                RequestLines = Whole(Setting.RequestLines),
                RequestPixels = Whole(Setting.RequestPixels),
                RequestsPerSecond = Whole(Setting.RequestsPerSecond),
            },
        });
    }

    /// <summary>The folder of the settings, where devices and the authority are kept too; null where the machine names none.</summary>
    public static string? Folder(Call call) => Path.GetDirectoryName(call.Preferences.File.Path);

    /// <summary>Hands over to the server.</summary>
    /// <returns>Its exit code.</returns>
    public int Start(Call call)
    {
        if (Options.Book != BookFile.InMemory && Directory.Exists(Options.Book)) throw CliFault.Refused($"{Options.Book} is a folder.", "Give the path of the book's file in it.");
        call.Screen.Out.Flush();
        return OtherProgram.Become(WebProgram(), [Options.ToJson()]);
    }

    /// <summary>The server's program: in a folder beside this one where it was put together to be passed on, else where the build put it.</summary>
    private static string WebProgram()
    {
        const string name = "Closemown.Web";
        var here = AppContext.BaseDirectory;
        var kind = Path.GetFileName(Path.TrimEndingDirectorySeparator(here));
        string[] places = [Path.Combine(here, "web"), Path.Combine(here, "..", "..", name, kind), Path.Combine(here, "..", "fast-web")];
        return places.Select(p => Path.GetFullPath(Path.Combine(p, name + ".dll"))).FirstOrDefault(File.Exists)
            ?? throw CliFault.Refused("The program that serves is not here.", "Build all of it: dotnet build -c Release src/Closemown.Cli");
    }
}
