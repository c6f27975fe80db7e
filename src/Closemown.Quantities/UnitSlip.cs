namespace Closemown.Quantities;

/// <summary>Questions a value that is implausible as given, and offers what may have been meant.</summary>
public static class UnitSlip
{
    /// <summary>Checks a value against what the field can well be.</summary>
    /// <param name="value">The value in the range's base unit.</param>
    /// <param name="range">What the field can well be.</param>
    /// <param name="style">The person's way of writing; default <see cref="WritingStyle.Plain"/>.</param>
    /// <param name="typedIn">For a length, the unit it was typed in, so that candidates are written in it too; default the base
    /// unit.</param>
    /// <returns>Null when the value is plausible as given; otherwise a question, with candidates where a known slip makes it
    /// plausible.</returns>
    public static SlipQuestion? Check(double value, PlausibleRange range, WritingStyle? style = null, LengthUnit? typedIn = null)
    {
        ArgumentNullException.ThrowIfNull(range);
        if (range.Contains(value))
            return null;
        style ??= WritingStyle.Plain;
        var scale = new SlipScale(range.BaseUnit, style, typedIn);
        if (!double.IsFinite(value))
            return new SlipQuestion($"{Capital(range.FieldWords)} must be a number.", []);

        var candidates = new List<SlipCandidate>();
        foreach (UnitSlipKind kind in range.Slips)
        {
            foreach (SlipReading meant in SlipReading.Of(kind, value))
            {
                if (!range.Contains(meant.Value) || candidates.Exists(c => Near(c.Value, meant.Value)))
                    continue;
                string words = meant.Words.Replace("#", scale.Figures(value), StringComparison.Ordinal);
                string reading = $"{words}: {scale.Both(meant.Value)}";
                candidates.Add(new SlipCandidate(meant.Value, scale.Written(meant.Value), reading, kind));
            }
        }

        return new SlipQuestion(Why(value, range, scale, candidates.Count), candidates);
    }

    private static string Why(double value, PlausibleRange range, SlipScale scale, int candidates)
    {
        string between = $"{scale.Figures(range.Low)} to {scale.InBase(range.High)}";
        string usual = $"{Capital(range.FieldWords)} is usually {between}, and this is {scale.Both(value)}.";
        string because = range.Because is null ? "" : " " + range.Because;
        string turns = range.Slips.Contains(UnitSlipKind.TurnsOrClicks) ? " Turns and clicks are easily mixed up." : "";
        string ask = candidates > 0 ? "" : $" Is it really {scale.Written(value)}?";
        return usual + because + turns + ask;
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-9 * Math.Max(Math.Abs(a), Math.Abs(b));

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
