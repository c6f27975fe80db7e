using System.Text;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Fuzzing;

/// <summary>Some lines through the pipe into a new book in memory: entries and questions.</summary>
internal sealed class PipeTarget() : FuzzTarget("pipe")
{
    private const int MostLines = 5;

    public override IReadOnlyList<byte[]> Seeds { get; } =
        Bytes(GoodLines.Entries.Select((e, i) => $"{e}\n{GoodLines.Questions[i % GoodLines.Questions.Count]}\n").Concat(GoodLines.Questions));

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(GoodLines.Questions.Concat(GoodLines.Entries).Select(l => "\n" + l + "\n"));

    public override int Weight => 4;

    public override void Run(byte[] input)
    {
        var lines = Lines(input);
        using var book = new MemoryBook();
        using var output = new StringWriter();
        using var stream = new MemoryStream([.. lines.SelectMany(l => l.Append((byte)'\n'))]);
        var watched = new WatchedTalk(book);
        PipeLoop.Run(PipeLoop.Lines(stream), output, watched.With);
        watched.Throw();
        var answers = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Laws.Must(answers.Length == lines.Count, "as many answers as lines", $"{lines.Count} lines, {answers.Length} answers");
        foreach (var answer in answers) Laws.Answer(answer);
        foreach (var stored in book.ReadAll()) Laws.ReadBack(stored.Entry);
        // The book is opened again as it stands.
        Laws.Answer(new WatchedTalk(book).With.Say("""{"ask":"places"}"""));
    }

    /// <summary>The lines that are not blank; bytes that are no text are a line too.</summary>
    private static List<byte[]> Lines(byte[] input)
    {
        var lines = new List<byte[]>();
        foreach (var range in input.AsSpan().Split((byte)'\n'))
        {
            var line = input[range];
            if (string.IsNullOrWhiteSpace(Encoding.UTF8.GetString(line).Trim('\ufeff'))) continue;
            lines.Add(line);
            if (lines.Count == MostLines) break;
        }
        return lines;
    }
}
