using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights;

/// <summary>Names of the streams of chance of the heights, apart from those of the workshop.</summary>
internal static class HeightChance
{
    public const int Making = 101;
    public const int Wishes = 102;
    public const int Hand = 103;
    public const int Nuts = 104;
    public const int Knock = 105;
    public const int Reading = 106;
    public const int Turf = 107;
    public const int Spots = 108;

    public static double Between(Random r, double low, double high) => low + ((high - low) * r.NextDouble());

    public static double Normal(double sd, params ReadOnlySpan<int> key) => sd * Chance.Normal(key);
}
