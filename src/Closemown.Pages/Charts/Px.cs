using System.Globalization;

namespace Closemown.Pages;

/// <summary>Places in a picture, as its markup has them.</summary>
internal static class Px
{
    /// <summary>A number with one decimal, a point whoever reads.</summary>
    public static string Of(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
