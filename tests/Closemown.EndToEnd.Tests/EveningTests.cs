using System.Text.RegularExpressions;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>An evening at the bench as it is typed and told in a terminal, on a new book.</summary>
public sealed class EveningTests
{
    private static readonly DateTimeOffset Now = new(2026, 5, 20, 19, 0, 0, TimeSpan.Zero);
    private int minute;

    private static readonly string[] Labels = ["Do now:", "Why", "Caution", "Enter it", "Tell me", "How sure"];

    [Theory]
    [InlineData("--words us --gap thou")]
    [InlineData("--words us --gap um")]
    [InlineData("--words uk --gap thou")]
    [InlineData("--words uk --gap um")]
    public void Next_is_five_lines_and_tells_no_figure_of_the_reckoning(string style)
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit mower --blades 10 --at 18:00");
        foreach (var (typed, first) in (IEnumerable<(string, bool)>)[("", true), ("fit none none tight free straight", true), ("paper-cut cuts cuts folds", true), ("contact light none", true), ("torch thin thin thin", true), ("clicks left=-1 right=2", false), ("contact none none", false), ("paper-cut cuts cuts cuts", false)])
        {
            if (typed.Length > 0) Assert.Equal(0, Add(inside, typed).Exit);
            var told = inside.Type("next " + style);
            Assert.Equal((0, ""), (told.Exit, told.Error));
            // What makes it safe to begin, and the one question about the click, have a line of their own.
            var asked = told.Lines.Count(l => l.StartsWith("Tell me", StringComparison.Ordinal));
            Assert.InRange(told.Lines.Length - asked - (first ? 1 : 0), 3, 5);
            Assert.InRange(asked, 0, typed.StartsWith("torch", StringComparison.Ordinal) ? 1 : 0);
            Assert.All(told.Lines, l => Assert.True(Labels.Any(label => l.StartsWith(label, StringComparison.Ordinal)) || l.StartsWith("            ", StringComparison.Ordinal), l));
            Assert.DoesNotMatch("give or take|Likeliest|minutes' worth|-[0-9.]+ (µm|thou)|100 in 100", told.Out);
            Assert.InRange(Regex.Count(told.Out, "in 100"), 0, 1);
            Assert.DoesNotContain(style.Contains("uk", StringComparison.Ordinal) ? "bedknife" : "bottom blade", told.Out, StringComparison.Ordinal);
        }
        Assert.Contains("Mow", inside.Type("next").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Today_and_steel_tell_a_chance_in_a_number_once_at_most_and_no_gap_below_nothing()
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit mower --blades 10 --at 18:00");
        foreach (var typed in (string[])["fit none none tight free straight", "paper-cut cuts folds cuts", "contact heavy light", "clicks left=-1 right=0", "contact light none"])
        {
            Add(inside, typed);
            foreach (var command in (string[])["today", "steel", "steel --gap thou"])
            {
                var told = inside.Type(command).Out;
                Assert.InRange(Regex.Count(told, "in 100"), 0, 1);
                var gap = told.Split('\n').FirstOrDefault(l => l.StartsWith("gap ", StringComparison.Ordinal)) ?? "";
                Assert.DoesNotMatch(@"-\d", gap);
                if (command == "steel") Assert.All(Regex.Matches(gap, @"\d+"), n => Assert.Equal(0, int.Parse(n.Value, System.Globalization.CultureInfo.InvariantCulture) % 5));
            }
        }
    }

    [Fact]
    public void A_touch_once_a_turn_is_typed_and_answered_blade_by_blade()
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit mower --blades 10 --at 18:00");
        Add(inside, "fit none none tight free straight");
        Assert.Contains("right once-a-turn", Add(inside, "contact none once-a-turn").Out, StringComparison.Ordinal);
        var told = inside.Type("next").Out;
        Assert.Contains("closemown add contact right=… blade=1", told, StringComparison.Ordinal);
        Assert.Equal(0, Add(inside, "contact right=light blade=1").Exit);
        Assert.DoesNotContain("blade=", inside.Type("next").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("14 clicks a turn, 1 mm thread", 17.86, 8.93)]
    [InlineData("14 a turn and 1 mm", 17.86, 8.93)]
    [InlineData("6 flats a turn, 0.5 mm", 20.83, 10.42)]
    [InlineData("12 clicks per turn, 20 tpi", 26.46, 13.23)]
    [InlineData("14 clicks a turn, 1 mm thread, lever 0.3", 21.43, null)]
    [InlineData("18 um", 18.0, null)]
    [InlineData("0.0007 in", 17.78, null)]
    public void What_a_click_moves_is_told_as_it_can_be_counted_and_measured(string typed, double um, double? roughUm)
    {
        using var inside = new Inside(Now);
        Assert.Equal(0, inside.Run("new", "--unit", "mower", "--at", "18:00").Exit);
        Assert.Equal("", inside.Run("add", "unit", $"click={typed}").Error);
        Assert.Equal(um, (double)inside.Last["clickUm"]!, 2);
        Assert.Equal(roughUm, (double?)inside.Last["clickSdUm"]);
    }

    private Ran Add(Inside inside, string typed) => inside.Type($"add {typed} --at 18:{++minute:00}");

    [Theory]
    [InlineData("0 clicks a turn, 1 mm thread")]
    [InlineData("14 clicks a turn, 40 mm thread")]
    public void What_cannot_be_a_thread_is_refused(string typed)
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit mower");
        var ran = inside.Run("add", "unit", $"click={typed}");
        Assert.NotEqual(0, ran.Exit);
        Assert.Contains("14 clicks a turn, 1 mm thread", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us", "reel", "thou", "68 °F")]
    [InlineData("uk", "cylinder", "hundredths mm", "20 °C")]
    public void Words_and_units_are_asked_once_and_are_whole(string answer, string reel, string gap, string warm)
    {
        using var inside = new Inside(Now);
        var blanks = string.Concat(Enumerable.Repeat("\n", 20));
        var first = inside.Asked(answer + "\nmower\n" + blanks, "new");
        Assert.Equal((0, ""), (first.Exit, first.Error));
        Assert.Contains("Words and units", first.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Words and units", inside.Asked("second\n" + blanks, "new").Out, StringComparison.Ordinal);
        inside.Type("add area green cool");
        inside.Type("add fit none none tight free straight --unit mower");
        Assert.Contains(reel, inside.Type("next --unit mower").Out, StringComparison.Ordinal);
        Assert.Contains(gap, inside.Type("steel --unit mower").Out, StringComparison.Ordinal);
        inside.Type("add weather green 2026-05-18 10..20C");
        Assert.Contains(warm, Regex.Replace(inside.Run("add", "weather", "green", "2026-05-19", "tMinC=10", "tMaxC=20").Out, @"\s+", " "), StringComparison.Ordinal);
    }
}
