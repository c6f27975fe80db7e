using System.Text;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Bench.Keeping;

/// <summary>What is killed: the pipe on a book, or an import, backup or restore again and again, by the code that the commands call.</summary>
internal static class KillsChild
{
    public static int Run(string what, string[] paths)
    {
        using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true };
        switch (what)
        {
            case "pipe":
                using (var book = BookFile.Open(paths[0]))
                    PipeLoop.Run(PipeLoop.Lines(Console.OpenStandardInput()), output, new Conversation(book, AdviceSettings.Default, Phrasing.Plain, new IdMaker().Next));
                return 0;
            case "import":
                output.WriteLine("begins");
                using (var book = BookFile.Open(paths[0]))
                using (var lines = File.OpenRead(paths[1]))
                    Importer.Read(lines, book);
                return 0;
            case "backup":
                output.WriteLine("begins");
                for (var n = 0; ; n++) Backup.Make(paths[0], $"{paths[1]}-{n}.closemown", DateOnly.MinValue);
            case "restore":
                output.WriteLine("begins");
                for (var n = 0; ; n++) Restore.Make(paths[1 + (n % 2)], paths[0], new DateTime(2026, 5, 1).AddSeconds(n), merge: false);
            default:
                throw new ArgumentException($"nothing to kill is called {what}");
        }
    }
}
