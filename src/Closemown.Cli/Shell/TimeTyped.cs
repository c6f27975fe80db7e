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
        if (Worded(text, DateOnly.FromDateTime(today)) is { } worded) return With(worded, time);
        throw CliFault.Refused($"\"{Spelling.Clip(text)}\" is not a time.", "Write 10:30 for today, \"9 Nov 14:30\", \"2026-05-03 10:30\", or with its offset 2026-05-03T10:30+01:00.");
    }

    /// <summary>A day as people say it, with a clock time or without: "9 Nov", "9 Nov 14:30", "yesterday 9:00". Noon where none is said.</summary>
    private static DateTime? Worded(string text, DateOnly today)
    {
        var words = text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        var timed = words.Length > 1 && TimeOnly.TryParseExact(words[^1], ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
        if (words.Length == 0) return null;
        var of = timed ? words[..^1] : words;
        if (DayTyped.Read(of, 0, today, ahead: false, out var day) != of.Length) return null;
        return day.ToDateTime(timed ? TimeOnly.ParseExact(words[^1], ["H:mm", "HH:mm"], CultureInfo.InvariantCulture) : new TimeOnly(12, 0));
    }

    private static DateTimeOffset With(DateTime local, TimeProvider time)
    {
        var plain = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        return new DateTimeOffset(plain, time.LocalTimeZone.GetUtcOffset(plain));
    }
}
