using System.Globalization;
using Closemown.Quantities;

namespace Closemown.Pages;

/// <summary>How this visitor wants the pages on this device; one for each request, from its cookie.</summary>
/// <param name="WritingStyle">Words and units.</param>
public sealed record VisitorLook(WritingStyle WritingStyle)
{
    /// <summary>The theme of the system.</summary>
    public const string SystemTheme = "system";

    /// <summary>Behind the mower, as one walks: the side by which left and right are named.</summary>
    public const string Behind = "behind";

    /// <summary>In front of the mower: pictures are mirrored.</summary>
    public const string InFront = "front";

    /// <summary>The unit lies upside down on the bench, rolled over sideways, so that left and right have changed places; tipped front over back they have not.</summary>
    public const string UpsideDown = "upside-down";

    /// <summary>"system", "light" or "dark".</summary>
    public string Theme { get; init; } = SystemTheme;

    /// <summary>Where the person stands at the bench: <see cref="Behind"/>, <see cref="InFront"/> or <see cref="UpsideDown"/>.</summary>
    public string Stand { get; init; } = Behind;

    /// <summary>The longest name of who enters, in characters, as the envelope of an entry has it.</summary>
    public const int LongestBy = 80;

    /// <summary>Who enters at this device, kept on each entry as <c>by</c>: chosen at /look, else what the device was called at pairing; null for nobody named.</summary>
    public string? By { get; init; }

    /// <summary>A name as an entry may have it: without controls and marks of direction; null where nothing is left.</summary>
    public static string? Named(string? told)
    {
        var kept = new System.Text.StringBuilder();
        foreach (var rune in (told ?? "").EnumerateRunes())
        {
            var plain = System.Text.Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned);
            if (plain && rune != System.Text.Rune.ReplacementChar && kept.Length + rune.Utf16SequenceLength <= LongestBy) kept.Append(rune);
        }
        var name = kept.ToString().Trim();
        return name.Length == 0 ? null : name;
    }

    /// <summary>What is chosen for a field of <see cref="LookChoices"/>.</summary>
    public string Of(string field) => field switch
    {
        "words" => WritingStyle.Words == Wording.UK ? "uk" : "us",
        "gap" => WritingStyle.Gap switch { GapUnit.Thou => "thou", GapUnit.HundredthMm => "hundredth", _ => "um" },
        "height" => WritingStyle.Height switch { HeightUnit.InchDecimal => "inch", HeightUnit.InchFraction => "fraction", _ => "mm" },
        "decimal" => WritingStyle.DecimalSign == ',' ? "comma" : "point",
        "theme" => Theme,
        _ => Stand,
    };
}

/// <summary>One thing that can be chosen at /look.</summary>
/// <param name="Field">Its name in form and cookie.</param>
/// <param name="Asks">The question.</param>
/// <param name="Options">What may be chosen, and how it is said.</param>
public sealed record LookChoice(string Field, string Asks, IReadOnlyList<(string Value, string Said)> Options);

/// <summary>All that can be chosen at /look.</summary>
public static class LookChoices
{
    /// <summary>The choices in their order.</summary>
    public static IReadOnlyList<LookChoice> All { get; } =
    [
        new("words", "Words of the trade", [("us", "reel, bedknife"), ("uk", "cylinder, bottom blade")]),
        new("gap", "Gaps in", [("um", "µm"), ("hundredth", "hundredths of a mm"), ("thou", "thou")]),
        new("height", "Heights in", [("mm", "mm"), ("inch", "inches, 0.156"), ("fraction", "inches, 5/32")]),
        new("decimal", "Decimal sign", [("point", "point, 4.5"), ("comma", "comma, 4,5")]),
        new("theme", "Light or dark", [("system", "as this device"), ("light", "light"), ("dark", "dark")]),
        new("stand", "At the bench you stand", [(VisitorLook.Behind, "behind, as you walk"), (VisitorLook.InFront, "in front"), (VisitorLook.UpsideDown, "unit rolled over sideways")]),
    ];
}
