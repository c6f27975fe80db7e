using System.Text.Json.Nodes;
using Closemown.Pipe;
using Microsoft.AspNetCore.Antiforgery;

namespace Closemown.Web;

/// <summary>A token for a form that has waited, off line, longer than its own holds.</summary>
internal static class FormTokenEndpoint
{
    public static void MapFormToken(this IEndpointRouteBuilder app) => app.MapGet("/form-token", Token).WithMetadata(new ForPrograms()).ExcludeFromDescription();

    private static Task Token(HttpContext http, IAntiforgery forms)
    {
        // Another site cannot read the answer in any case; what says that it is another is not even given one.
        if (CrossSiteGuard.SameOrigin(http.Request) == false) return http.Refuse(StatusCodes.Status403Forbidden, CrossSiteGuard.Refusal);
        var token = forms.GetAndStoreTokens(http).RequestToken;
        http.Response.ContentType = JsonBody.ContentType;
        return http.Response.WriteAsync(Conversation.Text(new JsonObject { ["ok"] = true, ["form"] = token }), http.RequestAborted);
    }
}
