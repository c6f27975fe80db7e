using System.Globalization;

namespace Closemown.Bench.Speed;

/// <summary>All figures of speed in one table: long books, and one solution beside sampling.</summary>
internal static class SpeedRun
{
    /// <param name="args">Rounds of the exact sampler; 20,000 when none is given.</param>
    public static int Print(string[] args)
    {
        LongBooks.Print();
        AgainstSampling.Print(args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 20_000);
        return 0;
    }
}
