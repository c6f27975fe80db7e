using System.Text;

namespace Closemown.Tests.Book;

/// <summary>Lines that are no entries, of many sorts, each made from its number alone.</summary>
internal static class MalformedLines
{
    /// <summary>How many sorts there are; line n is of sort n modulo this.</summary>
    public const int Sorts = 20;

    private const string Good = """{"v":1,"id":"019d33ab-f280-78f7-9da1-494c73cf256d","at":"2026-03-28T10:00:00+01:00","kind":"clicks","unit":"mower","left":1}""";

    public static byte[] Line(int n)
    {
        var random = new Random(n);
        string Word(int longest) => string.Create(random.Next(1, longest), random, static (span, r) =>
        {
            for (var i = 0; i < span.Length; i++) span[i] = (char)('a' + r.Next(26));
        });
        return (n % Sorts) switch
        {
            0 => Text(Good[..random.Next(1, Good.Length)]),
            1 => Text(Good.Replace("\"left\":1", $"\"left\":\"{Word(9)}\"", StringComparison.Ordinal)),
            2 => Text($"{{\"v\":1,\"note\":\"{new string('x', 70_000 + random.Next(1000))}\"}}"),
            3 => [.. Text(Good[..40]), (byte)random.Next(0x80, 0xC0), .. Text(Good[40..])],
            4 => Text(new string('[', random.Next(20, 5000))),
            5 => Text(Good.Replace("clicks", "x-" + Word(40), StringComparison.Ordinal)),
            6 => Text(Word(300)),
            7 => Text(Good.Replace("2026-03-28", Word(12), StringComparison.Ordinal)),
            8 => Text(Good.Replace("019d33ab-f280-78f7", Word(20), StringComparison.Ordinal)),
            9 => Text(Good.Replace("\"unit\":\"mower\",", "", StringComparison.Ordinal)),
            10 => Text(Good.Replace("\"left\":1", "\"left\":1e400", StringComparison.Ordinal)),
            11 => Text(Good.Replace("\"left\":1", $"\"left\":{random.Next(100, 100_000)}", StringComparison.Ordinal)),
            12 => Text(Good + Good),
            13 => Text($"{random.Next()}"),
            14 => Text(Good.Replace("\"left\":1", "\"left\":1,\"left\":2", StringComparison.Ordinal)),
            15 => Text(Good.Replace("mower", "\\ud800", StringComparison.Ordinal)),
            16 => Text(Good.Replace("\"left\":1", string.Concat(Enumerable.Repeat("\"a\":{", 40)) + new string('}', 40), StringComparison.Ordinal)),
            17 => Text(Good.Replace("\"v\":1", $"\"v\":{random.Next(2, 99)}", StringComparison.Ordinal)),
            18 => [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Word(60))],
            _ => Text(Good.Replace("\"left\":1", "\"voids\":\"nothing\"", StringComparison.Ordinal)),
        };
    }

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);
}
