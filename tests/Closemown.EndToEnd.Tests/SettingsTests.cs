using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class SettingsTests
{
    [Fact]
    public void Each_setting_says_where_it_came_from()
    {
        using var bench = new Bench();
        bench.Run("settings", "set", "gap", "thou");
        bench.Run("settings", "set", "words", "uk");
        var held = bench.Run(["settings", "--json", "--words", "us"], null, new() { ["CLOSEMOWN_HEIGHT"] = "inch" }).Json["settings"]!;
        Assert.Equal(("thou", "settings file"), Held(held, "gap"));
        Assert.Equal(("us", "--words"), Held(held, "words"));
        Assert.Equal(("inch", "CLOSEMOWN_HEIGHT"), Held(held, "height"));
        Assert.Equal(("point", "default"), Held(held, "decimal"));
        Assert.Equal("CLOSEMOWN_BOOK", Held(held, "book").Item2);
        bench.Run("settings", "unset", "gap");
        Assert.DoesNotContain("thou", File.ReadAllText(bench.Settings), StringComparison.Ordinal);
    }

    [Fact]
    public void The_check_up_names_nobody_and_nothing_of_the_persons_own()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "greta");
        bench.Run("add", "paper-cut", "cuts", "cuts", "folds", "--by", "alma", "--note", "behind the shed");
        bench.Run("add", "area", "lat=51.25", "lon=-1.75", "--area", "orchard");
        Dictionary<string, string?> home = new() { ["HOME"] = bench.Folder };
        var told = bench.Run(["check-up"], null, home);
        Assert.Equal(0, told.Exit);
        Assert.Contains("~/book.closemown", told.Out, StringComparison.Ordinal);
        Assert.Contains("whole: 3 entries", told.Out, StringComparison.Ordinal);
        Assert.Matches(@"sqlite +3\.\d+", told.Out);
        var all = told.Out + bench.Run(["check-up", "--json"], null, home).Out;
        Assert.All((string[])["greta", "alma", "shed", "orchard", "51.25", bench.Folder], word => Assert.DoesNotContain(word, all, StringComparison.Ordinal));
    }

    private static (string, string) Held(JsonNode held, string name) => (held[name]!["value"]!.GetValue<string>(), held[name]!["source"]!.GetValue<string>());
}
