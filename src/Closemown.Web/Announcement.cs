using System.Text;
using System.Text.Json.Nodes;
using Closemown.Pipe;
using Closemown.Serving;
using QRCoder;

namespace Closemown.Web;

/// <summary>What the server says when it is ready: where it is, and how a device comes in.</summary>
internal static class Announcement
{
    public static string Of(WebServer server, string? code)
    {
        if (server.Options.Json) return Json(server, code);
        var said = new StringBuilder();
        void Line(string text = "") => said.Append(text).Append('\n');
        Line($"Closemown is at {server.Address}");
        Line($"  The book: {server.Options.Book}");
        if (server.Network is { } network)
        {
            var door = server.TrustAddresses.Count > 0 ? server.TrustAddresses[0] + "trust" : server.NetworkAddresses[0];
            Line();
            Line($"On the local network at {string.Join(" and ", server.NetworkAddresses)}");
            if (network.Leaf is null)
            {
                Line("  Without https: whoever is on this network can read along. The pages work, but not off line beyond the page that is open, and without camera and microphone.");
            }
            else
            {
                foreach (var line in Renewed(network.News)) Line($"  {line}");
                Line($"  A new device first learns to trust this machine: {door}");
                Line("  Fingerprint (SHA-256) of its authority, to compare:");
                Line($"  {network.Fingerprint[..47]}");
                Line($"  {network.Fingerprint[48..]}");
            }
            Line();
            said.Append(Qr(door)).Append('\n');
            Line();
            Line($"Code to pair one device, good for ten minutes: {code![..4]} {code[4..]}");
            Line($"  Another: {server.Options.Called} devices code");
        }
        Line();
        Line("Ctrl-C ends it.");
        return said.ToString();
    }

    private static string Json(WebServer server, string? code) => Conversation.Text(new JsonObject
    {
        ["ok"] = true,
        ["serve"] = new JsonObject
        {
            ["address"] = server.Address,
            ["book"] = server.Options.Book,
            ["network"] = new JsonArray([.. server.NetworkAddresses.Select(a => (JsonNode)a)]),
            ["trust"] = new JsonArray([.. server.TrustAddresses.Select(a => (JsonNode)a)]),
            ["code"] = code,
            ["authority"] = Renewed(server.Network?.News ?? AuthorityNews.None) is { Count: > 0 } news ? string.Join(' ', news) : null,
        },
    }) + "\n";

    /// <summary>Why each device must trust this machine anew; empty where none must.</summary>
    private static IReadOnlyList<string> Renewed(AuthorityNews news)
    {
        var why = news switch
        {
            AuthorityNews.WasBroad => "The authority that devices trusted so far could speak for more than this machine.",
            AuthorityNews.OtherAddress => "This machine has another address, for which the authority that devices trusted so far may not speak.",
            AuthorityNews.Ended => "The authority that devices trusted so far comes to its end.",
            _ => null,
        };
        return why is null ? [] : [why, "A new one has taken its place: on each device take the old one off, and trust the new one. Pairing stays."];
    }

    private static string Qr(string address)
    {
        using var data = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.L);
        using var drawn = new AsciiQRCode(data);
        return drawn.GetGraphicSmall();
    }
}
