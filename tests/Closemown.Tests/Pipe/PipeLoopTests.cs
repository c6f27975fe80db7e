using System.Text;
using System.Text.Json.Nodes;
using Closemown.Pipe;
using Closemown.Tests.Steel;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Pipe;

/// <summary>The pipe as bytes: one line in, one line out, whatever the line is.</summary>
public sealed class PipeLoopTests
{
    private static List<JsonObject> Run(byte[] input)
    {
        using var stream = new MemoryStream(input);
        using var output = new StringWriter();
        PipeLoop.Run(PipeLoop.Lines(stream), output, new Talk().With);
        var text = output.ToString();
        Assert.True(text.Length == 0 || text.EndsWith('\n'));
        return [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!.AsObject())];
    }

    private static List<JsonObject> Run(string input) => Run(Encoding.UTF8.GetBytes(input));

    [Fact]
    public void Nothing_in_nothing_out() => Assert.Empty(Run(""));

    [Fact]
    public void Blank_lines_are_skipped_and_line_ends_of_all_kinds_taken()
    {
        var answers = Run("\n  \n\t\n" + SteelBook.Clicks(1, 1) + "\r\n\r\n" + SteelBook.Mow(1) + "\n\n{\"ask\":\"steel\"}");
        Assert.Equal(3, answers.Count);
        Assert.All(answers, a => Assert.True((bool)a["ok"]!));
        Assert.NotNull(answers[2]["steel"]);
    }

    [Fact]
    public void Answers_come_in_order_each_flushed_before_the_next_line_is_read()
    {
        using var output = new CountingWriter();
        using var input = new SteppedStream([SteelBook.Clicks(1, 1), "{", """{"ask":"steel"}"""], () => output.Flushed);
        PipeLoop.Run(PipeLoop.Lines(input), output, new Talk().With);
        Assert.Equal([0, 1, 2, 3], input.FlushedAtRead);
        Assert.Equal(["True", "False", "True"], output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => ((bool)JsonNode.Parse(l)!["ok"]!).ToString()));
    }

    [Fact]
    public void Too_long_a_line_is_refused_and_the_next_is_taken()
    {
        var answers = Run("{\"note\":\"" + new string('x', 70_000) + "\"}\n" + new string('y', 300_000) + "\n" + SteelBook.Clicks(1, 1) + "\n");
        Assert.Equal(["bad-json", "bad-json", ""], answers.Select(a => (string?)a["error"]?["code"] ?? ""));
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused_and_the_next_line_is_taken()
    {
        byte[] input = [.. "{\"kind\":\"clicks\",\"left\":1,\"note\":\""u8, 0xC3, 0x28, .. "\"}\n"u8, 0xFF, 0xFE, (byte)'\n', .. Encoding.UTF8.GetBytes(SteelBook.Clicks(1, 1))];
        var answers = Run(input);
        Assert.Equal(["bad-json", "bad-json", ""], answers.Select(a => (string?)a["error"]?["code"] ?? ""));
        Assert.Contains("UTF-8", (string)answers[0]["error"]!["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_of_all_languages_come_back_as_they_were()
    {
        var answers = Run("""{"kind":"fit","playLeft":"none","unit":"Walze Größe Ω 草"}""" + "\n" + """{"ask":"steel"}""" + "\n");
        Assert.Equal("Walze Größe Ω 草", (string)answers[1]["steel"]!["unit"]!);
    }

    private static readonly string[] Good =
    [
        SteelBook.All("paper-cut", "nicks"), SteelBook.Clicks(1, -0.5), SteelBook.Mow(0.5), SteelBook.Lap(2), Talk.GoodFit, """{"kind":"feeler","left":{"goUm":30,"noGoUm":50}}""",
        """{"kind":"unit","unit":"mower","clickUm":19,"priors":{"bowUm":[0,5]}}""", """{"kind":"strip","gsm":80}""", """{"kind":"void","voids":"01900000-0000-7000-8000-000000000001"}""",
        """{"ask":"next","atBench":true,"priceOfMinute":2}""", """{"ask":"steel","unit":"mower"}""", """{"ask":"why","id":"next-1-00000000-bW93ZXI"}""", """{"ask":"today"}""", """{"ask":"plan","area":"green"}""",
        """{"kind":"weather","date":"2026-05-01","tMinC":4,"tMaxC":15,"forecast":true}""", """{"kind":"canopy","mm":[5,6],"when":"before"}""", """{"kind":"decline","advice":"next-1","at":"2026-05-01T08:00:00+01:00"}""",
    ];

    private static readonly string[] Questions = ["\"ask\"", "\"ask\":\"next\",", "\"kind\":\"void\",", "\"id\":\"01900000-0000-7000-8000-000000000001\",", "\"at\":\"9999-12-31T23:59:59Z\",", "\"at\":\"2200-12-31T23:59:59-14:00\","];

    private static byte[] Broken(Random random) => [.. BrokenLines.Make(random, Good, Questions).Where(b => b != (byte)'\n')];

    [Fact]
    public void Ten_thousand_broken_lines_get_ten_thousand_answers()
    {
        const int Count = 10_000, Together = 100;
        var random = new Random(20260501);
        var (taken, refused) = (0, 0);
        var codes = new HashSet<string>();
        for (var block = 0; block < Count / Together; block++)
        {
            using var stream = new MemoryStream();
            var lines = 0;
            while (lines < Together)
            {
                var line = Broken(random);
                if (line.All(b => b is 32 or 9 or 13 or 0x0B or 0x0C)) continue;
                stream.Write(line);
                stream.WriteByte((byte)'\n');
                lines++;
            }
            var answers = Run(stream.ToArray());
            // A line of white space in another script is skipped as blank: none is made here, so every line has its answer.
            Assert.Equal(Together, answers.Count);
            foreach (var a in answers)
            {
                if ((bool)a["ok"]!)
                {
                    taken++;
                    continue;
                }
                refused++;
                var e = a["error"]!.AsObject();
                Assert.Equal(["code", "field", "message", "remedy"], e.Select(p => p.Key));
                Assert.True(((string)e["message"]!).Length > 0 && ((string)e["remedy"]!).Length > 0);
                codes.Add((string)e["code"]!);
            }
        }
        Assert.Equal(Count, taken + refused);
        Assert.True(refused > Count / 2 && taken > 100, $"{taken} and {refused}");
        // The mutations reach every code; a conflict needs one id with two bodies.
        Assert.Equal(["bad-json", "bad-value", "conflict", "implausible", "missing", "unknown-id", "unknown-kind", "unknown-question"], codes.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Times_at_the_end_of_all_days_break_nothing()
    {
        var talk = Talk.After("""{"kind":"clicks","left":1,"at":"2200-12-31T23:59:00Z"}""");
        talk.Did("""{"ask":"next"}""");
        var answer = talk.Say(SteelBook.Clicks(1, 1));
        Assert.NotNull(answer["ok"]);
        talk.Did("""{"ask":"steel"}""");
    }

    private sealed class CountingWriter : StringWriter
    {
        public int Flushed { get; private set; }

        public override void Flush()
        {
            Flushed++;
            base.Flush();
        }
    }

    /// <summary>A stream that hands out one line at a read, and notes how many answers were flushed by then.</summary>
    private sealed class SteppedStream(string[] lines, Func<int> flushed) : MemoryStream
    {
        private int next;

        public List<int> FlushedAtRead { get; } = [];

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            FlushedAtRead.Add(flushed());
            if (next == lines.Length) return 0;
            var bytes = Encoding.UTF8.GetBytes(lines[next++] + "\n");
            bytes.CopyTo(buffer);
            return bytes.Length;
        }
    }
}
