using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The plan of turf of which nobody knows what it stands at: read it first, nothing else. Common practice, no source.</summary>
internal static class NothingKnown
{
    /// <summary>Days without a mowing and without figures.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="days">Days.</param>
    public static MowingPlan Plan(DateOnly from, int days) =>
        new([.. Enumerable.Range(0, days).Select(d => Day(from.AddDays(d)))], new(null, false, null, null), [], 0);

    private static PlanDay Day(DateOnly date) => new()
    {
        Date = date,
        Mow = false,
        MowProbability = 0,
        CutMm = 0,
        Move = CutMove.Same,
        SetAnew = false,
        CanopyMm = default,
        Share = default,
        OverThirdProbability = 0,
        ScalpProbability = 0,
        AskFirst = false,
        KeepOffProbability = 0,
        FreeProbability = 0,
        WiltingProbability = 0,
        Stress = 0,
        LossMown = double.PositiveInfinity,
        LossNotMown = double.PositiveInfinity,
        Minutes = 0,
        Why = new(PlanReason.HeightNotKnown, 0),
        WhyHeight = new(HeightReason.AtWish, 0),
    };
}
