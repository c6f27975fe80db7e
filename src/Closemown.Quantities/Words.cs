namespace Closemown.Quantities;

/// <summary>The words that people read, one for one thing, in US or UK English.</summary>
public static class Words
{
    private static readonly (WordKey Key, string US, string UK)[] Table =
    [
        (WordKey.Unit, "reel head", "cassette"),
        (WordKey.Reel, "reel", "cylinder"),
        (WordKey.Blade, "blade", "blade"),
        (WordKey.Bedknife, "bedknife", "bottom blade"),
        (WordKey.Left, "left", "left"),
        (WordKey.Centre, "center", "centre"),
        (WordKey.Right, "right", "right"),
        (WordKey.Adjuster, "adjuster", "adjuster"),
        (WordKey.Click, "click", "click"),
        (WordKey.Flat, "flat", "flat"),
        (WordKey.Notch, "notch", "notch"),
        (WordKey.Clearance, "gap", "gap"),
        (WordKey.Edge, "dullness", "bluntness"),
        (WordKey.SquareUp, "same drag at both ends", "same drag at both ends"),
        (WordKey.Lap, "backlap", "back-lap"),
        (WordKey.Grind, "spin grind", "regrind"),
        (WordKey.ReliefGrind, "relief grind", "relief"),
        (WordKey.Strike, "hit something", "hit something"),
        (WordKey.BenchHeight, "bench height", "bench height"),
        (WordKey.CutHeight, "actual height", "true height"),
        (WordKey.Sink, "bench-to-actual difference", "bench-to-true difference"),
        (WordKey.Canopy, "grass height", "standing height"),
        (WordKey.ShareRemoved, "how much comes off", "how much comes off"),
        (WordKey.Clip, "frequency of clip", "cuts per metre"),
        (WordKey.Wish, "target height", "height wanted"),
        (WordKey.Surprise, "not like this mower", "not like this mower"),
        (WordKey.Colour, "color", "colour"),
        (WordKey.Grey, "gray", "grey"),
        (WordKey.Millimetre, "millimeter", "millimetre"),
        (WordKey.Metre, "meter", "metre"),
    ];

    /// <summary>The word that this person reads.</summary>
    public static string For(WritingStyle style, WordKey key)
    {
        ArgumentNullException.ThrowIfNull(style);
        (WordKey _, string us, string uk) = Row(key);
        return style.Words == Wording.UK ? uk : us;
    }

    /// <summary>The word of the other English, for a first mention or a search; null when it is the same.</summary>
    public static string? Also(WritingStyle style, WordKey key)
    {
        ArgumentNullException.ThrowIfNull(style);
        (WordKey _, string us, string uk) = Row(key);
        return us == uk ? null : style.Words == Wording.UK ? us : uk;
    }

    private static (WordKey Key, string US, string UK) Row(WordKey key)
    {
        int at = Array.FindIndex(Table, r => r.Key == key);
        return at >= 0 ? Table[at] : throw new ArgumentOutOfRangeException(nameof(key), key, "Not a word of the table.");
    }
}
