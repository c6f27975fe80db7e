using System.Globalization;

namespace Closemown.Bench.Speed;

/// <summary>All figures of speed in one table: long books, and one solution beside sampling.</summary>
internal static class SpeedRun
{
    /// <param name="args">Rounds of the exact sampler, 20,000 when none is given; before it "sampling" to leave out the long books; "walk" for nothing but what walking through a book costs.</param>
    public static int Print(string[] args)
    {
        if (args is ["walk"])
        {
            Console.WriteLine("| work | CPU ms, median | least | clock ms, median | |\n|---|---|---|---|---|");
            Walks.Print(5000);
            return 0;
        }
        if (args is not ["sampling", ..]) LongBooks.Print();
        AgainstSampling.Print(args.Length > 0 && int.TryParse(args[^1], CultureInfo.InvariantCulture, out var rounds) ? rounds : 20_000);
        return 0;
    }
}
