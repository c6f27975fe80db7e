using System.Text;
using Closemown.Web;

namespace Closemown.Fuzzing;

/// <summary>Paths to go back to: of this server, and fit for a header.</summary>
internal sealed class PathTarget() : FuzzTarget("path")
{
    private static readonly Uri Server = new("http://127.0.0.1:8080/");
    private static readonly Guid Entry = new("019de28d-3c00-7000-8000-00000000ffff");

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(["/", "/steel", "/turf?area=green", "/plan?area=a%20b&written=1#x", "//evil.example/", "/\\evil.example", "https://evil.example/", "/a//b", "/?written=x&written=y"]);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(["//", "/\\", "\t/", "@", ":", "http:", "javascript:", "%2f%2f", "%5c", "?", "#", "&", "written=", "evil.example", "..", "%0d%0a", ";", "[", "]", "|", "^"]);

    public override int Longest => 2200;

    public override void Run(byte[] input)
    {
        var told = Encoding.UTF8.GetString(input);
        if (LocalPath.Of(told) is not { } path) return;
        foreach (var way in (string[])[path, LocalPath.With(path, Entry)])
        {
            Laws.Must(Uri.TryCreate(Server, way, out var whole) && whole.Host == Server.Host && whole.Port == Server.Port && whole.Scheme == Server.Scheme, "a way back stays on this server", $"{told} → {whole}");
            Laws.Must(way.All(c => c is > ' ' and < '\u007f'), "a way back can stand in a header", told);
        }
        Laws.Must(LocalPath.Of(LocalPath.With(path, Entry)) is not null || path.Length > 1900, "a way back with its entry is one", told);
    }
}
