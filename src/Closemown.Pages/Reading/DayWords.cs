using System.Globalization;

namespace Closemown.Pages;

/// <summary>Days as people write them.</summary>
public static class DayWords
{
    /// <summary>"Sat 22 Aug 2026".</summary>
    public static string Full(DateTimeOffset at) => at.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"Sat 22 Aug".</summary>
    public static string Of(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>"22 Aug".</summary>
    public static string Brief(DateOnly day) => day.ToString("d MMM", CultureInfo.InvariantCulture);
}
