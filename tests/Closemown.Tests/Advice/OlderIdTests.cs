using Closemown.Tests.Pipe;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>Ids of advice as earlier releases gave them stand in books, and are still read.</summary>
public sealed class OlderIdTests
{
    private const string Steel = "next-2-9dd0f8b4-NjM5MTMzOTIzMDAwMDAwMDAwCjEKMQptb3dlcg";
    private const string Height = "height-2-9dd0f8b4-NjM5MTMzOTIzMDAwMDAwMDAwCjUKCjAuMDUKMC44NQoKbW93ZXI";

    private static readonly string[] Book =
    [
        """{"kind":"mow","unit":"mower","hours":1,"at":"2026-05-01T08:00:00+00:00"}""",
        """{"kind":"mow","unit":"mower","hours":1,"at":"2026-05-03T08:05:00+00:00"}""",
    ];

    [Theory]
    [InlineData(Steel, "fit")]
    [InlineData(Height, "gauge")]
    public void F9_An_id_by_the_order_of_arrival_still_gives_its_advice(string id, string step)
    {
        var talk = Talk.After([.. Book, """{"kind":"mow","unit":"mower","hours":1}"""]);
        var why = talk.Did($$"""{"ask":"why","id":"{{id}}"}""")["why"]!["step"]!;
        Assert.Equal((step, id), ((string)why["do"]!, (string)why["advice"]!));
        Assert.Equal("unknown-id", Talk.After(Book.Reverse()).Fault($$"""{"ask":"why","id":"{{id}}"}""").Code);
    }

    [Fact]
    public void F9_A_step_declined_by_an_older_id_is_not_asked_for_again()
    {
        var talk = Talk.After(Book);
        Assert.Equal("fit", talk.Do(",\"atBench\":true"));
        Assert.Equal("gauge", talk.Do(",\"aim\":{\"benchMm\":5}"));
        talk.Did($$"""{"kind":"decline","advice":"{{Steel}}"}""", $$"""{"kind":"decline","advice":"{{Height}}"}""");
        Assert.NotEqual("fit", talk.Do(",\"atBench\":true"));
        Assert.Equal("mow", talk.Do(",\"aim\":{\"benchMm\":5}"));
    }
}
