using Closemown.Tests.Practice;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>An end that is turned and turned while the readings stay the same: the adjuster is in doubt, not the gap. Common practice, no source.</summary>
public sealed class AdjusterInDoubtTests
{
    [Fact]
    public void Twelve_clicks_in_and_still_nothing_is_felt_the_fit_is_looked_at_and_at_twenty_four_it_is_taken_apart()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""");
        In(pipe, 5);
        pipe.Say(None);
        Assert.NotEqual("fit", (string)pipe.Next()["do"]!);
        In(pipe, 1);
        pipe.Say(None);
        Assert.Equal("fit", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"fit","adjusters":"free"}""");
        In(pipe, 5);
        pipe.Say(None);
        Assert.DoesNotContain((string)pipe.Next()["do"]!, (string[])["fit", "repair"]);
        In(pipe, 1);
        pipe.Say(None);
        Assert.Equal("repair", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"rebuild","what":["adjusters cleaned"]}""");
        Assert.Equal("fit", (string)pipe.Next()["do"]!);
    }

    [Fact]
    public void A_unit_that_stood_far_open_and_is_felt_at_last_keeps_its_adjusters()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""");
        In(pipe, 5);
        In(pipe, 1);
        pipe.Say("""{"kind":"contact","left":"light","right":"light"}""");
        Assert.DoesNotContain((string)pipe.Next()["do"]!, (string[])["fit", "repair"]);
    }

    private const string None = """{"kind":"contact","left":"none","right":"none"}""";

    private static void In(Piped pipe, int goes)
    {
        for (var i = 0; i < goes; i++) pipe.Say(None, """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""", """{"kind":"clicks","left":2,"right":2}""");
    }
}
