using Microsoft.AspNetCore.Antiforgery;

namespace Closemown.Web;

/// <summary>Takes the form at /look: words, units, theme and place of this device, and who enters there.</summary>
internal static class LookEndpoint
{
    public static void MapLook(this IEndpointRouteBuilder app) => app.MapPost("/look", Take).BeforeThePage().ExcludeFromDescription();

    private static async Task<IResult> Take(HttpContext http, IAntiforgery forms)
    {
        if (await FormBody.Read(http) is not { } form) return Results.Empty;
        if (!await forms.IsRequestValidAsync(http))
        {
            await http.Refuse(StatusCodes.Status400BadRequest, FormBody.Stale);
            return Results.Empty;
        }
        if (LocalPath.Of(form["back"]) is not { } back)
        {
            await http.Refuse(StatusCodes.Status400BadRequest, LocalPath.Elsewhere);
            return Results.Empty;
        }
        LookCookie.Write(http, LookCookie.Choices.Keys.Select(k => KeyValuePair.Create(k, form[k].ToString())), form["by"]);
        http.SeeOther(back);
        return Results.Empty;
    }
}
