using Closemown.Entries;
using Closemown.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Closemown.Web;

/// <summary>All that is served without https on the network: how to trust this machine with the style it is read in, and its authority's certificate.</summary>
internal static class TrustDoor
{
    public const string CertificatePath = "/closemown-authority.crt";
    private const string StylePath = "/site.css";

    public static void UseTrustDoor(this IApplicationBuilder app, Network network, Func<string> secureAddress) =>
        app.MapWhen(http => http.Door() == Door.Trust, trust => trust.Run(async http =>
        {
            var reads = HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method);
            switch (http.Request.Path.Value)
            {
                case "/trust" when reads:
                    await new RazorComponentResult<Trust>(new Dictionary<string, object?> { [nameof(Trust.Fingerprint)] = network.Fingerprint, [nameof(Trust.Address)] = secureAddress() }).ExecuteAsync(http);
                    break;
                case CertificatePath when reads:
                    http.Response.ContentType = "application/x-x509-ca-cert";
                    http.Response.ContentLength = network.ForDevices.Length;
                    if (HttpMethods.IsGet(http.Request.Method)) await http.Response.Body.WriteAsync(network.ForDevices, http.RequestAborted);
                    break;
                case StylePath when reads:
                    http.Response.ContentType = "text/css; charset=utf-8";
                    await http.Response.SendFileAsync(http.RequestServices.GetRequiredService<IWebHostEnvironment>().WebRootFileProvider.GetFileInfo(StylePath), http.RequestAborted);
                    break;
                case "/" when reads:
                    http.Response.Redirect("/trust");
                    break;
                default:
                    await http.Refuse(StatusCodes.Status404NotFound, new(FaultCodes.BadValue, "", "Only /trust is served here.", $"Open {secureAddress()}"));
                    break;
            }
        }));
}
