using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class RoundTripTests
{
    [Fact]
    public void Three_paper_checks_give_a_first_next_step_that_another_process_explains()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("new", "--unit", "mower", "--blades", "10", "--strip", "80 gsm", "--at", "2026-05-01T09:00Z").Exit);
        Assert.Equal(0, bench.Run("add", "fit", "none", "none", "tight", "free", "straight", "--at", "2026-05-01T09:05Z").Exit);
        Assert.Equal("Taken: paper-cut: left cuts.\n", bench.Run("add", "paper-cut", "left=cuts", "--at", "2026-05-01T09:10Z").Out);
        Assert.Equal("Taken: paper-cut: center cuts.\n", bench.Run("add", "paper-cut", "-", "cuts", "-", "--at", "2026-05-01T09:11Z").Out);
        Assert.Equal("Taken: paper-cut: right folds.\n", bench.Run("add", "paper-cut", "right=folds", "--at", "2026-05-01T09:12Z").Out);

        var json = bench.Run("next", "--json", "--at", "2026-05-01T09:15Z");
        Assert.Equal("", json.Error);
        var next = json.Json["next"]!;
        var apart = (next["left"]?.GetValue<double>() ?? 0) - (next["right"]?.GetValue<double>() ?? 0);
        Assert.InRange(apart, -1, 1);

        var said = bench.Run("next", "--at", "2026-05-01T09:15Z").Out;
        Assert.StartsWith("Do now: ", said, StringComparison.Ordinal);
        Assert.Contains("closemown why", said, StringComparison.Ordinal);
        Assert.Contains(next["advice"]!.GetValue<string>(), bench.Run("why", "--at", "2026-05-01T09:15Z").Out, StringComparison.Ordinal);
        Assert.Matches(@"\d+ in 100", said);

        Assert.Equal(0, bench.Run("add", "mow", "90 min", "--at", "2026-05-02T09:00Z").Exit);
        var why = bench.Run("why", next["advice"]!.GetValue<string>(), "--json").Json["why"]!;
        Assert.Equal(next["do"]!.GetValue<string>(), why["step"]!["do"]!.GetValue<string>());
        Assert.Equal(next["say"]!.GetValue<string>(), why["step"]!["say"]!.GetValue<string>());
        Assert.NotEmpty(why["rules"]!.AsArray());
        var told = bench.Run("why", next["advice"]!.GetValue<string>()).Out;
        Assert.Contains("paper-cut: right folds", told, StringComparison.Ordinal);
        Assert.Contains("Rules", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Starting_values_of_ones_own_are_typed_as_mean_and_give_or_take()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("new", "--unit", "mower").Exit);
        Assert.Equal(0, bench.Run("add", "unit", "priors=clickUm 18±1; lapUmPerMinute 4 +- 1").Exit);
        var steel = bench.Run("steel", "--json").Json["steel"]!;
        Assert.Equal(18, steel["clickUm"]!["left"]!["mean"]!.GetValue<double>(), 1e-6);
        Assert.Equal(4, steel["lapUmPerMinute"]!["mean"]!.GetValue<double>(), 1e-6);
        var refused = bench.Run("add", "unit", "priors=clicksUm 18±1");
        Assert.Equal(1, refused.Exit);
        Assert.Contains("clickUm", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Entries_are_typed_shortly_taken_back_and_kept_with_what_was_typed()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        string[][] typed =
        [
            ["fit", "none", "none", "tight", "free", "straight"], ["contact", "none", "light"], ["clicks", "1", "-1"], ["clicks", "1 in", "2 out"], ["clicks", "left=1"], ["lap", "2", "min", "grit=120"],
            ["mow", "800", "m2"], ["strip", "3", "thou"], ["strike", "left"], ["rebuild", "new", "bearings"], ["stone", "face"], ["feeler", "left=30..50um"], ["gauge", "5/32 in", "4", "mm"], ["square-up"],
        ];
        foreach (var words in typed) Assert.Equal((0, ""), Exit(bench.Run(["add", .. words])));
        var entries = bench.Run("book", "list", "--json").Lines.Select(l => JsonNode.Parse(l)!.AsObject()).ToDictionary(e => e["kind"]!.GetValue<string>() + e["id"]);
        JsonObject Last(string kind) => entries.Last(e => e.Key.StartsWith(kind + "0", StringComparison.Ordinal)).Value;
        Assert.Equal(-2, entries.Values.Where(e => e["kind"]!.GetValue<string>() == "clicks").Min(e => e["right"]?.GetValue<double>() ?? 0));
        Assert.Equal("straight", Last("fit")["blades"]!.GetValue<string>());
        Assert.Equal(("none", "light"), (Last("contact")["left"]!.GetValue<string>(), Last("contact")["right"]!.GetValue<string>()));
        Assert.Equal(2, Last("lap")["minutes"]!.GetValue<double>());
        Assert.Equal(800, Last("mow")["areaM2"]!.GetValue<double>());
        Assert.Equal(76.2, Last("strip")["um"]!.GetValue<double>(), 9);
        Assert.Equal("3 thou", Last("strip")["typed"]!["um"]!.GetValue<string>());
        Assert.Equal("new bearings", Last("rebuild")["what"]![0]!.GetValue<string>());
        Assert.Equal((30, 50), (Last("feeler")["left"]!["goUm"]!.GetValue<double>(), Last("feeler")["left"]!["noGoUm"]!.GetValue<double>()));
        Assert.Equal((3.96875, 4), (Last("gauge")["leftMm"]!.GetValue<double>(), Last("gauge")["rightMm"]!.GetValue<double>()));

        Assert.StartsWith("Taken out: same drag at both ends", bench.Run("undo").Out, StringComparison.Ordinal);
        Assert.StartsWith("Taken out: gauge", bench.Run("undo").Out, StringComparison.Ordinal);
        Assert.Equal(2, bench.Run("book", "list").Out.Split("(taken out)").Length - 1);
    }

    [Fact]
    public void A_slip_of_the_unit_is_refused_with_what_may_have_been_meant_and_then_corrected()
    {
        using var bench = new Bench();
        var slip = bench.Run("new", "--unit", "mower", "--click", "0.007 in");
        Assert.Equal((1, ""), (slip.Exit, slip.Out));
        Assert.Contains("Did you mean 0.0007 in?", slip.Error, StringComparison.Ordinal);
        Assert.Contains("--confirm click", slip.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Book));
        Assert.Equal("implausible", bench.Run("new", "--click", "0.007 in", "--json").Json["error"]!["code"]!.GetValue<string>());

        Assert.Equal(0, bench.Run("new", "--unit", "mower", "--click", "0.0007 in").Exit);
        var unit = bench.Run("book", "list", "--json").Json;
        Assert.Equal(17.78, unit["clickUm"]!.GetValue<double>(), 9);
        Assert.Equal("0.0007 in", unit["typed"]!["clickUm"]!.GetValue<string>());

        Assert.Equal(0, bench.Run("add", "unit", "click=0.007 in", "--confirm", "click").Exit);
        Assert.Equal("clickUm", bench.Run("book", "list", "--json", "--last", "1").Json["confirmed"]![0]!.GetValue<string>());
    }

    [Fact]
    public void At_a_terminal_a_slip_is_asked_about_and_the_answer_is_kept()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/script"), "needs script of util-linux");
        using var bench = new Bench();
        var typed = $"dotnet {Path.Combine(AppContext.BaseDirectory, "closemown.dll")} new --unit mower --click '0.007 in'";
        var asked = bench.Start("/usr/bin/script", ["-qec", typed, "/dev/null"], "1\n", null);
        Assert.Contains("  1  0.0007 in: a tenth of it", asked.Out, StringComparison.Ordinal);
        Assert.Contains("click 17.78 µm (typed 0.007 in)", asked.Out, StringComparison.Ordinal);
        var unit = bench.Run("book", "list", "--json").Json;
        Assert.Equal((17.78, "0.007 in"), (unit["clickUm"]!.GetValue<double>(), unit["typed"]!["clickUm"]!.GetValue<string>()));
    }

    [Fact]
    public void A_doubtful_limit_of_a_feeler_reading_is_refused_until_it_is_confirmed()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        var refused = bench.Run("add", "feeler", "left=30..2000um");
        Assert.Equal(1, refused.Exit);
        Assert.Contains("--confirm left.noGoUm", refused.Error, StringComparison.Ordinal);
        Assert.Equal(0, bench.Run("add", "feeler", "left=30..2000um", "--confirm", "left.noGoUm").Exit);
    }

    private static (int, string) Exit(Ran ran) => (ran.Exit, ran.Error);
}
