using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class RestoreTests
{
    [Fact]
    public void A_damaged_book_is_brought_back_and_what_came_later_is_brought_in_as_the_command_says()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        bench.Run("add", "mow", "1 h");
        var backup = Path.Combine(bench.Folder, "backup.closemown");
        Assert.Equal(0, bench.Run("book", "backup", backup).Exit);
        bench.Run("add", "mow", "2 h");
        bench.Run("add", "lap", "3 min");
        var bytes = File.ReadAllBytes(bench.Book);
        bytes[bytes.AsSpan().IndexOf("\"hours\":2"u8) + 8] = (byte)'7';
        File.WriteAllBytes(bench.Book, bytes);
        var found = bench.Run("book", "verify");
        Assert.Equal(1, found.Exit);
        Assert.Contains("closemown book restore BACKUP --merge", found.Error, StringComparison.Ordinal);

        var missing = bench.Run("book", "restore", Path.Combine(bench.Folder, "none"));
        Assert.Equal((1, ""), (missing.Exit, missing.Out));
        Assert.Contains("There is no book at", missing.Error, StringComparison.Ordinal);

        var said = bench.Run("book", "restore", backup);
        Assert.Equal((0, ""), (said.Exit, said.Error));
        Assert.Equal($"Restored and checked: {bench.Book} (2 entries, 0 of weather).", said.Lines[0]);
        Assert.Contains("Rows in it that are not what was written, and are left out: 1.", said.Out, StringComparison.Ordinal);
        Assert.Contains("Entries in it that the backup lacks: 1. To bring them in:", said.Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Run("book", "verify").Exit);

        // The two commands it names, as typed.
        foreach (var typed in said.Lines.Where(l => l.StartsWith("  closemown ", StringComparison.Ordinal)))
            Assert.Equal(0, bench.Run(typed.Trim().Split(' ')[1..]).Exit);
        Assert.Contains("lap", bench.Run("book", "list", "--last", "1").Out, StringComparison.Ordinal);
        Assert.Equal(3, bench.Run("book", "verify", "--json").Json["entries"]!.GetValue<int>());

        File.WriteAllBytes(bench.Book, bytes);
        var merged = bench.Run("book", "restore", backup, "--merge", "--json").Json;
        Assert.Equal((1, 1, 3), (merged["lacking"]!.GetValue<int>(), merged["merged"]!.GetValue<int>(), merged["entries"]!.GetValue<int>()));
        Assert.Equal(bytes[100..], File.ReadAllBytes(merged["kept"]!.GetValue<string>())[100..]);

        var elsewhere = Path.Combine(bench.Folder, "look.closemown");
        Assert.Equal($"Restored and checked: {elsewhere} (2 entries, 0 of weather).\n", bench.Run("book", "restore", backup, "--to", elsewhere).Out);
    }

    [Fact]
    public void The_folder_is_flushed_after_a_backup_and_a_restore_get_their_names()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/strace"), "needs strace to see the calls to the kernel");
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        var backup = Path.Combine(bench.Folder, "backup.closemown");
        foreach (var (named, args) in new[] { (backup, new[] { "book", "backup", backup }), (bench.Book, ["book", "restore", backup]) })
        {
            var trace = Path.Combine(bench.Folder, "trace");
            Assert.Equal(0, bench.Start("/usr/bin/strace", ["-f", "-y", "-o", trace, "-e", "trace=rename,renameat,renameat2,fsync", "dotnet", Path.Combine(AppContext.BaseDirectory, "closemown.dll"), .. args], null, null).Exit);
            var calls = File.ReadAllLines(trace).Where(l => l.Contains("rename", StringComparison.Ordinal) || l.Contains("fsync", StringComparison.Ordinal)).ToList();
            var rename = calls.FindLastIndex(l => l.Contains("rename", StringComparison.Ordinal) && l.Contains($"\"{named}\"", StringComparison.Ordinal));
            var part = calls.FindLastIndex(l => l.Contains("fsync", StringComparison.Ordinal) && l.Contains(".part>", StringComparison.Ordinal));
            var folder = calls.FindLastIndex(l => l.Contains("fsync", StringComparison.Ordinal) && l.Contains($"<{bench.Folder}>", StringComparison.Ordinal));
            Assert.True(0 <= part && part < rename && rename < folder, string.Join('\n', calls));
        }
    }
}
