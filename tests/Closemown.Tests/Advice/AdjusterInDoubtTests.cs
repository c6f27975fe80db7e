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
        Assert.NotEqual("fit", (string)pipe.Next()["do"]!);
        In(pipe, 1);
        Assert.Equal("fit", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"fit","adjusters":"free"}""");
        Assert.NotEqual("fit", (string)pipe.Next()["do"]!);
        In(pipe, 6);
        Assert.Equal("repair", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"rebuild","what":["adjusters cleaned"]}""");
        Assert.Equal("fit", (string)pipe.Next()["do"]!);
    }

    private static void In(Piped pipe, int goes)
    {
        for (var i = 0; i < goes; i++) pipe.Say("""{"kind":"contact","left":"none","right":"none"}""", """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""", """{"kind":"clicks","left":2,"right":2}""");
    }
}
