using System.Globalization;
using Closemown.Book;

namespace Closemown.Bench.Keeping;

/// <summary>Changes one byte of a small book, each in turn, and looks whether it is found or harmless: flips [--every N] [--seed S].</summary>
internal static class FlipsRun
{
    public static int Print(string[] args)
    {
        var (every, seed) = (Options.Number(args, "--every", 1), Options.Number(args, "--seed", 20260501));
        var folder = Directory.CreateTempSubdirectory("closemown-flips-").FullName;
        try
        {
            var path = Path.Combine(folder, "book.closemown");
            using (var book = BookFile.Open(path)) Importer.Read(new StringReader(string.Join('\n', Written())), book);
            var whole = File.ReadAllBytes(path);
            var said = Said(path);
            var random = new Random(seed);
            var (tried, found, harmless, missed) = (0, 0, 0, 0);
            var changed = Path.Combine(folder, "changed.closemown");
            for (var at = 0; at < whole.Length; at += every)
            {
                var bytes = (byte[])whole.Clone();
                bytes[at] ^= (byte)random.Next(1, 256);
                File.WriteAllBytes(changed, bytes);
                tried++;
                if (Found(changed)) found++;
                else if (Said(changed) == said) harmless++;
                else
                {
                    missed++;
                    Console.WriteLine($"byte {at}: {whole[at]:x2} to {bytes[at]:x2} is not found, and the book says something else");
                }
            }
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: a book of {whole.Length} bytes, {tried} bytes changed one at a time: {found} found, {harmless} harmless, {missed} missed"));
            return missed == 0 ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    internal static IEnumerable<string> Written() => DemoBook.Entries.Take(25).Select(e => e.Json).Concat(Enumerable.Range(0, 6).Select(i =>
        $$"""{"v":1,"id":"019de28d-3c00-7000-8000-{{i:x12}}","at":"2026-05-03T18:0{{i}}:00+01:00","kind":"weather","area":"green","date":"2026-05-0{{1 + (i / 2)}}","tMaxC":{{14 + i}},"source":"station","forecast":{{(i % 2 == 0 ? "true" : "false")}}}"""));

    private static bool Found(string path)
    {
        try
        {
            return !Verification.Run(path).Ok;
        }
        catch (BookException)
        {
            return true;
        }
    }

    private static string Said(string path)
    {
        try
        {
            using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
            using var text = new StringWriter();
            Exporter.Write(book, text);
            foreach (var e in book.ReadWeather()) text.WriteLine(e.Json);
            foreach (var s in book.ReadAll()) text.WriteLine(s.Hash);
            return text.ToString();
        }
        catch (BookException e)
        {
            return e.Message;
        }
    }
}
