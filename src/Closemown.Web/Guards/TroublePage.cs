using System.Text.Encodings.Web;
using Closemown.Entries;

namespace Closemown.Web;

/// <summary>A page that says what went wrong and where to go on. Put together by hand, so that it needs nothing of what may have failed.</summary>
internal static class TroublePage
{
    /// <summary>Says no: to programs in the one shape of faults, to people on a page.</summary>
    /// <param name="http">The visit.</param>
    /// <param name="status">The status.</param>
    /// <param name="heading">What it is, in a few words.</param>
    /// <param name="fault">What is wrong, and what to do.</param>
    public static Task Show(HttpContext http, int status, string heading, EntryFault fault)
    {
        if (!Refusals.ForAPage(http.Request)) return http.Refuse(status, fault);
        http.Response.StatusCode = status;
        http.Response.ContentType = "text/html; charset=utf-8";
        return http.Response.WriteAsync(Html(heading, fault), http.RequestAborted);
    }

    private static string Html(string heading, EntryFault fault) =>
        $"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
            <meta charset="utf-8" />
            <meta name="viewport" content="width=device-width, initial-scale=1" />
            <meta name="color-scheme" content="light dark" />
            <title>Closemown: {Text(heading)}</title>
            <link rel="stylesheet" href="/site.css" />
        </head>
        <body>
            <main>
                <h1>{Text(heading)}</h1>
                <section class="now">
                    <p class="big">{Text(fault.Message)}</p>
                    <p>{Text(fault.Remedy)}</p>
                    <p class="do"><a class="go" href="/">To today's page</a></p>
                </section>
                <p><a class="row" href="/bench">Bench</a> <a class="row" href="/steel">Steel</a> <a class="row" href="/height">Height</a> <a class="row" href="/turf">Turf</a> <a class="row" href="/plan">Plan</a> <a class="row" href="/book">Book</a></p>
            </main>
        </body>
        </html>

        """;

    private static string Text(string text) => HtmlEncoder.Default.Encode(text);
}
