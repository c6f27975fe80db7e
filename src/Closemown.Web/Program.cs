using System.Diagnostics;
using System.Net.Sockets;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Serving;
using Closemown.Web;

// Started by the command line with one word, its options: `closemown serve` is how people start it.
if (args is ["trial"]) return await Trial();
if (args.Length != 1) return Told(null, "This program is started by closemown serve.", "Type closemown serve --help.");
var options = ServeOptions.Read(args[0]);
try
{
    await using var server = WebHost.Build(options);
    await server.Start();
    using (var output = Console.OpenStandardOutput())
    {
        output.Write(System.Text.Encoding.UTF8.GetBytes(Announcement.Of(server, server.Network?.Code.Make())));
    }
    if (options.Open) Open(server.Address);
    await server.App.WaitForShutdownAsync();
    return 0;
}
catch (ServeFault e)
{
    return Told(options, e.Message, e.Remedy);
}
catch (BookException e)
{
    return Told(options, e.Message, e.Remedy);
}
catch (IOException e) when (e.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException or SocketException)
{
    return Told(options, $"Port {options.Port}{(options.Lan ? " or one of the two above it" : "")} is in use.", $"End the other program, or take a free port: {options.Called} serve --port 0");
}
catch (Exception e) when (e is IOException or UnauthorizedAccessException or SocketException)
{
    return Told(options, $"It cannot serve: {e.Message}.", "Check the port, the address and the folder of the settings.");
}

// Once through it, over an empty book: for the build, which wants to know whether what it made runs.
static async Task<int> Trial()
{
    await using var server = WebHost.Build(new ServeOptions { Book = BookFile.InMemory, Port = 0 });
    await server.Start();
    using var client = new HttpClient { BaseAddress = new(server.Address) };
    foreach (var path in (string[])["/", "/today.json", "/openapi.json"]) await client.GetStringAsync(path);
    await server.App.StopAsync();
    return 0;
}

static int Told(ServeOptions? options, string message, string remedy)
{
    if (options?.Json == true) Console.Out.WriteLine(Conversation.Text(Conversation.Refused([new EntryFault("refused", "", message, remedy)])));
    Console.Error.Write($"closemown: {message}\n  {remedy}\n");
    return 1;
}

static void Open(string address)
{
    try
    {
        Process.Start(new ProcessStartInfo(address) { UseShellExecute = true })?.Dispose();
    }
    catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException)
    {
        Console.Error.WriteLine("closemown: no browser could be opened; open the address yourself.");
    }
}
