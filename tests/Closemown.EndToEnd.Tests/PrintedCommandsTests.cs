using Closemown.Advice;
using Closemown.Cli;
using Closemown.Quantities;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>What a step says is to be typed is taken, in each way of writing, and no text mixes decimal signs.</summary>
public sealed class PrintedCommandsTests
{
    private static readonly DateTimeOffset Now = new(2026, 5, 20, 10, 0, 0, TimeSpan.Zero);

    private static readonly (string[] Settings, WritingStyle Style)[] Styles =
    [
        (["words us", "decimal .", "gap um", "height mm"], WritingStyle.Plain),
        (["words uk", "decimal ,", "gap um", "height mm"], new() { DecimalSign = ',', Words = Wording.UK }),
        (["words us", "decimal .", "gap thou", "height fraction"], WritingStyle.American),
        (["words uk", "decimal ,", "gap thou", "height inch"], new() { DecimalSign = ',', Words = Wording.UK, Gap = GapUnit.Thou, Height = HeightUnit.InchDecimal }),
    ];

    private static readonly AdviceStep[] Steps =
    [
        .. from kind in (string[])["paper-cut", "paper-drag", "contact", "torch", "feeler"] from at in (int[][])[[0, 1, 2], [0, 2], [1]] select new AdviceStep(kind) { Stations = at },
        new("fit"), new("clicks") { Left = 2, Right = -1 }, new("clicks") { Left = 0, Right = 1 }, new("lap") { LapMinutes = 2.5, Grit = 120 }, new("square-up"),
        new("stone") { What = "face" }, new("grind") { What = "both" }, new("repair"), new("gauge"), new("screw") { LeftTurns = 0.25, RightTurns = -1.5 }, new("screw") { LeftTurns = 0.13 },
        new("lock"), new("mow"),
    ];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void F30_Each_command_of_a_step_is_taken_as_it_is_printed(int number)
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit \"old mower\"");
        foreach (var setting in Styles[number].Settings) Assert.Equal("", inside.Type("settings set " + setting).Error);
        using var nowhere = new StringWriter();
        var text = new StepText(new Screen(nowhere, nowhere), new Phrasing(Styles[number].Style), Styles[number].Style, "old mower");
        foreach (var step in Steps)
        {
            var printed = text.Record(step)!;
            foreach (var command in printed.Split(", then "))
            {
                var typed = command.Split("   (")[0].Replace("closemown ", "", StringComparison.Ordinal);
                foreach (var (place, word) in Answers(step.Do, Styles[number].Style)) typed = typed.Replace(place, word, StringComparison.Ordinal);
                var ran = inside.Type(typed);
                Assert.True(ran.Exit == 0, $"{command} → {typed} → {ran.Error}");
            }
        }
    }

    [Theory]
    [InlineData("left=+0.25")]
    [InlineData("left=+0,25")]
    [InlineData("left=0.125 right=-0.5")]
    public void F30_With_a_decimal_comma_a_point_that_can_be_nothing_else_is_taken_too(string typed)
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit mower");
        inside.Type("settings set decimal ,");
        var ran = inside.Type("add screw " + typed);
        Assert.Equal("", ran.Error);
    }

    [Fact]
    public void F30_No_text_mixes_a_point_and_a_comma()
    {
        using var inside = new Inside(Now);
        inside.Type("new --unit mower");
        inside.Type("settings set decimal ,");
        inside.Type("add area green cool 120m2 lat=51,5 --at 2026-05-01");
        inside.Type("add gauge 5,1 5,4 --at 2026-05-02");
        inside.Type("add screw left=+0,4 right=0,37 --at 2026-05-03");
        inside.Type("add gauge 5,4 5,8 --at 2026-05-03T13:00Z");
        for (var day = 4; day < 19; day += 3) inside.Type($"add mow 20min green --unit mower --at 2026-05-{day:00}");
        inside.Type("add water 5mm cans 4 5 6 5,5 --at 2026-05-18");
        inside.Type("add wish green 4,5mm");
        foreach (var command in (string[])["next", "next --ahead", "next --bench 6mm", "next --cut 4,2mm --area green", "today", "turf", "plan", "height --cut 4,2mm", "steel"])
        {
            var ran = inside.Type(command);
            Assert.Equal((0, ""), (ran.Exit, ran.Error));
            Assert.DoesNotMatch("[0-9]\\.[0-9]", ran.Out.Split("More:")[0]);
        }
    }

    private static (string, string)[] Answers(string does, WritingStyle style)
    {
        var word = does switch { "paper-cut" => "cuts", "paper-drag" => "slight", "contact" => "none", "torch" => "thin", "gauge" => style.Height == HeightUnit.Mm ? "5mm" : "0.2in", _ => "clean" };
        if (does == "gauge" && style.DecimalSign == ',') word = word.Replace('.', ',');
        return [("LEFT", word), ("CENTRE", word), ("CENTER", word), ("RIGHT", word), ("…", word)];
    }
}
