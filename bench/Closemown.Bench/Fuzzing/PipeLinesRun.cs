using System.Diagnostics;
using System.Globalization;
using System.Text;
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
        foreach (var (sort, times) in sum.Sorts) Console.WriteLine(FormattableString.Invariant($"{times} times {sort}"));
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
            if (inFile) OpenedAgain(path, seed, sum);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Talked(IEntryStore book, LineMaker maker, int count, Sum sum)
    {
        var talk = new WatchedTalk(book);
        for (var n = 0; n < count; n++)
        {
            var line = maker.Next();
            using var input = new MemoryStream([.. line, (byte)'\n']);
            using var output = new StringWriter();
            sum.Lines++;
            try
            {
                PipeLoop.Run(PipeLoop.Lines(input), output, talk.With);
                var answers = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
                sum.Answers += answers.Length;
                talk.Throw();
                foreach (var answer in answers) sum.Taken += Laws.Answer(answer) ? 1 : 0;
            }
            catch (Exception e)
            {
                // An answer that tells of a bug counts as one: only the last catch kept the pipe going.
                sum.Crashed(Encoding.UTF8.GetString(line), e);
            }
        }
    }

    private static void OpenedAgain(string path, int seed, Sum sum)
    {
        try
        {
            using var again = BookFile.Open(path);
            Laws.Must(Laws.Answer(new WatchedTalk(again).With.Say("""{"ask":"places"}""")), "a book opens again", path);
        }
        catch (Exception e)
        {
            sum.Crashed(FormattableString.Invariant($"opening the book of seed {seed} again"), e);
        }
    }

    private sealed class Sum
    {
        private readonly Dictionary<string, long> sorts = new(StringComparer.Ordinal);

        /// <summary>How often each sort of crash was met.</summary>
        public IReadOnlyDictionary<string, long> Sorts => sorts;

        public long Lines { get; set; }

        public long Answers { get; set; }

        public long Taken { get; set; }

        public long Crashes { get; private set; }

        /// <summary>Counts it, and tells the first of each sort.</summary>
        public void Crashed(string line, Exception e)
        {
            Crashes++;
            var sort = Crash.Sign(e);
            if (!sorts.TryAdd(sort, 1)) sorts[sort]++;
            else Console.Error.WriteLine($"{line}\n  {e}");
        }
    }
}
