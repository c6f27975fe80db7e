using Closemown.Advice;

namespace Closemown.Bench.Workshop.Strategies;

/// <summary>The limit: knows the truth and needs no readings; takes the clicks and laps that cost least now and in the mowings to come.</summary>
/// <remarks>Needs no guard on the pressing side, for it knows. What a turn or a lap really did it sees, and goes on from there.</remarks>
internal sealed class AllKnowing(CuttingUnit unit, AdviceSettings settings) : IStrategy
{
    private readonly AdviceSettings set = settings with { GuardUm = 0 };
    private readonly NipFuture future = NipFuture.Of(Rates(unit), settings with { GuardUm = 0 }, opens: false);
    private const int MostOut = 6;
    private const int MostIn = 8;
    private const int MostSteps = 8;
    private const double ScatterUm = 2;                  // what its own hands and the mowing will do is chance to it too
    private static readonly double[] LapMinutes = [0, 1, 2, 4];

    public void Work(BenchWork bench)
    {
        for (var step = 0; step < MostSteps; step++)
        {
            var (left, right, lap) = Best(step > 0 && lapped);
            if ((left, right, lap) == (0, 0, 0)) break;
            bench.Turn(left, right);
            if (lap > 0) bench.Lap(lap);
            lapped |= lap > 0;
        }
        lapped = false;
    }

    private bool lapped;

    private (int Left, int Right, double Lap) Best(bool again)
    {
        var (best, least) = ((0, 0, 0.0), double.PositiveInfinity);
        foreach (var lap in LapMinutes)
        {
            for (var left = -MostOut; left <= MostIn; left++)
            {
                for (var right = -MostOut; right <= MostIn; right++)
                {
                    var loss = Cost(left, right, lap, again);
                    if (loss < least - 1e-9) (best, least) = ((left, right, lap), loss);
                }
            }
        }
        return best;
    }

    private double Cost(int left, int right, double lap, bool again)
    {
        var u = unit.Expected();
        var scratch = new BenchWork(u, new Hand(u, new()));
        if (again) scratch.Lap(0);
        var before = scratch.Minutes;
        scratch.Turn(left, right);
        if (lap > 0) scratch.Lap(lap);
        var outside = Loss.Outside(u, ScatterUm);
        var pressed = Loss.PressedUm(u);
        var clean = u.Mow().Clean;
        outside = (outside + Loss.Outside(u, ScatterUm)) / 2;
        pressed = (pressed + Loss.PressedUm(u)) / 2;
        return (set.PriceOfMinute * (scratch.Minutes - before)) + Loss.Of(set, clean, outside, pressed, u.Hours)
            + Loss.Steel(set, u.SteelUm - unit.SteelUm) + Enumerable.Range(0, 3).Average(s => future.At(u.Gap(s), u.Edge(s)))
            + (set.BowUm * Math.Max(0, Math.Abs(u.Gap(1) - ((u.Gap(0) + u.Gap(2)) / 2)) - ((Loss.HighUm - Loss.LowUm) / 2)));
    }

    private static NipRates Rates(CuttingUnit u) => new(u.Hours, (u.Make.OpeningUmPerHour.Average() * u.Hours) + u.Make.OpeningUmPerOuting.Average(), u.Make.DullingUmPerHour * u.Hours,
        u.Make.ClickUm.Average(), u.Make.LapUmPerMinute, new(u.Make.CleanUm, 0), CutsUm: null, ScatterUm, (Loss.LowUm, Loss.HighUm), Relief: true);
}
