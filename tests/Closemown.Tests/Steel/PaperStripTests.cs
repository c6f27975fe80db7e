using System.Text.Json;
using Closemown.Steel;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>How thick the strip in use is, and where it passes from cutting to folding.</summary>
public sealed class PaperStripTests
{
    private static PaperStrip Of(string fields) => PaperStrip.Of(Lines.Entry($$"""{"kind":"strip",{{fields}}}""", 1));

    // Sources in the rows of Checks/mechanics/steel.json: public paper weight chart (80 g/m²), public lecture notes (75 g/m²); newsprint and
    // receipt paper from memory. 15 % is the rows' tolerance and the spread claimed here.
    [Theory]
    [InlineData("paper-copy-80")]
    [InlineData("paper-receipt-55")]
    public void By_grammage_the_thickness_is_within_15_in_100_of_the_published(string id)
    {
        var (gsm, um) = Row(id);
        var strip = Of(FormattableString.Invariant($"\"gsm\":{gsm}"));
        Assert.InRange(strip.Um, 0.85 * um, 1.15 * um);
        Assert.Equal(0.15 * strip.Um, strip.SdUm, 9);
    }

    // Bulk differs from paper to paper (1.3 to 1.5 cm³/g in the rows): a published thickness is never beyond two of the stated spreads.
    [Theory]
    [InlineData("paper-bulk-1")]
    [InlineData("paper-copy-80")]
    [InlineData("paper-copy-75")]
    [InlineData("paper-news-45")]
    [InlineData("paper-receipt-55")]
    public void A_published_thickness_lies_within_two_spreads_of_the_one_by_grammage(string id)
    {
        var (gsm, um) = Row(id);
        var strip = Of(FormattableString.Invariant($"\"gsm\":{gsm}"));
        Assert.InRange(um, strip.Um - (2 * strip.SdUm), strip.Um + (2 * strip.SdUm));
    }

    [Fact]
    public void Eighty_gram_paper_is_100_um() => Assert.Equal(100, Of("\"gsm\":80").Um);

    [Fact]
    public void A_stack_is_shared_out_over_its_layers()
    {
        // 10 layers, 0.8 mm under calipers: 80 µm each (division), give or take 1.5 (assumption, no source).
        var strip = Of("\"stackMm\":0.8,\"layers\":10");
        Assert.Equal(80, strip.Um, 9);
        Assert.Equal(1.5, strip.SdUm);
    }

    [Fact]
    public void A_told_thickness_with_its_spread_is_taken_as_told() => Assert.Equal((80, 3), (Of("\"um\":80,\"sdUm\":3").Um, Of("\"um\":80,\"sdUm\":3").SdUm));

    [Fact]
    public void A_told_thickness_without_a_spread_is_surer_than_one_by_grammage() => Assert.InRange(Of("\"um\":100").SdUm, 0.5, Of("\"gsm\":80").SdUm / 2);

    [Fact]
    public void A_strip_nobody_described_is_as_in_the_table_of_starting_values()
    {
        var strip = PaperStrip.Unknown(SteelBook.Description());
        Assert.Equal((80, 20), (strip.Um, strip.SdUm));
    }

    [Fact]
    public void A_strip_of_the_persons_own_starting_value_is_used_instead()
    {
        var strip = PaperStrip.Unknown(SteelBook.Description("""{"kind":"unit","priors":{"stripUm":[60,5]}}"""));
        Assert.Equal((60, 5), (strip.Um, strip.SdUm));
    }

    [Fact]
    public void Two_layers_are_cut_at_twice_the_gap() => Assert.Equal((72, 112), new PaperStrip(80, 3).CutPoints(2, false));

    [Fact]
    public void A_damp_strip_is_a_tenth_thicker()
    {
        var (cuts, folds) = new PaperStrip(100, 3).CutPoints(1, true);
        Assert.Equal(49.5, cuts, 9);
        Assert.Equal(77, folds, 9);
    }

    [Fact]
    public void A_strip_tried_on_a_known_gap_parts_where_it_was_tried()
    {
        var strip = Of("\"um\":80,\"cutsToUm\":30,\"foldsFromUm\":50");
        Assert.True(strip.Tried);
        Assert.Equal((30, 50), strip.CutPoints(1, false));
    }

    [Theory]
    [InlineData("\"um\":80,\"cutsToUm\":90")]
    [InlineData("\"um\":80,\"foldsFromUm\":20")]
    [InlineData("\"um\":80,\"cutsToUm\":56")]
    public void Tried_to_one_point_only_there_is_still_a_band_of_nicks(string fields)
    {
        var (cuts, folds) = Of(fields).CutPoints(1, false);
        Assert.True(folds > cuts);
    }

    private static readonly JsonElement Rows =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "mechanics", "steel.json"))).RootElement;

    private static (double Gsm, double Um) Row(string id)
    {
        var row = Rows.EnumerateArray().Single(r => r.GetProperty("id").GetString() == id);
        return (row.GetProperty("inputs").GetProperty("grammage").GetProperty("value").GetDouble(),
            row.GetProperty("expected").GetProperty("thickness").GetProperty("value").GetDouble());
    }
}
