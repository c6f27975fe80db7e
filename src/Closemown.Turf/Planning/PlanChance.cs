using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>Draws by trace, day and purpose: the same plan asked again draws the same.</summary>
internal static class PlanChance
{
    private const int Quantiles = 512;
    private static readonly double[] Normals = [.. Enumerable.Range(0, Quantiles).Select(i => NormalMath.InversePhi((i + 0.5) / Quantiles))];

    public const int Free = 1, Cut = 2, Canopy = 3, Stress = 4, Away = 5, AwayFor = 6;

    public static double Uniform(int trace, int day, int what) => (Mixed(trace, day, what) >> 11) * (1.0 / (1UL << 53));

    public static double Normal(int trace, int day, int what) => Normals[(int)(Mixed(trace, day, what) >> 55)];

    /// <summary>One of equally probable normal values for each trace, in an order of no pattern.</summary>
    public static double Stratified(int trace, int traces, int what)
    {
        // A step that shares no factor with the count visits each place once.
        var step = (int)(traces * 0.618) | 1;
        while (Gcd(step, traces) != 1) step += 2;
        var at = (((long)trace * step) + (what * 7)) % traces;
        return NormalMath.InversePhi((at + 0.5) / traces);
    }

    private static int Gcd(int a, int b) => b == 0 ? a : Gcd(b, a % b);

    private static ulong Mixed(int trace, int day, int what)
    {
        unchecked
        {
            var h = ((ulong)(uint)trace * 0x9E3779B97F4A7C15UL) + ((ulong)(uint)day * 0xC2B2AE3D27D4EB4FUL) + ((ulong)(uint)what * 0x165667B19E3779F9UL);
            h = (h ^ (h >> 30)) * 0xBF58476D1CE4E5B9UL;
            h = (h ^ (h >> 27)) * 0x94D049BB133111EBUL;
            return h ^ (h >> 31);
        }
    }
}
