using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights;

/// <summary>The heights a person wants one after the other, up and down by steps people make. Invented.</summary>
internal static class Wishes
{
    private const double LowMm = 4, HighMm = 7;

    public static double[] Of(int seed, int settings)
    {
        var r = Chance.Stream(seed, HeightChance.Wishes);
        var wishes = new double[settings];
        var mm = 4.5 + (0.25 * r.Next(9));
        for (var i = 0; i < settings; i++)
        {
            wishes[i] = mm;
            var step = (1 + r.Next(4)) * (r.Next(2) == 0 ? 0.25 : -0.25);
            mm += mm + step is < LowMm or > HighMm ? -step : step;
        }
        return wishes;
    }
}
