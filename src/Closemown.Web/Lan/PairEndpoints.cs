using Closemown.Pages;
using Closemown.Serving;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Closemown.Web;

/// <summary>Lets a device in that brings the code from the machine. Works without script.</summary>
internal static class PairEndpoints
{
    public static void MapPair(this IEndpointRouteBuilder app, Network network, ILogger log)
    {
        app.MapGet("/pair", () => Page(null)).WithMetadata(new OpenToAll(false)).ExcludeFromDescription();
        app.MapPost("/pair", (HttpContext http, IAntiforgery forms) => Pair(http, forms, network, log)).WithMetadata(new OpenToAll(false)).ExcludeFromDescription();
    }

    private static async Task<IResult> Pair(HttpContext http, IAntiforgery forms, Network network, ILogger log)
    {
        if (!http.Request.HasFormContentType || !await forms.IsRequestValidAsync(http)) return Page("The form was too old, or did not come from this page. Try once more.", StatusCodes.Status400BadRequest);
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var outcome = network.Code.Try(form["code"], $"{http.Connection.RemoteIpAddress}");
        log.LogInformation("A device tried to pair: {Outcome}", outcome);
        switch (outcome)
        {
            case PairingOutcome.Right:
                try
                {
                    DeviceGuard.Give(http, network.Devices.Add(form["name"]).Token);
                }
                catch (InvalidOperationException e)
                {
                    return Page(e.Message, StatusCodes.Status403Forbidden);
                }
                http.Response.StatusCode = StatusCodes.Status303SeeOther;
                http.Response.Headers.Location = "/";
                return Results.Empty;
            case PairingOutcome.Wrong:
                return Page("That is not the code.", StatusCodes.Status403Forbidden);
            case PairingOutcome.Locked:
                return Page("Too many wrong codes. Ask for a new one at the machine.", StatusCodes.Status403Forbidden);
            case PairingOutcome.LockedHere:
                return Page("Too many wrong codes from this device. Ask for a new one at the machine.", StatusCodes.Status403Forbidden);
            default:
                return Page("There is no code now: it was used, or is too old. Ask for a new one at the machine.", StatusCodes.Status403Forbidden);
        }
    }

    private static RazorComponentResult<Pair> Page(string? trouble, int status = StatusCodes.Status200OK) =>
        new RazorComponentResult<Pair>(new Dictionary<string, object?> { [nameof(Pages.Pair.Trouble)] = trouble }) { StatusCode = status };
}
