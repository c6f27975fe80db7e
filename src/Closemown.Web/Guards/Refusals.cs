using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Web;

/// <summary>Says no: to programs in the one shape of faults, to people in a sentence.</summary>
internal static class Refusals
{
    public static Task Refuse(this HttpContext http, int status, EntryFault fault)
    {
        http.Response.StatusCode = status;
        if (http.Request.Method == HttpMethods.Head) return Task.CompletedTask;
        if (ForAPage(http.Request))
        {
            http.Response.ContentType = "text/plain; charset=utf-8";
            return http.Response.WriteAsync($"{fault.Message} {fault.Remedy}\n", http.RequestAborted);
        }
        http.Response.ContentType = JsonBody.ContentType;
        return http.Response.WriteAsync(Conversation.Text(Conversation.Refused([fault])), http.RequestAborted);
    }

    /// <summary>Whether a browser asks for a page: it then says that it takes HTML.</summary>
    public static bool ForAPage(HttpRequest request) => request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);
}

/// <summary>What is common to answers in JSON.</summary>
internal static class JsonBody
{
    public const string ContentType = "application/json; charset=utf-8";
}
