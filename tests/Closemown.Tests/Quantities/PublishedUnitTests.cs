using System.Text.Json;
using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>Rows of Checks/mechanics/units.json; each names its source there.</summary>
public sealed class PublishedUnitTests
{
    private static readonly JsonElement Rows =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "mechanics", "units.json"))).RootElement;

    // Source: 1 in = 25.4 mm, NIST SP 811 (2008) appendix B; ISO 80000-3 (in each row). Tolerance: exact.
    [Theory]
    [InlineData("inch-1")]
    [InlineData("inch-2")]
    [InlineData("inch-3")]
    [InlineData("inch-4")]
    public void An_inch_size_is_exact(string id)
    {
        JsonElement row = Row(id);
        string typed = row.GetProperty("inputs").GetProperty("typed").GetProperty("value").GetString()!;
        Assert.Equal(Expected(row, "length"), Length.Parse(typed, WritingStyle.Plain).Mm);
    }

    // Sources: ISO 261 (thread-4) and screw kinematics (click-1), in the rows.
    [Fact]
    public void The_reason_for_questioning_a_click_is_the_click_of_a_common_thread()
    {
        JsonElement click = Row("click-1");
        double pitch = Expected(Row("thread-4"), "pitch");
        Assert.Equal(pitch, click.GetProperty("inputs").GetProperty("pitch").GetProperty("value").GetDouble());
        double um = Expected(click, "click");
        PlausibleRange range = PlausibleRanges.Find("unit", "clickUm")!;
        Assert.True(range.Contains(um));
        Assert.False(range.Contains(10 * um));
        Assert.Contains($"{Math.Round(um, 1):0.0} µm", range.Because!, StringComparison.Ordinal);
    }

    private static double Expected(JsonElement row, string name) =>
        row.GetProperty("expected").GetProperty(name).GetProperty("value").GetDouble();

    private static JsonElement Row(string id) => Rows.EnumerateArray().Single(r => r.GetProperty("id").GetString() == id);
}
