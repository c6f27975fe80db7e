using System.Globalization;

namespace Closemown.Weather;

/// <summary>Which place is meant where a file holds the weather of several: it is asked, never taken as the first.</summary>
internal static class PlaceOf
{
    private const int Shown = 6;

    /// <summary>The index of the place meant.</summary>
    /// <param name="places">Latitude and longitude of each, as written.</param>
    /// <param name="told">What the person said, counted from 1; null for nothing.</param>
    /// <exception cref="WeatherException">There are several and none was named, or not that many.</exception>
    public static int Index(IReadOnlyList<(string Latitude, string Longitude)> places, int? told)
    {
        if (told is { } n && n >= 1 && n <= places.Count) return n - 1;
        if (told is null && places.Count == 1) return 0;
        var count = places.Count.ToString(CultureInfo.InvariantCulture);
        var list = string.Join("; ", places.Take(Shown).Select((p, i) => $"{(i + 1).ToString(CultureInfo.InvariantCulture)} is {p.Latitude}, {p.Longitude}")) + (places.Count > Shown ? "; and so on" : "");
        if (places.Count == 0) throw new WeatherException("The list holds no place.", "Fetch it again.");
        if (told is null) throw new WeatherException($"The weather of {count} places lies in it (latitude, longitude: {list}), and an area is one place.", $"Say which: --place 1 to {count}.");
        throw new WeatherException($"There is no place {told.Value.ToString(CultureInfo.InvariantCulture)} in it (latitude, longitude: {list}).", places.Count == 1 ? "Leave --place out." : $"Write --place 1 to {count}.");
    }
}
