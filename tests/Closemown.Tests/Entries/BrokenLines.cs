using System.Text;

namespace Closemown.Tests.Entries;

/// <summary>Lines as faulty programs and damaged files hand them over.</summary>
internal static class BrokenLines
{
    private static readonly string[] Snippets =
    [
        "null", "true", "-0", "1e400", "1e-400", "\"\"", "[]", "{}", "\\ud800", "\\u0000", "\"\\udc00x\"", "NaN", ",", ":", "}", "{", "\"kind\"", "\"kind\":\"void\"",
        "\uFEFF", "\u2028", "\0", "𝄞", "99999999999999999999", "\"2026-13-01\"", "[[[[[[[[[[[[[[[[[[[[", "/*", "'", "\t", "\"unit\":\"x\",",
    ];

    /// <summary>A good line with a few places broken, or noise.</summary>
    /// <param name="random">The seeded source of chance.</param>
    /// <param name="good">Lines to break.</param>
    /// <param name="more">More snippets to break them with, put in at their start too.</param>
    public static byte[] Make(Random random, string[] good, params string[] more)
    {
        if (random.Next(10) == 0)
        {
            var noise = new byte[random.Next(0, 200)];
            random.NextBytes(noise);
            return noise;
        }
        var bytes = Encoding.UTF8.GetBytes(good[random.Next(good.Length)]).ToList();
        for (var n = random.Next(1, 5); n > 0 && bytes.Count > 0; n--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(more.Length > 0 ? 7 : 6))
            {
                case 0:
                    bytes.RemoveAt(at);
                    break;
                case 1:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 2:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Snippets[random.Next(Snippets.Length)]));
                    break;
                case 3:
                    bytes.RemoveRange(at, Math.Min(bytes.Count - at, random.Next(1, 30)));
                    break;
                case 4:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(bytes.Count - at, random.Next(1, 30))));
                    break;
                case 5:
                    var end = bytes.FindIndex(at, b => b is (byte)',' or (byte)'}');
                    if (end > at) bytes.RemoveRange(at, end - at);
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Snippets[random.Next(Snippets.Length)]));
                    break;
                default:
                    bytes.InsertRange(Math.Min(1, bytes.Count), Encoding.UTF8.GetBytes(more[random.Next(more.Length)]));
                    break;
            }
        }
        return [.. bytes];
    }
}
