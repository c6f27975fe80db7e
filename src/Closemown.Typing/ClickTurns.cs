using System.Text.RegularExpressions;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>What one step of an adjuster moves, from what can be counted and measured: the steps of one whole turn, and the pitch of the thread.</summary>
/// <remarks>
/// A step moves the edge by pitch / steps · lever (screw kinematics). Where nobody knows the lever, a quarter is taken, and that it may be half as much or
/// half as much again: a rough start, which turning and reading then teaches. Common practice, no source.
/// </remarks>
public static partial class ClickTurns
{
    /// <summary>The lever that is taken where none is told.</summary>
    public const double UsualLever = 0.25;

    /// <summary>How far off a step may be where no lever is told, as a share of it.</summary>
    public const double RoughShare = 0.5;

    private const double MostSteps = 200, LeastPitchMm = 0.2, MostPitchMm = 6, LeastLever = 0.02, MostLever = 5;

    /// <summary>How it is written: "14 clicks a turn, 1 mm thread".</summary>
    public const string Example = "14 clicks a turn, 1 mm thread";

    /// <summary>Reads the text; null where it is none of this form.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <exception cref="TypedFault">It is of this form, but cannot be.</exception>
    public static ClickStart? Read(string text, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (Form().Match(text) is not { Success: true } said) return null;
        if (!Number.TryParse(said.Groups["steps"].Value, style, NumberUnit.One, out var steps, out _) || steps.Value is < 1 or > MostSteps)
            throw new TypedFault($"\"{said.Groups["steps"].Value}\" is no number of steps in a turn.", $"Count the steps of one whole turn, and write it like {Example}.");
        if (Pitch(said.Groups["pitch"].Value.Trim(), style) is not (>= LeastPitchMm and <= MostPitchMm and var pitch))
            throw new TypedFault($"\"{said.Groups["pitch"].Value.Trim()}\" is no thread: from crest to crest it has a fifth of a millimetre to six.", $"Measure ten threads with a ruler and divide by ten; write it like {Example}, or 14 clicks a turn, 20 tpi.");
        double? lever = null;
        if (said.Groups["lever"] is { Success: true, Value: var told })
        {
            if (!Number.TryParse(told, style, NumberUnit.One, out var n, out _) || n.Value is < LeastLever or > MostLever)
                throw new TypedFault($"\"{told}\" is no lever.", "What the edge moves for what the screw moves: 0.25 where the edge moves a quarter as far.");
            lever = n.Value;
        }
        var um = Math.Round(1000 * pitch / steps.Value * (lever ?? UsualLever), 2);
        return new(um, lever is null ? Math.Round(um * RoughShare, 2) : null);
    }

    private static double? Pitch(string text, WritingStyle style)
    {
        if (PerInch().Match(text) is { Success: true } inch && Number.TryParse(inch.Groups[1].Value, style, NumberUnit.One, out var threads, out _) && threads.Value > 0) return 25.4 / threads.Value;
        return Length.TryParse(text, style, LengthUnit.Mm, out var mm, out _) ? mm.Mm : null;
    }

    [GeneratedRegex(@"^\s*(?<steps>\d+)\s*(?:(?:clicks?|flats?|notch(?:es)?|steps?)\s*(?:(?:a|per|in\s+a|in\s+one|each|/)\s*turn)?\s*(?:[,;]|\band\b)?|(?:(?:a|per|in\s+a|in\s+one|each|/)\s*turn)?\s*(?:[,;]\s|\band\b))\s*(?:thread(?:\s+of)?\s+)?(?<pitch>[\d.,½¼¾/ ]+\s*(?:mm|in|""|inch|inches|tpi|threads?\s*(?:an|per|/)\s*inch))(?:\s+(?:thread|pitch)s?)?\s*(?:[,;]?\s*lever\s+(?:of\s+)?(?<lever>[\d.,½¼¾/]+))?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Form();

    [GeneratedRegex(@"^([\d.,½¼¾/ ]+?)\s*(?:tpi|threads?\s*(?:an|per|/)\s*inch)$", RegexOptions.IgnoreCase)]
    private static partial Regex PerInch();
}

/// <summary>One step of an adjuster as it follows from steps and thread.</summary>
/// <param name="Um">µm.</param>
/// <param name="RoughUm">How far off that may be, where the lever is not known: a rough start; null where it was told.</param>
public sealed record ClickStart(double Um, double? RoughUm);
