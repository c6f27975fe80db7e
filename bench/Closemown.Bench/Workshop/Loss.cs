using Closemown.Advice;
using Closemown.Estimation;

namespace Closemown.Bench.Workshop;

/// <summary>What a mowing cost in minutes, by the prices the advice works with but from what is true.</summary>
internal static class Loss
{
    public const double LowUm = -6;
    public const double HighUm = 35;

    /// <summary>Torn leaf, out of tolerance and pressing, from how it was.</summary>
    public static double Of(AdviceSettings set, double clean, double outside, double pressedUm, double hours) =>
        (set.TornMowing * (1 - clean)) + (set.OutOfTolerance * outside)
        + (hours * ((set.PressedUmHour * Math.Min(pressedUm, set.PressingKneeUm)) + (set.HardPressedUmHour * Math.Max(0, pressedUm - set.PressingKneeUm))));

    /// <summary>Steel of knife and reel together, worn by halves.</summary>
    public static double Steel(AdviceSettings set, double um) => um * (set.KnifeUm + set.ReelUm) / 2;

    public static bool InTolerance(CuttingUnit unit) => Least(unit) >= LowUm && Most(unit) <= HighUm;

    /// <summary>How likely it is out of tolerance where hands and wear scatter by so much.</summary>
    public static double Outside(CuttingUnit unit, double scatterUm) => NormalMath.Phi(-Math.Min(Least(unit) - LowUm, HighUm - Most(unit)) / scatterUm);

    public static double PressedUm(CuttingUnit unit) => Math.Max(0, -Least(unit));

    private static double Least(CuttingUnit u) => Math.Min(u.Gap(0), Math.Min(u.Gap(1), u.Gap(2)));

    private static double Most(CuttingUnit u) => Math.Max(u.Gap(0), Math.Max(u.Gap(1), u.Gap(2)));
}
