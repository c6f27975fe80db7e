using NodaTime;
using NodaTime.TimeZones;

namespace Closemown.Turf;

/// <summary>Civil days of a place: what day it is there at an instant, with summer time.</summary>
/// <remarks>Zone names are those of the IANA time zone database that the library carries.</remarks>
public static class CivilDay
{
    /// <summary>Whether there is a zone of that name.</summary>
    public static bool Knows(string zone) => DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is not null;

    /// <summary>Names of all zones, for a near miss.</summary>
    public static IReadOnlyCollection<string> Names => DateTimeZoneProviders.Tzdb.Ids;

    /// <summary>The local time of an instant; in the entry's own offset where no zone, or none that is known, was told.</summary>
    /// <param name="at">The instant.</param>
    /// <param name="zone">Name of the zone, or null.</param>
    public static DateTime LocalTime(DateTimeOffset at, string? zone) =>
        Zone(zone) is { } z ? Instant.FromDateTimeOffset(at).InZone(z).ToDateTimeUnspecified() : at.DateTime;

    /// <summary>The instant of a local time; where clocks skip it, as much later as they skip; where they repeat it, the first.</summary>
    /// <param name="local">The local time.</param>
    /// <param name="zone">Name of the zone, or null.</param>
    /// <param name="otherwise">The offset where no zone was told.</param>
    public static DateTimeOffset At(DateTime local, string? zone, TimeSpan otherwise) =>
        Zone(zone) is { } z ? z.ResolveLocal(LocalDateTime.FromDateTime(local), Resolvers.LenientResolver).ToDateTimeOffset() : new(local, otherwise);

    private static DateTimeZone? Zone(string? zone) => zone is null ? null : DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone);
}
