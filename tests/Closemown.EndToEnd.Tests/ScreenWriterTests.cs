using Closemown.Book;
using Closemown.Cli;
using Closemown.Entries;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>What a book holds cannot give orders to a terminal.</summary>
public sealed class ScreenWriterTests
{
    private const string Nasty = "\u001b[2J\u001b]0;pwn\u0007\u001b]8;;http://x.invalid\u001b\\link\u009b31m\u202etxt\u2066\u2069\u200e\u200f\u061c\r\u0000";
    private static readonly string[] Orders = ["\u001b", "\u0007", "\u009b", "\u202e", "\u2066", "\u2069", "\u200e", "\u200f", "\u061c", "\r", "\u0000"];

    [Fact]
    public void F12_No_control_or_direction_sign_of_a_text_reaches_the_screen()
    {
        using var inside = new Inside(new(2026, 5, 20, 10, 0, 0, TimeSpan.Zero));
        inside.Type("new --unit mower");
        // An older book may hold what a new entry may not.
        using (var book = BookFile.Open(inside.Book))
        {
            var text = System.Text.Json.JsonSerializer.Serialize(Nasty);
            string[] lines =
            [
                """{"v":1,"id":"019e0000-0000-7000-8000-000000000001","at":"2026-05-19T10:00:00Z","kind":"strip","unit":"mower","um":80,"name":TEXT}""",
                """{"v":1,"id":"019e0000-0000-7000-8000-000000000002","at":"2026-05-19T10:01:00Z","kind":"area","area":"green","species":TEXT}""",
                """{"v":1,"id":"019e0000-0000-7000-8000-000000000003","at":"2026-05-19T10:02:00Z","kind":"feed","area":"green","nGm2":1,"label":TEXT}""",
                """{"v":1,"id":"019e0000-0000-7000-8000-000000000004","at":"2026-05-19T10:03:00Z","kind":"treat","area":"green","what":TEXT}""",
                """{"v":1,"id":"019e0000-0000-7000-8000-000000000005","at":"2026-05-19T10:04:00Z","kind":"rebuild","unit":"mower","what":[TEXT]}""",
                """{"v":1,"id":"019e0000-0000-7000-8000-000000000006","at":"2026-05-19T10:05:00Z","kind":"paper-cut","unit":"mower","left":"cuts","blade":TEXT}""",
            ];
            foreach (var line in lines)
            {
                EntryReader.Read(line.Replace("TEXT", text, StringComparison.Ordinal), EntryContext.Stored, out var entry);
                Assert.NotNull(entry);
                book.Append(entry);
            }
        }
        string[][] commands = [["book", "list"], ["steel"], ["next"], ["why"], ["turf"], ["today"], ["add", Nasty], ["next", "--unit", Nasty], ["book", "list", "--json"], ["today", "--json"], [Nasty]];
        foreach (var command in commands)
        {
            var ran = inside.Run(command);
            Assert.All(Orders, order => Assert.DoesNotContain(order, ran.Out + ran.Error, StringComparison.Ordinal));
        }
        Assert.Contains("\\u001b]8;;http", inside.Run("book", "list").Out, StringComparison.Ordinal);
        // For a program it is the same text as ever.
        var listed = inside.Run("book", "list", "--json").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => System.Text.Json.Nodes.JsonNode.Parse(l)!).ToList();
        Assert.Equal(Nasty, (string)listed.First(e => (string)e["kind"]! == "strip" && e["name"] is not null)["name"]!);
        Assert.Contains("\u202e", inside.Run("book", "export").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void F12_The_programs_own_colours_stay_and_nobody_elses_come_through()
    {
        using var output = new StringWriter();
        var screen = new Screen(output, TextWriter.Null) { Colour = true };
        screen.Line(screen.Ink(Tone.Danger, "hot \u001b[1mnot bold\u001b[0m"));
        Assert.Equal("\u001b[38;5;160mhot \\u001b[1mnot bold\\u001b[0m\u001b[0m\n", output.ToString());
    }
}
