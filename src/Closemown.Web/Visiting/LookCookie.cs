using Closemown.Pages;
using Closemown.Quantities;

namespace Closemown.Web;

/// <summary>What a visitor has chosen on this device: words, units, theme, where they stand, who enters. Kept in a cookie, so that it needs no script and no account.</summary>
internal static class LookCookie
{
    public const string Name = "closemown-look";
    private const string By = "by";
    private const int Longest = 1200;
    private static readonly TimeSpan Life = TimeSpan.FromDays(400);      // the longest that browsers keep one

    /// <summary>The choices by field, each with what may be chosen.</summary>
    public static IReadOnlyDictionary<string, string[]> Choices { get; } = LookChoices.All.ToDictionary(c => c.Field, c => c.Options.Select(o => o.Value).ToArray());

    /// <summary>The look of a request. What is absent, or not one of the choices, is as the program's settings say.</summary>
    /// <param name="request">The request; null for none.</param>
    /// <param name="usual">The program's settings.</param>
    public static VisitorLook Read(HttpRequest? request, WritingStyle usual)
    {
        var chosen = Parsed(request?.Cookies[Name]);
        var otherwise = new VisitorLook(usual);
        string Chosen(string field) => chosen.GetValueOrDefault(field) is { } value && Choices[field].Contains(value) ? value : otherwise.Of(field);
        return new(VisitorStyle.Of(Chosen("words"), Chosen("gap"), Chosen("height"), Chosen("decimal"))) { Theme = Chosen("theme"), Stand = Chosen("stand"), By = Who(request, chosen) };
    }

    /// <summary>Keeps what was chosen.</summary>
    /// <param name="http">The visit.</param>
    /// <param name="chosen">A choice by field; what is none of the choices is left out.</param>
    /// <param name="by">Who enters on this device; empty for nobody named.</param>
    public static void Write(HttpContext http, IEnumerable<KeyValuePair<string, string>> chosen, string? by)
    {
        var kept = chosen.Where(c => Choices.TryGetValue(c.Key, out var may) && may.Contains(c.Value)).Select(c => $"{c.Key}={c.Value}");
        if (VisitorLook.Named(by) is { } name && name != PairedAs(http.Request)) kept = kept.Append($"{By}={Uri.EscapeDataString(name)}");
        http.Response.Cookies.Append(Name, string.Join('&', kept), new CookieOptions
        {
            HttpOnly = true,
            Secure = http.Request.IsHttps,
            // It opens nothing; withheld after a link from elsewhere, the first page would come in other units.
            SameSite = SameSiteMode.Lax,
            Path = "/",
            MaxAge = Life,
            IsEssential = true,
        });
    }

    /// <summary>Who was chosen; else what the device was called when it was paired.</summary>
    private static string? Who(HttpRequest? request, Dictionary<string, string> chosen) =>
        (chosen.TryGetValue(By, out var written) ? VisitorLook.Named(Uri.UnescapeDataString(written)) : null) ?? PairedAs(request);

    private static string? PairedAs(HttpRequest? request) => request?.HttpContext.Features.Get<PairedDevice>()?.Name;

    private static Dictionary<string, string> Parsed(string? cookie)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        if (cookie is null || cookie.Length > Longest) return found;
        foreach (var part in cookie.Split('&'))
        {
            if (part.Split('=') is [var field, var value] && (field == By || Choices.ContainsKey(field))) found[field] = value;
        }
        return found;
    }
}
