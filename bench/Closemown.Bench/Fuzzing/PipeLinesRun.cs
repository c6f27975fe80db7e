using System.Diagnostics;
using System.Globalization;
using Closemown.Advice;
using Closemown.Bench.Keeping;
using Closemown.Book;
using Closemown.Fuzzing;
using Closemown.Pipe;

namespace Closemown.Bench.Fuzzing;

/// <summary>Mutated lines, entries and questions, through the pipe into books in memory and in files: pipe-lines [--count N] [--seed N] [--question-every N] [--book-lines N].</summary>
internal static class PipeLinesRun
{
    public static int Print(string[] args)
    {
        var count = Options.Number(args, "--count", 1_000_000);
        var (seed, every, lines) = (Options.Number(args, "--seed", 1), Options.Number(args, "--question-every", 400), Options.Number(args, "--book-lines", 2000));
        Console.WriteLine(FormattableString.Invariant($"{count} lines, half of them into books in memory, half into files; one of {every} a question; a new book every {lines} lines; seed {seed}"));
        var sum = new Sum();
        var watch = Stopwatch.StartNew();
        for (var (book, done) = (0, 0); done < count; book++)
        {
            var some = Math.Min(lines, count - done);
            Book(seed + (book * 2), some, every, inFile: book % 2 == 1, sum);
            done += some;
            // Ten times in all.
            if (done * 10L / count > (done - some) * 10L / count) Console.WriteLine(Told(done, count, watch.Elapsed, sum));
        }
        var good = sum.Crashes == 0 && sum.Answers == sum.Lines;
        Console.WriteLine(FormattableString.Invariant($"{sum.Lines} lines, {sum.Answers} answers, {sum.Taken} taken, {sum.Lines - sum.Taken} refused, {sum.Crashes} crashes, {watch.Elapsed.TotalSeconds:0} s"));
        return good ? 0 : 1;
    }

    private static string Told(int done, int count, TimeSpan took, Sum sum)
    {
        var live = GC.GetTotalMemory(forceFullCollection: true) / 1e6;
        using var process = Process.GetCurrentProcess();
        return string.Create(CultureInfo.InvariantCulture, $"{100L * done / count} %: {took.TotalSeconds:0} s, {sum.Answers} answers, {sum.Crashes} crashes, {live:0.0} MB live, {process.WorkingSet64 / 1e6:0} MB resident");
    }

    /// <summary>Some lines into one new book; then it is opened again as it stands.</summary>
    private static void Book(int seed, int count, int every, bool inFile, Sum sum)
    {
        var folder = Directory.CreateTempSubdirectory("closemown-pipe-lines-").FullName;
        try
        {
            var path = inFile ? Path.Combine(folder, "book.closemown") : BookFile.InMemory;
            var maker = new LineMaker(seed, every);
            using (var book = BookFile.Open(path)) Talked(book, maker, count, sum);
            if (!inFile) return;
            using var again = BookFile.Open(path);
            if (!Laws.Answer(Talk(again).Say("""{"ask":"places"}"""))) throw new LawBrokenException("a book opens again", folder);
        }
        catch (Exception e) when (e is LawBrokenException or BookException or InvalidOperationException or ArgumentException or FormatException)
        {
            sum.Crashes++;
            Console.Error.WriteLine($"seed {seed}: {e}");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Talked(IEntryStore book, LineMaker maker, int count, Sum sum)
    {
        var talk = Talk(book);
        for (var n = 0; n < count; n++)
        {
            var line = maker.Next();
            using var input = new MemoryStream([.. line, (byte)'\n']);
            using var output = new StringWriter();
            sum.Lines++;
            try
            {
                PipeLoop.Run(PipeLoop.Lines(input), output, talk);
                var answers = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
                sum.Answers += answers.Length;
                foreach (var answer in answers) sum.Taken += Laws.Answer(answer) ? 1 : 0;
            }
            catch (Exception e)
            {
                sum.Crashes++;
                Console.Error.WriteLine($"{System.Text.Encoding.UTF8.GetString(line)}\n{e}");
                talk = Talk(book);
            }
        }
    }

    private static Conversation Talk(IEntryStore book) => new(book, AdviceSettings.Default, Phrasing.Plain, SequentialIds.After(book).Next);

    private sealed class Sum
    {
        public long Lines { get; set; }

        public long Answers { get; set; }

        public long Taken { get; set; }

        public long Crashes { get; set; }
    }
}
