namespace Closemown.Estimation;

/// <summary>Gauss–Legendre points on [−1, 1], 20 in all: the ten positive nodes and their weights.</summary>
/// <remarks>Roots of the Legendre polynomial by Newton from Tricomi's start; Abramowitz and Stegun 1964, 25.4.29.</remarks>
internal static class GaussLegendre
{
    /// <summary>Points, of either sign.</summary>
    public const int Count = 20;

    /// <summary>Numbers in each array: the ten, and then zeros that count for nothing, so that four at a time fill it.</summary>
    public const int Room = 12;

    public static readonly double[] Nodes = new double[Room];
    public static readonly double[] Weights = Fill();

    private static double[] Fill()
    {
        var weights = new double[Room];
        for (var i = 0; i < Count / 2; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (Count + 0.5));
            var slope = 0.0;
            for (var round = 0; round < 8; round++)
            {
                double before = 1, now = x;
                for (var k = 2; k <= Count; k++) (before, now) = (now, ((((2 * k) - 1) * x * now) - ((k - 1) * before)) / k);
                slope = Count * ((x * now) - before) / ((x * x) - 1);
                x -= now / slope;
            }

            Nodes[i] = x;
            weights[i] = 2 / ((1 - (x * x)) * slope * slope);
        }

        return weights;
    }
}
