using System.Text.Json.Nodes;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>What the commands say of a damaged book, a link, and a file that failed.</summary>
public sealed class DamagedBookTests
{
    private static readonly string[] Readings = ["new --unit mower --blades 10", "add contact none light", "add mow 1 h", "add contact none none"];

    private static Inside Damaged(out string book)
    {
        var run = new Inside(new DateTimeOffset(2026, 5, 3, 10, 0, 0, TimeSpan.Zero));
        foreach (var line in Readings) Assert.Equal(0, run.Run(line.Split(' ')).Exit);
        book = run.Run("book", "where").Lines[0];
        using var raw = new SqliteConnection($"Data Source={book};Pooling=False");
        raw.Open();
        using var command = raw.CreateCommand();
        command.CommandText = "drop trigger entry_no_update; update entry set json = replace(json, '\"light\"', '\"heavy\"') where seq = 2";
        Assert.Equal(1, command.ExecuteNonQuery());
        return run;
    }

    [Fact]
    public void F4_Commands_refuse_a_damaged_book_and_hand_the_entry_back()
    {
        using var run = Damaged(out _);
        foreach (var line in (string[])["next", "steel", "today", "book list", "undo", "book export"])
        {
            var ran = run.Run(line.Split(' '));
            Assert.Equal((1, ""), (ran.Exit, ran.Out));
            Assert.Contains("The book is damaged. The chain is broken at entry 2", ran.Error, StringComparison.Ordinal);
            Assert.Contains("--sound-part", ran.Error, StringComparison.Ordinal);
        }
        var add = run.Run("add", "clicks", "1", "1");
        Assert.Equal(1, add.Exit);
        Assert.Equal("clicks", (string)JsonNode.Parse(add.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1])!["kind"]!);
        // What looks at damage goes on as it did.
        Assert.Contains("entry 2", run.Run("book", "verify").Error, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("book", "export", "--salvage").Exit);
    }

    [Fact]
    public void F4_Asked_for_the_sound_part_each_command_says_so_first()
    {
        using var run = Damaged(out _);
        foreach (var line in (string[])["next", "steel", "today", "book list", "height", "score"])
        {
            var said = run.Run([.. line.Split(' '), "--sound-part"]);
            Assert.Equal((0, line), (said.Exit, line));
            Assert.StartsWith("The book is damaged: this rests on entries 1 to 1 only.", said.Lines[0], StringComparison.Ordinal);
            if (line == "book list") continue;                 // entries as lines: said on standard error
            Assert.Equal(2, (int)run.Run([.. line.Split(' '), "--sound-part", "--json"]).Json["damaged"]!["fromEntry"]!);
        }
        Assert.Contains("The book is damaged", run.Run("book", "list", "--json", "--sound-part").Error, StringComparison.Ordinal);
        var add = run.Run("add", "clicks", "1", "1", "--sound-part");
        Assert.Equal(1, add.Exit);
        Assert.Contains("takes no entry", add.Error, StringComparison.Ordinal);
        var handed = JsonNode.Parse(add.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1])!;
        Assert.Equal(("clicks", 1), ((string)handed["kind"]!, (int)handed["left"]!));
    }

    [Fact]
    public void F6_A_link_to_nothing_is_told_by_every_command()
    {
        using var run = Damaged(out var book);
        var link = book + ".link";
        File.CreateSymbolicLink(link, book + ".gone");
        foreach (var line in (string[])["next", "add mow 1 h", "book verify", "book list"])
        {
            var ran = run.Run([.. line.Split(' '), "--book", link]);
            Assert.Equal(1, ran.Exit);
            Assert.Contains("and there is nothing there", ran.Error, StringComparison.Ordinal);
        }
        File.Delete(link);
    }

    [Fact]
    public void F15_A_full_disk_leaves_no_empty_export()
    {
        using var bench = new Bench();
        Assert.SkipUnless(OperatingSystem.IsLinux() && bench.Start("unshare", ["-rm", "sh", "-c", "mount -t tmpfs -o size=64k none \"$0\"", bench.Folder], null, null).Exit == 0, "needs the right to mount a small file system of its own");
        bench.Run("new", "--unit", "mower");
        bench.Run(["book", "import", "-"], string.Concat(Enumerable.Range(0, 200).Select(i => $$"""{"v":1,"id":"019de28d-3c00-7000-8000-{{i:x12}}","at":"2026-05-01T08:00:00+00:00","kind":"mow","unit":"mower","hours":0.5,"note":"{{new string('n', 900)}}"}""" + "\n")), null);
        Directory.CreateDirectory(Path.Combine(bench.Folder, "disk"));
        const string Script = """
            mount -t tmpfs -o size=64k none disk || exit 99
            dotnet "$0" book export disk/lines.jsonl >out1 2>err1; echo $? >rc1
            ls disk >ls
            mount -o remount,size=20m disk
            dotnet "$0" book export disk/lines.jsonl >out2 2>err2; echo $? >rc2
            """;
        Assert.Equal(0, bench.Start("unshare", ["-rm", "sh", "-c", Script, Path.Combine(AppContext.BaseDirectory, "closemown.dll")], null, null).Exit);
        string Got(string name) => File.ReadAllText(Path.Combine(bench.Folder, name)).Trim();
        Assert.Equal(("1", "", "0"), (Got("rc1"), Got("ls"), Got("rc2")));
    }
}
