using System.Text;
using Closemown.Entries;

namespace Closemown.Fuzzing;

/// <summary>Pieces of input that are hard to read right: names, numbers and dates at the ends of what is possible, and the words of our own tables.</summary>
public static class Vocabulary
{
    /// <summary>Names nobody would choose: braces, quotes, control and bidi characters, invisible and wide ones.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "{", "}", "{}", "g{b", "a}b", "{reel}", "{0}", "{{", "}}", "\"", "'", "\\", "`", "\u0000", "\u001b[2J", "\u001b]0;x\u0007", "\t", "\u007f", "\u0085", "\u009b1m", "\u200b", "\u200e", "\u202e", "\u2066", "\u2069", "\ufeff",
        "\u2028", "\u2029", "\ud83c\udf31", "\ufffd", "\uffff", "é", "e\u0301", "ﬀ", "İ", "ß", "草", "%41", "#", "?", "&", "=", "<b>", "</script>", "../..", "-", "--book", "+", ",", ";", ".", "..", "null", "NaN", "__proto__", " ", "  x ",
        new string('n', 80), new string('n', 81), string.Concat(Enumerable.Repeat("🌱", 40)),
    ];

    /// <summary>Numbers as JSON and people write them.</summary>
    public static IReadOnlyList<string> Numbers { get; } =
    [
        "0", "-0", "0.0", "1", "-1", "0.5", "1.5", "1e308", "-1e308", "1e309", "1e-308", "5e-324", "1e400", "1e999999999", "1E5", "2147483647", "2147483648", "-2147483648", "9007199254740993", "9223372036854775807", "9223372036854775808",
        "99999999999999999999", "0.1", "0.30000000000000004", "3.141592653589793", "1e-9", "100", "1000", "65536", "NaN", "Infinity", "-Infinity", "1/2", "5/32", "1 1/4", "1/0", "½", "⅞", "1,5", "1.000,5", "1.2.3", "+3", "−3", "01", ".5", "5.", "1e", "٣",
    ];

    /// <summary>Days and times, some of which are none.</summary>
    public static IReadOnlyList<string> Times { get; } =
    [
        "0001-01-01", "1899-12-31", "1900-01-01", "1969-12-31", "1970-01-01", "2000-02-29", "2023-02-29", "2026-05-01", "2026-13-01", "2026-00-10", "2200-12-31", "2201-01-01", "9999-12-31", "-0001-01-01", "12026-05-01",
        "2026-05-01T08:00:00Z", "2026-05-01T08:00:00+14:00", "2026-05-01T08:00:00-14:00", "2026-05-01T24:00:00Z", "2026-05-01T08:00:60Z", "0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00", "9999-12-31T23:59:59.9999999Z",
        "2200-12-31T23:59:30Z", "1900-01-01T00:00:00Z", "2026-05-01T08:00:00.123456789Z", "2026-05-01T08:00:00+25:00", "29 feb", "31 apr", "1 May", "May 1st 1900", "yesterday", "tomorrow", "fri", "1/5", "24:00", "10:30",
    ];

    /// <summary>The words of the tables of kinds and fields.</summary>
    public static IReadOnlyList<string> Tables { get; } =
        [.. Kinds.All.Select(k => k.Name).Concat(Kinds.All.SelectMany(k => k.Fields).SelectMany(f => f.Words.Prepend(f.Name)))
            .Concat(["v", "id", "at", "unit", "area", "by", "note", "typed", "voids", "confirmed", "ask", "kind"]).Distinct()];

    /// <summary>All of it as bytes, with the signs of JSON.</summary>
    public static IReadOnlyList<byte[]> Common { get; } =
        [.. Names.Concat(Numbers).Concat(Times).Concat(Tables).Concat(["[", "]", ":", "\"", "true", "false", "null", "\\ud800", "\\u0000", "\\u202e", "\n", "\r\n", "\u0001", "/*", "//"]).Select(Encoding.UTF8.GetBytes)];

    /// <summary>Words of one's own before the common ones.</summary>
    public static IReadOnlyList<byte[]> With(IEnumerable<string> own) => [.. own.Select(Encoding.UTF8.GetBytes), .. Common];
}
