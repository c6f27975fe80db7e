using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class PipeTests
{
    private const string Lines = """
        {"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight"}

        {"kind":"paper-cut","left":"cuts","centre":"cuts","right":"folds"}
        {"kind":"paper-cut","left":"perhaps"}
        {"ask":"next","ahead":true}
        {"ask":"steel"}
        """;

    [Fact]
    public void Lines_in_give_lines_out_in_order_and_a_fault_does_not_stop_them()
    {
        using var bench = new Bench();
        var ran = bench.Run(["pipe", "--book", ":memory:"], Lines, null);
        Assert.Equal((0, ""), (ran.Exit, ran.Error));
        var answers = ran.Lines.Select(l => JsonNode.Parse(l)!.AsObject()).ToList();
        Assert.Equal(5, answers.Count);
        Assert.Equal([true, true, false, true, true], answers.Select(a => a["ok"]!.GetValue<bool>()));
        Assert.InRange(answers[1]["surprise"]!.GetValue<double>(), 0, 1);
        Assert.Equal("bad-value", answers[2]["error"]!["code"]!.GetValue<string>());
        var next = answers[3]["next"]!;
        Assert.NotEmpty(next["do"]!.GetValue<string>());
        Assert.NotEmpty(next["why"]!.AsArray());
        Assert.StartsWith("next-2-", next["advice"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.NotEmpty(next["ahead"]!.AsArray());
        var gap = answers[4]["steel"]!["clearanceUm"]!["right"]!;
        Assert.True(gap["p05"]!.GetValue<double>() < gap["mean"]!.GetValue<double>() && gap["mean"]!.GetValue<double>() < gap["p95"]!.GetValue<double>());
        Assert.False(File.Exists(bench.Book));
    }

    [Fact]
    public void A_rerun_on_a_book_in_memory_gives_the_same_bytes()
    {
        using var bench = new Bench();
        Assert.Equal(bench.Run(["pipe", "--book", ":memory:"], Lines, null).Out, bench.Run(["pipe", "--book", ":memory:"], Lines, null).Out);
    }
}
