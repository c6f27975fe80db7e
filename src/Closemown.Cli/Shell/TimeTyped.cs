using System.Globalization;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Times as people type them.</summary>
internal static class TimeTyped
{
    private static readonly string[] Local = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd"];

    /// <summary>Reads a time: a clock time of today, a local date and time, or one with its offset.</summary>
    /// <exception cref="CliFault">It is none.</exception>
    public static DateTimeOffset Read(string text, TimeProvider time)
    {
        text = text.Trim();
        if (EntryTime.TryRead(text, out var at) || EntryTime.TryRead(text.Replace(' ', 'T'), out at)) return at;
        var today = time.GetLocalNow().Date;
        if (TimeOnly.TryParseExact(text, ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var clock)) return With(today + clock.ToTimeSpan(), time);
        if (DateTime.TryParseExact(text, Local, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local) && local.Year is >= 1900 and <= 2200)
            return With(text.Length == 10 ? local.AddHours(12) : local, time);
        throw CliFault.Refused($"\"{Spelling.Clip(text)}\" is not a time.", "Write 10:30 for today, \"2026-05-03 10:30\", or with its offset 2026-05-03T10:30+01:00.");
    }

    private static DateTimeOffset With(DateTime local, TimeProvider time)
    {
        var plain = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        return new DateTimeOffset(plain, time.LocalTimeZone.GetUtcOffset(plain));
    }
}
