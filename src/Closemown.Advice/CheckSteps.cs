using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>A check as a step: where, how it is asked for, and what it is expected to show.</summary>
internal static class CheckSteps
{
    public static AdviceStep Of(SteelBelief belief, AdviceSettings set, string kind, int[] at, SittingNow sitting)
    {
        var track = belief.Track;
        return new AdviceStep(kind)
        {
            Stations = at,
            Say = StepSpeech.Check(kind, at),
            TakesMinutes = set.CheckMinutes(kind, at.Length),
            Cautions = Cautions.For(kind, track.Memory, sitting),
            ExpectRead = [.. at.Select(s =>
            {
                var check = Checks.Of(kind, s, track.Unit, track.Strip);
                return (s, check.Words, belief.Probabilities(check));
            })],
        };
    }
}
