using System.Diagnostics;
using System.Globalization;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Bench.Keeping;

/// <summary>Changes single bytes of a book, opens it as usual and asks: flips --answers N [--seed S].</summary>
/// <remarks>An answer must be the whole book's, or the book must be refused with a reason; any other answer is one too many.</remarks>
internal static class AnswersRun
{
    private static readonly string[] Asked = ["{\"ask\":\"next\"}", "{\"ask\":\"steel\"}"];

    public static int Print(string[] args)
    {
        var (count, seed) = (Options.Number(args, "--answers", 10_000), Options.Number(args, "--seed", 20260501));
        var folder = Directory.CreateTempSubdirectory("closemown-flips-").FullName;
        var watch = Stopwatch.StartNew();
        try
        {
            var path = Path.Combine(folder, "book.closemown");
            using (var book = BookFile.Open(path)) Importer.Read(new StringReader(string.Join('\n', FlipsRun.Written())), book);
            var whole = File.ReadAllBytes(path);
            var (said, held) = Said(path);
            var random = new Random(seed);
            var (same, refused, other, fell) = (0, 0, 0, 0);
            var answers = new Dictionary<string, string> { [held] = said };
            for (var n = 0; n < count; n++)
            {
                var changed = Path.Combine(folder, "changed.closemown");
                var bytes = (byte[])whole.Clone();
                var at = random.Next(bytes.Length);
                bytes[at] ^= (byte)random.Next(1, 256);
                foreach (var beside in new[] { "-wal", "-shm", "-journal" }) File.Delete(changed + beside);
                File.WriteAllBytes(changed, bytes);
                try
                {
                    if (Said(changed, answers).Said == said) same++;
                    else
                    {
                        other++;
                        Console.WriteLine($"byte {at}: {whole[at]:x2} to {bytes[at]:x2}: another answer, and nothing is said");
                    }
                }
                catch (BookException)
                {
                    refused++;
                }
                catch (Exception e)
                {
                    fell++;
                    Console.WriteLine($"byte {at}: {whole[at]:x2} to {bytes[at]:x2}: {e.GetType().Name} {e.Message}");
                }
            }
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"seed {seed}: a book of {whole.Length} bytes, {count} single-byte changes, opened as usual and asked: {same} the whole book's answers, {refused} refused with a reason, {other} other answers without a word, {fell} unforeseen, {watch.Elapsed.TotalSeconds:0} s"));
            return other + fell == 0 ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>What the book answers, and all that it holds. Answers follow from what is held: the same is not reckoned twice.</summary>
    private static (string Said, string Held) Said(string path, Dictionary<string, string>? known = null)
    {
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
        var talk = new Conversation(book, AdviceSettings.Default, Phrasing.Plain, new SequentialIds().Next);
        using var text = new StringWriter();
        for (var n = 0; n < talk.Desk.Arrived.Count; n++) text.WriteLine($"{talk.Desk.Arrived[n].Json} {talk.Desk.HashAfter(n + 1)}");
        foreach (var e in book.ReadWeather()) text.WriteLine(e.Json);
        var held = text.ToString();
        return known?.GetValueOrDefault(held) is { } before ? (before, held) : (string.Join('\n', Asked.Select(a => talk.Say(a)).Append(held)), held);
    }
}
