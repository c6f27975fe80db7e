using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class BookTests
{
    [Fact]
    public void A_book_is_verified_copied_exported_and_imported_into_the_same_chain()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        bench.Run("add", "paper-cut", "cuts", "cuts", "folds");
        var verified = bench.Run("book", "verify", "--json").Json;
        Assert.Equal((true, 2), (verified["ok"]!.GetValue<bool>(), verified["entries"]!.GetValue<int>()));

        var copy = Path.Combine(bench.Folder, "copy.closemown");
        Assert.Equal(0, bench.Run("book", "backup", copy).Exit);
        Assert.Equal(verified["head"]!.GetValue<string>(), bench.Run("book", "verify", "--json", "--book", copy).Json["head"]!.GetValue<string>());
        Assert.Contains("overwrites nothing", bench.Run("book", "backup", copy).Error, StringComparison.Ordinal);

        var lines = Path.Combine(bench.Folder, "entries.jsonl");
        Assert.Equal(0, bench.Run("book", "export", lines).Exit);
        Assert.Equal(File.ReadAllText(lines), bench.Run("book", "export").Out);
        File.AppendAllText(lines, "{\"kind\":\"clicks\"}\n");
        var other = Path.Combine(bench.Folder, "other.closemown");
        var preview = bench.Run("book", "import", lines, "--preview", "--json", "--book", other);
        Assert.Equal((1, 2, 1), (preview.Exit, preview.Json["added"]!.GetValue<int>(), preview.Json["bad"]!.GetValue<int>()));
        Assert.False(File.Exists(other));
        Assert.Contains("line 3", bench.Run("book", "import", lines, "--all-or-none", "--book", other).Error, StringComparison.Ordinal);
        Assert.Equal(0, bench.Run("book", "verify", "--json", "--book", other).Json["entries"]!.GetValue<int>());
        Assert.Equal(1, bench.Run("book", "import", lines, "--book", other).Exit);
        Assert.Equal(verified["head"]!.GetValue<string>(), bench.Run("book", "verify", "--json", "--book", other).Json["head"]!.GetValue<string>());

        File.WriteAllText(other, "no book");
        var broken = bench.Run("book", "verify", "--book", other);
        Assert.Equal((1, ""), (broken.Exit, broken.Out));
    }

    [Fact]
    public void The_option_goes_before_the_environment_before_the_settings_before_the_usual_folder()
    {
        using var bench = new Bench();
        var settings = Path.Combine(bench.Folder, "from-settings.closemown");
        Dictionary<string, string?> none = new() { ["CLOSEMOWN_BOOK"] = null, ["XDG_DATA_HOME"] = bench.Folder };
        Ran Where(Dictionary<string, string?>? more, params string[] option) => bench.Run(["book", "where", "--json", .. option], null, more);

        Assert.Equal("usual", Where(none).Json["source"]!.GetValue<string>());
        Assert.Equal(0, bench.Run("settings", "set", "book", settings).Exit);
        Assert.Equal((settings, "settings"), Place(Where(none)));
        Assert.Equal((bench.Book, "environment"), Place(Where(null)));
        Assert.Equal((Path.Combine(bench.Folder, "here.closemown"), "option"), Place(Where(null, "--book", "here.closemown")));
        Assert.Equal(bench.Book + "\n", bench.Run("book", "where").Out);
    }

    private static (string, string) Place(Ran ran) => (ran.Json["path"]!.GetValue<string>(), ran.Json["source"]!.GetValue<string>());
}
