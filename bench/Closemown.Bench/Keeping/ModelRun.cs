using System.Diagnostics;
using System.Globalization;
using Closemown.Tests.Book.Model;

namespace Closemown.Bench.Keeping;

/// <summary>Does random sequences of what happens to a book to a file and to lists in memory, and prints where they differ: book-model [--sequences N].</summary>
internal static class ModelRun
{
    public static int Print(string[] args)
    {
        var sequences = Options.Number(args, "--sequences", 10_000);
        var watch = Stopwatch.StartNew();
        try
        {
            BookModel.Check(sequences, threads: Environment.ProcessorCount, tell: Console.WriteLine);
        }
        catch (CsCheck.CsCheckException e)
        {
            Console.WriteLine(e.Message);
            Console.WriteLine($"{sequences} sequences wanted: 1 difference, and no more were tried");
            return 1;
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{sequences} sequences: 0 differences, {watch.Elapsed.TotalSeconds:0} s"));
        return 0;
    }
}
