using System.Globalization;

namespace Closemown.Height;

/// <summary>What one turn of a thread moves its nut, mm.</summary>
public static class ThreadPitch
{
    // ISO 261 coarse pitches, as seen in public thread charts that cite it (M8, M10, M12); M5, M6, M16 from memory.
    private static readonly Dictionary<string, double> Coarse = new() { ["M5"] = 0.8, ["M6"] = 1, ["M8"] = 1.25, ["M10"] = 1.5, ["M12"] = 1.75, ["M16"] = 2 };

    /// <summary>Pitch of a thread as it is written: <c>M8</c>, <c>M10x1</c>, <c>3/8-24 UNF</c> (25.4 mm over the threads per inch).</summary>
    /// <returns>The pitch, mm, or null where the name is not one of these.</returns>
    public static double? Mm(string thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var t = thread.Trim();
        if (Coarse.TryGetValue(t.ToUpperInvariant(), out var pitch)) return pitch;
        if (t.StartsWith('M') && t.Split('x') is [_, var fine]) return Positive(fine);
        return t.Split('-') is [_, var perInch] && Positive(perInch.Split(' ')[0]) is { } n ? 25.4 / n : null;
    }

    private static double? Positive(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && x > 0 && double.IsFinite(x) ? x : null;
}
