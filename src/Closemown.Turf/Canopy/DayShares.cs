namespace Closemown.Turf;

/// <summary>The civil days between two moments, each with the share of it that passed.</summary>
internal static class DayShares
{
    /// <summary>The days, in order; none where no time passed.</summary>
    public static List<(DateOnly Date, double Share)> Between(DateTime from, DateTime to)
    {
        var days = new List<(DateOnly, double)>();
        for (var at = from; at < to;)
        {
            var end = at.Date.AddDays(1) < to ? at.Date.AddDays(1) : to;
            days.Add((DateOnly.FromDateTime(at), (end - at).TotalDays));
            at = end;
        }
        return days;
    }
}
