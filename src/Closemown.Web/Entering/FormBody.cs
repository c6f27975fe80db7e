using Closemown.Entries;

namespace Closemown.Web;

/// <summary>Reads the body of a form.</summary>
internal static class FormBody
{
    /// <summary>Said of a form whose token does not fit.</summary>
    public static EntryFault Stale { get; } = new("form", "", "The form was too old, or did not come from this page.", "Send it once more from the page.");

    /// <summary>The fields; null where it is no such form, which is then answered.</summary>
    public static async Task<IFormCollection?> Read(HttpContext http)
    {
        if (!(http.Request.ContentType ?? "").Split(';')[0].Trim().Equals("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase))
        {
            await http.Refuse(StatusCodes.Status415UnsupportedMediaType, new("wrong-type", "Content-Type", "A form comes urlencoded.", "Say Content-Type: application/x-www-form-urlencoded; programs write to /entries."));
            return null;
        }
        try
        {
            return await http.Request.ReadFormAsync(http.RequestAborted);
        }
        catch (InvalidDataException)
        {
            await http.Refuse(StatusCodes.Status413PayloadTooLarge, new("too-large", "", "The form has more fields, or a longer one, than this server takes.", "Shorten it."));
            return null;
        }
    }

    /// <summary>A form is posted to the path of its page: what takes it comes before what shows the page.</summary>
    public static T BeforeThePage<T>(this T endpoint) where T : IEndpointConventionBuilder => endpoint.WithOrder(-1);
}
