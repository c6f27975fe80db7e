using Closemown.Entries;

namespace Closemown.Web;

/// <summary>Where to go back to: a path of this server, nothing else.</summary>
internal static class LocalPath
{
    private const int Longest = 2000;
    private const string Written = "written";

    /// <summary>Said of an address that is none.</summary>
    public static EntryFault Elsewhere { get; } = new(FaultCodes.BadValue, "back", "It names a place to go back to that is not on this server.", "Give a path that begins with one stroke: /steel");

    /// <summary>The path, with its query; "/" for none given; null where it leads elsewhere.</summary>
    public static string? Of(string? told)
    {
        if (string.IsNullOrEmpty(told)) return "/";
        // Browsers read \ as / and leave out tabs and ends of lines, so neither may hide a second stroke.
        if (told.Length > Longest || told[0] != '/' || told.StartsWith("//", StringComparison.Ordinal) || told.Any(c => c == '\\' || char.IsControl(c))) return null;
        return Uri.IsWellFormedUriString(told, UriKind.Relative) ? told : null;
    }

    /// <summary>The path with the entry that was written down, instead of one named before.</summary>
    public static string With(string path, Guid id)
    {
        var (whole, mark) = path.IndexOf('#', StringComparison.Ordinal) is var at and >= 0 ? (path[..at], path[at..]) : (path, "");
        var (place, query) = whole.IndexOf('?', StringComparison.Ordinal) is var ask and >= 0 ? (whole[..ask], whole[(ask + 1)..]) : (whole, "");
        var kept = query.Split('&', StringSplitOptions.RemoveEmptyEntries).Where(p => p.Split('=')[0] != Written);
        return $"{place}?{string.Join('&', kept.Append($"{Written}={id:D}"))}{mark}";
    }

    /// <summary>Sends the browser on, by GET.</summary>
    public static void SeeOther(this HttpContext http, string path)
    {
        http.Response.StatusCode = StatusCodes.Status303SeeOther;
        http.Response.Headers.Location = path;
    }
}
