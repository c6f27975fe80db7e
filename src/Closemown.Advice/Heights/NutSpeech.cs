using Closemown.Height;

namespace Closemown.Advice;

/// <summary>The height nuts in sentences: slackened before a turn, tightened after it, and what tightening does to the height here.</summary>
internal static class NutSpeech
{
    public const string Slacken = "Slacken both height nuts.";

    public const string StillSlack = "The nuts are still slack.";

    public const string Tighten = "Tighten both height nuts, holding each screw so that it does not turn with its nut.";

    /// <summary>A shift smaller than this is of no account, mm.</summary>
    private const double ToldFromMm = 0.02;

    /// <summary>What tightening was found to do, and what it means for the step; null where nothing is known of it or it is of no account.</summary>
    /// <param name="belief">What is known.</param>
    /// <param name="step">The step: what the gauge should read with slack nuts is told with turns that end at the height.</param>
    public static string? Shift(HeightBelief belief, HeightAdvice step)
    {
        if (belief.LockShiftMm(0) is not { } left || belief.LockShiftMm(1) is not { } right || !(Counts(left) || Counts(right))) return null;
        var said = $"Tightening the nuts {Moves(left)} the left side by {Size(left)} and {Moves(right)} the right by {Size(right)} here: hold the screws, and tighten alike each time.";
        return step switch
        {
            { Do: HeightDo.Screw, Why: not HeightWhy.DownToComeUp } or { Do: HeightDo.Lock } =>
                $"{said} The turns allow for it: with the nuts still slack the gauge should read about {HeightSpeech.Mm(step.Left.Mean - left.Mean)} left and {HeightSpeech.Mm(step.Right.Mean - right.Mean)} right.",
            _ => said,
        };
    }

    private static bool Counts(HeightEstimate shift) => Math.Abs(shift.Mean) >= Math.Max(ToldFromMm, shift.Sd);

    private static string Moves(HeightEstimate shift) => shift.Mean >= 0 ? "lifts" : "lowers";

    private static string Size(HeightEstimate shift) => $"{HeightSpeech.Mm(Math.Abs(shift.Mean))} (give or take {HeightSpeech.Mm(shift.Sd)})";
}
