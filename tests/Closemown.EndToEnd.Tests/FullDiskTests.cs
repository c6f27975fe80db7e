using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>A disk that is full, or that may not be written: a refusal that says what to do, and nothing lost.</summary>
public sealed class FullDiskTests
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "closemown.dll");

    private static string Many(int n) => string.Concat(Enumerable.Range(0, n).Select(i =>
        $$"""{"v":1,"id":"019de28d-3c00-7000-8000-{{i:x12}}","at":"2026-05-01T08:00:00+00:00","kind":"mow","unit":"mower","hours":0.5,"note":"{{new string('n', 900)}}"}""" + "\n"));

    [Fact]
    public void A_real_small_disk_that_fills_up()
    {
        using var bench = new Bench();
        Assert.SkipUnless(OperatingSystem.IsLinux() && bench.Start("unshare", ["-rm", "sh", "-c", "mount -t tmpfs -o size=64k none \"$0\"", bench.Folder], null, null).Exit == 0, "needs the right to mount a small file system of its own");
        bench.Run("new", "--unit", "mower");
        var lines = Path.Combine(bench.Folder, "lines.jsonl");
        File.WriteAllText(lines, Many(2000));
        var disk = Directory.CreateDirectory(Path.Combine(bench.Folder, "disk")).FullName;
        // In a mount space of its own: write until the disk is full, make room, check, and write the same again.
        const string Script = """
            mount -t tmpfs -o size=1500k none disk || exit 99
            cp "$1" disk/book.closemown
            export CLOSEMOWN_BOOK="$PWD/disk/book.closemown"
            dotnet "$0" book import lines.jsonl >out1 2>err1; echo $? >rc1
            dotnet "$0" add mow 1 h >out2 2>err2; echo $? >rc2
            dotnet "$0" book backup disk/copy.closemown >out3 2>err3; echo $? >rc3
            ls disk >ls
            mount -o remount,size=20m disk
            dotnet "$0" book verify --json >out4 2>err4; echo $? >rc4
            dotnet "$0" book import lines.jsonl --json >out5 2>err5; echo $? >rc5
            dotnet "$0" book verify >out6 2>err6; echo $? >rc6
            """;
        Assert.Equal(0, bench.Start("unshare", ["-rm", "sh", "-c", Script, Program, bench.Book], null, null).Exit);
        string Got(string name) => File.ReadAllText(Path.Combine(bench.Folder, name)).Trim();
        Assert.Equal("1", Got("rc1"));
        Assert.Contains("There is no room to write", Got("err1"), StringComparison.Ordinal);
        Assert.Contains("Free some room on its disk", Got("err1"), StringComparison.Ordinal);
        Assert.Equal("1", Got("rc3"));
        Assert.DoesNotContain("copy", Got("ls"), StringComparison.Ordinal);
        Assert.Equal(("0", ""), (Got("rc4"), Got("err4")));
        var some = System.Text.Json.Nodes.JsonNode.Parse(Got("out4"))!["entries"]!.GetValue<int>();
        Assert.InRange(some, 2, 1999);                       // some batches went in before the disk was full
        Assert.Equal(("0", ""), (Got("rc5"), Got("err5")));
        Assert.Equal(2000, System.Text.Json.Nodes.JsonNode.Parse(Got("out5"))!["added"]!.GetValue<int>() + System.Text.Json.Nodes.JsonNode.Parse(Got("out5"))!["alreadyThere"]!.GetValue<int>());
        Assert.Equal("0", Got("rc6"));
        Assert.Empty(Directory.GetFileSystemEntries(disk));
    }

    [Fact]
    public void Files_that_may_not_grow_any_more()
    {
        using var bench = new Bench();
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs ulimit");
        bench.Run("new", "--unit", "mower");
        bench.Run("add", "mow", "1 h");
        var head = bench.Run("book", "verify", "--json").Json["head"]!.GetValue<string>();
        File.WriteAllText(Path.Combine(bench.Folder, "lines.jsonl"), Many(1000));
        // Without the trap the kernel ends the program with a signal instead of failing the write; the runtime keeps its own code in a large file unless told otherwise.
        var stopped = bench.Start("bash", ["-c", "trap '' XFSZ; ulimit -f 300; export DOTNET_EnableWriteXorExecute=0; exec dotnet \"$0\" book import lines.jsonl --all-or-none", Program], null, null);
        Assert.Equal((1, ""), (stopped.Exit, stopped.Out));
        Assert.Contains("Check the disk, then verify the book.", stopped.Error, StringComparison.Ordinal);
        Assert.Equal(head, bench.Run("book", "verify", "--json").Json["head"]!.GetValue<string>());
        Assert.Equal(1000, bench.Run("book", "import", "lines.jsonl", "--all-or-none", "--json").Json["added"]!.GetValue<int>());
        Assert.Equal(0, bench.Run("book", "verify").Exit);
    }

    [Fact]
    public void A_file_and_a_folder_that_may_only_be_read()
    {
        using var bench = new Bench();
        Assert.SkipUnless(OperatingSystem.IsLinux() && bench.Start("unshare", ["-rm", "true"], null, null).Exit == 0, "needs the right to mount something read-only");
        bench.Run("new", "--unit", "mower");
        bench.Run("add", "mow", "1 h");
        Directory.CreateDirectory(Path.Combine(bench.Folder, "locked"));
        File.Copy(bench.Book, Path.Combine(bench.Folder, "locked", "book.closemown"));
        Assert.Equal(0, bench.Run("book", "backup", Path.Combine(bench.Folder, "locked", "copy.closemown")).Exit);
        var before = Directory.GetFiles(Path.Combine(bench.Folder, "locked")).Order(StringComparer.Ordinal).Select(f => (f, Convert.ToHexString(File.ReadAllBytes(f)))).ToList();
        // Bound read-only, which holds for root too.
        const string Script = """
            mount --bind locked locked && mount -o remount,ro,bind locked || exit 99
            export CLOSEMOWN_BOOK="$PWD/locked/book.closemown"
            dotnet "$0" add mow 1 h >out1 2>err1; echo $? >rc1
            dotnet "$0" book import lines.jsonl >out2 2>err2; echo $? >rc2
            dotnet "$0" book backup >out3 2>err3; echo $? >rc3
            dotnet "$0" book list >out4 2>err4; echo $? >rc4
            dotnet "$0" book verify --book "$PWD/locked/copy.closemown" >out5 2>err5; echo $? >rc5
            dotnet "$0" book list --book "$PWD/locked/copy.closemown" >out6 2>err6; echo $? >rc6
            dotnet "$0" new --book "$PWD/locked/new.closemown" >out7 2>err7; echo $? >rc7
            dotnet "$0" book restore "$PWD/locked/copy.closemown" >out8 2>err8; echo $? >rc8
            dotnet "$0" book restore "$PWD/locked/copy.closemown" --to back.closemown >out9 2>err9; echo $? >rc9
            """;
        File.WriteAllText(Path.Combine(bench.Folder, "lines.jsonl"), Many(3));
        var ran = bench.Start("unshare", ["-rm", "sh", "-c", Script, Program], null, null);
        Assert.Equal(0, ran.Exit);
        string Got(string name) => File.ReadAllText(Path.Combine(bench.Folder, name)).Trim();
        foreach (var n in (int[])[1, 2, 3, 7, 8])
        {
            Assert.Equal(("1", n, ""), (Got($"rc{n}"), n, Got($"out{n}")));
            Assert.Contains("\n  Check", Got($"err{n}"), StringComparison.Ordinal);          // what to do
        }
        foreach (var n in (int[])[4, 5, 6, 9]) Assert.Equal(("0", n, ""), (Got($"rc{n}"), n, Got($"err{n}")));
        Assert.Equal(bench.Run("book", "list").Out.Trim(), Got("out4"));
        Assert.Equal(bench.Run("book", "list").Out.Trim(), Got("out6"));
        Assert.Equal(before, Directory.GetFiles(Path.Combine(bench.Folder, "locked")).Order(StringComparer.Ordinal).Select(f => (f, Convert.ToHexString(File.ReadAllBytes(f)))));
    }
}
