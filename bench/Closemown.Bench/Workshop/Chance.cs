namespace Closemown.Bench.Workshop;

/// <summary>Chance by name: the same key gives the same draw, whatever else was drawn before.</summary>
/// <remarks>So two strategies live through the same season, and one more reading does not change the next one's noise.</remarks>
internal static class Chance
{
    public static class Of
    {
        public const int Making = 1;
        public const int Wear = 2;
        public const int Jumps = 3;
        public const int Turning = 4;
        public const int Lapping = 5;
        public const int Reading = 6;
        public const int Trials = 7;
        public const int Shared = 8;
        public const int Blade = 9;
        public const int Screws = 10;
        public const int Strip = 11;
        public const int Settling = 12;
        public const int Starts = 13;
    }

    /// <summary>A stream of its own for that key.</summary>
    public static Random Stream(params ReadOnlySpan<int> key) => new((int)(Mixed(key) >> 33));

    public static double Uniform(params ReadOnlySpan<int> key) => (Mixed(key) >> 11) * (1.0 / (1UL << 53));

    public static double Normal(params ReadOnlySpan<int> key) => Normal(Stream(key), 0, 1);

    public static double Normal(Random r, double mean, double sd) => mean + (sd * Math.Sqrt(-2 * Math.Log(1 - r.NextDouble())) * Math.Cos(2 * Math.PI * r.NextDouble()));

    private static ulong Mixed(ReadOnlySpan<int> key)
    {
        unchecked
        {
            var h = 0x9E3779B97F4A7C15UL;
            foreach (var k in key)
            {
                h += (uint)k + 0x9E3779B97F4A7C15UL;
                h = (h ^ (h >> 30)) * 0xBF58476D1CE4E5B9UL;
                h = (h ^ (h >> 27)) * 0x94D049BB133111EBUL;
                h ^= h >> 31;
            }
            return h;
        }
    }
}
