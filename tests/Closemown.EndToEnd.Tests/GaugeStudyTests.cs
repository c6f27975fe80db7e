using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The guided gauge study, through the command.</summary>
public sealed class GaugeStudyTests
{
    [Fact]
    public void A_study_is_led_from_reading_to_reading_and_ends_with_its_table()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        Assert.Contains("Setting 1 of 2, ann, reading 1 of 2", bench.Run("study", "gauge", "may", "--settings", "2", "--trials", "2", "--by", "ann").Out, StringComparison.Ordinal);
        string Enter(string left, string right) => bench.Run("study", "gauge", "may", left, right, "--by", "ann", "--settings", "2", "--trials", "2").Out;
        Assert.Contains("reading 2 of 2", Enter("5.00", "5.20"), StringComparison.Ordinal);
        Assert.Contains("Turn both screws", Enter("5.02", "5.24"), StringComparison.Ordinal);
        Assert.Contains("Setting 2 of 2, ann, reading 2 of 2", Enter("5.60", "5.80"), StringComparison.Ordinal);
        var end = Enter("5.66", "5.80");
        Assert.All((string[])["EV   repeatability", "one person", "%GRR", "The study is complete"], n => Assert.Contains(n, end, StringComparison.Ordinal));
        // By hand: the pairs differ by 0.02, 0.04, 0.06 and 0; EV² is the mean of half their squares, 0.0056/8.
        var study = Study(bench);
        Assert.Equal(Math.Sqrt(0.0007), (double)study["evMm"]!, 1e-9);
        Assert.Equal((4, 2, null, null), ((int)study["parts"]!, (int)study["trials"]!, study["avMm"], study["next"]));
        Assert.True((double)study["toleranceMm"]![0]! > (double)study["toleranceMm"]![2]!);
        // A study moves no height.
        Assert.Contains("not read", bench.Run("height").Out, StringComparison.Ordinal);
        Assert.Contains("complete", bench.Run("study", "gauge", "may", "5", "5", "--by", "ann", "--settings", "2", "--trials", "2").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_persons_take_turns_and_what_they_differ_in_is_shown()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        (string By, double Left)[] readings = [("ann", 5.00), ("bob", 5.20), ("ann", 5.01), ("bob", 5.21)];
        foreach (var (by, left) in readings) bench.Run("study", "gauge", "may", Mm(left), Mm(left + 0.1), "--by", by, "--trials", "2");
        foreach (var (by, left) in readings) bench.Run("study", "gauge", "may", Mm(left + 0.6), Mm(left + 0.7), "--by", by, "--trials", "2");
        var study = Study(bench, settings: 3);
        Assert.Equal(["ann", "bob"], study["persons"]!.AsArray().Select(p => (string)p!));
        // By hand: persons differ by 0.2 in every part, so AV² = 0.2²/2 less a small part of EV².
        Assert.InRange((double)study["avMm"]!, 0.140, 0.1415);
        Assert.Equal("ann", (string)study["next"]!["by"]!);
        Assert.Contains("Where another person's reading has to agree", bench.Run("study", "gauge", "may").Out, StringComparison.Ordinal);
        var unnamed = bench.Run("study", "gauge", "may", "6", "6");
        Assert.Equal(1, unnamed.Exit);
        Assert.Contains("--by NAME", unnamed.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_with_nothing_read_or_one_reading_says_what_is_wanting()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        Assert.Contains("no gauge study yet", bench.Run("study", "gauge").Out, StringComparison.Ordinal);
        Assert.Contains("0 readings so far", bench.Run("study", "gauge", "may").Out, StringComparison.Ordinal);
        bench.Run("study", "gauge", "may", "5.02", "5.11");
        var odd = bench.Run("study", "gauge", "may", "5.90", "5.12").Out;
        Assert.Contains("0.88 mm from the other readings", odd, StringComparison.Ordinal);
        Assert.Contains("may  2 readings", bench.Run("study", "gauge").Out, StringComparison.Ordinal);
        bench.Run("undo");
        Assert.Null(Study(bench)["evMm"]);
    }

    [Fact]
    public void Repeats_that_are_all_alike_are_not_taken_for_a_perfect_gauge()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        for (var i = 0; i < 2; i++) bench.Run("study", "gauge", "may", "5.0", "5.5");
        Assert.Contains("step hides its scatter", bench.Run("study", "gauge", "may").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("study", 2, "closemown study gauge")]
    [InlineData("study gaug may", 2, "Did you mean \"gauge\"?")]
    [InlineData("study gauge 5.1 5.2", 1, "Write the name first")]
    [InlineData("study gauge may 5.1", 1, "Write both")]
    [InlineData("study gauge may 5.1 high", 1, "no place")]
    [InlineData("study gauge may 55 5.1", 1, "Did you mean 5.5 mm?")]
    [InlineData("study gauge may 5.1 5.2 setting=a", 1, "--setting NAME")]
    [InlineData("study gauge may --trials 1", 1, "2 to 20")]
    public void A_mistake_is_refused_with_what_to_do(string typed, int exit, string hint)
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        var ran = bench.Run(typed.Split(' '));
        Assert.Equal((exit, ""), (ran.Exit, ran.Out));
        Assert.Contains(hint, ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("study", bench.Run("book", "export").Out, StringComparison.Ordinal);
    }

    private static string Mm(double mm) => mm.ToString("F2", System.Globalization.CultureInfo.InvariantCulture);

    private static JsonObject Study(Bench bench, int settings = 2) => bench.Run("study", "gauge", "may", "--settings", settings.ToString(System.Globalization.CultureInfo.InvariantCulture), "--trials", "2", "--json").Json["study"]!.AsObject();
}
