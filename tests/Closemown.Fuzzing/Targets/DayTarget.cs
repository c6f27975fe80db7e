using System.Text;
using Closemown.Cli;
using Closemown.Typing;

namespace Closemown.Fuzzing;

/// <summary>Days and times as people type them.</summary>
internal sealed class DayTarget() : FuzzTarget("day")
{
    private static readonly DateOnly[] Todays = [new(2026, 5, 1), new(2024, 2, 29), new(1970, 1, 1), new(2199, 12, 31)];

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(Vocabulary.Times);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(["1st", "2nd", " may", "May ", "29 ", "feb", "sept.", "tomorrow", "today", "monday", " 2027", ":", "-", "/", "T", "Z", "+01:00"]);

    public override int Longest => 200;

    public override void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        foreach (var today in Todays)
        {
            foreach (var ahead in (bool[])[false, true])
            {
                for (var at = 0; at <= words.Length; at++) Day(words, at, today, ahead);
                Day([text], 0, today, ahead);
            }
        }
        var none = DayTyped.None(text, "date");
        Laws.Told(none.Message, none.Remedy);
        Time(text);
    }

    private static void Day(string[] words, int at, DateOnly today, bool ahead)
    {
        var used = DayTyped.Read(words, at, today, ahead, out var day);
        Laws.Must(used >= 0 && used <= words.Length - at, "a day uses words that are there", $"{used} of {string.Join(' ', words)}");
        if (used == 0) return;
        string[] iso = [day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)];
        Laws.Must(DayTyped.Read(iso, 0, today, ahead, out var again) == 1 && again == day, "a day that was read is read again as it is written", $"{iso[0]} of {string.Join(' ', words)}");
    }

    private static void Time(string text)
    {
        try
        {
            TimeTyped.Read(text, StandingClock.Instance);
        }
        catch (TypedFault fault)
        {
            Laws.Told(fault.Message, fault.Remedy);
        }
    }

    private sealed class StandingClock : TimeProvider
    {
        public static StandingClock Instance { get; } = new();

        public override DateTimeOffset GetUtcNow() => new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
