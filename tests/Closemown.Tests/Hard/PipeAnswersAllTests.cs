using System.Text;
using Closemown.Book;
using Closemown.Fuzzing;
using Closemown.Pipe;
using Closemown.Tests.Pipe;
using Xunit;

namespace Closemown.Tests.Hard;

/// <summary>The pipe answers whatever comes, and goes on.</summary>
public sealed class PipeAnswersAllTests
{
    private static readonly string[] Days = ["0001-01-01", "1899-12-31", "1900-01-01", "2200-12-31", "9999-12-31"];

    public static TheoryData<string> Names => [.. HardLines.Names.Select(Uri.EscapeDataString)];

    private static void AllAnswered(IEnumerable<string> lines, IEntryStore? book = null)
    {
        var all = lines.ToList();
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', all) + "\n"));
        using var output = new StringWriter();
        var talk = new Talk(book: book);
        PipeLoop.Run(PipeLoop.Lines(input), output, talk.With);
        var answers = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(all.Count, answers.Length);
        for (var n = 0; n < answers.Length; n++)
        {
            try
            {
                Laws.Answer(answers[n]);
            }
            catch (LawBrokenException e)
            {
                Assert.Fail($"{all[n]}\n{e.Message}");
            }
        }
        foreach (var stored in talk.Book.ReadAll()) Laws.ReadBack(stored.Entry);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void F2_F31_Every_kind_and_question_with_a_bad_name_is_answered(string name)
    {
        var plain = Uri.UnescapeDataString(name);
        AllAnswered([.. HardLines.Named(plain), .. HardLines.Asked(plain)]);
    }

    [Fact]
    public void F2_Every_number_far_off_is_answered() => AllAnswered([.. HardLines.Numbered(), .. GoodLines.Questions]);

    [Theory]
    [InlineData("0001-01-01T00:00:00Z")]
    [InlineData("1900-01-01T00:00:00Z")]
    [InlineData("2200-12-31T23:59:59Z")]
    [InlineData("9999-12-31T23:59:59Z")]
    public void F1_F2_Every_kind_at_a_time_far_off_is_answered(string time) => AllAnswered([.. HardLines.Timed(time), """{"kind":"clicks","left":1}""", .. GoodLines.Questions]);

    [Fact]
    public void F2_Every_question_of_days_and_numbers_far_off_is_answered() => AllAnswered([.. GoodLines.Entries, .. HardLines.AskedFar(Days)]);
}
