using System.Globalization;

namespace Closemown.Turf;

/// <summary>Numbers in messages: the same on every machine.</summary>
internal static class Text
{
    public static string N(double x) => x.ToString("0.####", CultureInfo.InvariantCulture);
}
