namespace Closemown.Estimation;

/// <summary>Standard normals from a seed: xoshiro256** and the inverse distribution.</summary>
/// <remarks>Blackman and Vigna 2021, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47:36; seeded by their SplitMix64.</remarks>
public sealed class SeededNormal
{
    private ulong _a, _b, _c, _d;

    public SeededNormal(ulong seed)
    {
        _a = Split(ref seed);
        _b = Split(ref seed);
        _c = Split(ref seed);
        _d = Split(ref seed);
    }

    public double Next() => InverseNormal.Quantile(((Bits() >> 12) + 0.5) * (1.0 / (1UL << 52)));

    private ulong Bits()
    {
        var result = ulong.RotateLeft(_b * 5, 7) * 9;
        var t = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= t;
        _d = ulong.RotateLeft(_d, 45);
        return result;
    }

    private static ulong Split(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
